/**
 * A picture made small enough to keep, in the browser: turned upright, scaled, written anew as JPEG.
 * Only its pixels go on; what the camera wrote beside them, place and time included, is dropped.
 */

export type ScaledPhoto = {
  readonly type: 'image/jpeg';
  readonly width: number;
  readonly height: number;
  /** Base64. */
  readonly data: string;
};

export type PhotoResult =
  | { readonly ok: true; readonly photo: ScaledPhoto }
  | { readonly ok: false; readonly message: string };

const LONG_SIDE = 1600;
const QUALITY = [0.8, 0.65, 0.5];
/** Base64 that a job may hold of one picture. */
const LARGEST = 1_500_000;
const LARGEST_FILE = 60_000_000;
const MOST_PIXELS = 120_000_000;

/** Width and height so that the long side is `long` at most; a small picture stays as it is. */
export function fitted(width: number, height: number, long = LONG_SIDE): [number, number] {
  const scale = Math.min(1, long / Math.max(width, height));
  return [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
}

const refuse = (message: string): PhotoResult => ({ ok: false, message });

/** Scale a picture from a file, the clipboard or a drop. Never throws. */
export async function scalePhoto(file: File): Promise<PhotoResult> {
  const name = file.name || 'The picture';
  if (file.size > LARGEST_FILE) {
    return refuse(`${name} is larger than ${LARGEST_FILE / 1e6} MB: too large to read here.`);
  }
  const heic = /heic|heif/i.test(`${file.type} ${file.name}`);
  if (file.type !== '' && !file.type.startsWith('image/'))
    return refuse(`${name} is not a picture.`);
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return refuse(
      heic
        ? `${name} is an HEIC picture, which this browser cannot read. Set the camera to JPEG, or send the picture as JPEG.`
        : `${name} cannot be read as a picture.`,
    );
  }
  try {
    if (bitmap.width * bitmap.height > MOST_PIXELS) {
      return refuse(
        `${name} has ${bitmap.width} × ${bitmap.height} points: too many to read here.`,
      );
    }
    return await written(bitmap, name);
  } finally {
    bitmap.close();
  }
}

async function written(bitmap: ImageBitmap, name: string): Promise<PhotoResult> {
  for (const [i, quality] of QUALITY.entries()) {
    const [width, height] = fitted(bitmap.width, bitmap.height, LONG_SIDE * 0.8 ** i);
    const data = await jpeg(bitmap, width, height, quality);
    if (data === null) break;
    if (data.length <= LARGEST) {
      return { ok: true, photo: { type: 'image/jpeg', width, height, data } };
    }
  }
  return refuse(`${name} could not be scaled in this browser.`);
}

async function jpeg(
  bitmap: ImageBitmap,
  width: number,
  height: number,
  quality: number,
): Promise<string | null> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (!context) return null;
  // JPEG knows no transparency: on paper it is white.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
  return blob?.type === 'image/jpeg' ? base64(blob) : null;
}

function base64(blob: Blob): Promise<string | null> {
  return new Promise((done) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result).replace(/^[^,]*,/, ''));
    reader.onerror = () => done(null);
    reader.readAsDataURL(blob);
  });
}

/** The pictures among what was pasted or dropped. */
export const picturesIn = (data: DataTransfer | null): File[] =>
  [...(data?.files ?? [])].filter((file) => file.type === '' || file.type.startsWith('image/'));
