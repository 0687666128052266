/** What a sheet is on paper: facts of a PDF, and of the page as print lays it out. */
import { spawnSync } from 'node:child_process';
import type { Page } from 'playwright-core';

export const PAPERS = {
  // Points of 1/72 in; ANSI Letter 8.5 x 11 in, ISO 216 A4 210 x 297 mm.
  Letter: { width: 612, height: 792 },
  A4: { width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
} as const;
export type Paper = keyof typeof PAPERS;

export interface Pdf {
  /** Width and height of every page, points. */
  readonly sizes: readonly (readonly [width: number, height: number])[];
  /** Pictures made of pixels. */
  readonly images: number;
}

/** Read from the plain objects of the file, which Chromium does not compress. */
export function readPdf(bytes: Buffer): Pdf {
  const text = bytes.toString('latin1');
  const pages = text.match(/\/Type\s*\/Page\b[^]*?\/MediaBox\s*\[[^\]]*\]/g) ?? [];
  return {
    sizes: pages.map((page) => {
      const box = /\/MediaBox\s*\[\s*([^\]]*)\]/.exec(page)![1]!.trim().split(/\s+/).map(Number);
      return [box[2]! - box[0]!, box[3]! - box[1]!];
    }),
    images: text.match(/\/Subtype\s*\/Image\b/g)?.length ?? 0,
  };
}

const run = (name: string, args: string[]): string | null => {
  const ran = spawnSync(name, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  return ran.error || ran.status !== 0 ? null : ran.stdout;
};

/** Text of a PDF file with its line breaks as spaces; null where Poppler is not installed. */
export const textOf = (file: string): string | null =>
  run('pdftotext', [file, '-'])?.replace(/\s+/g, ' ') ?? null;

/** Words of a PDF file that reach past their page, or into its margin by more than a point. */
export function wordsOutside(file: string, margin: number): string[] | null {
  const bbox = run('pdftotext', ['-bbox', file, '-']);
  if (bbox === null) return null;
  return bbox
    .split('<page ')
    .slice(1)
    .flatMap((page) => {
      const width = Number(/width="([\d.]+)"/.exec(page)![1]);
      return [...page.matchAll(/xMin="([-\d.]+)"[^>]*xMax="([-\d.]+)"[^>]*>([^<]*)/g)]
        .filter(([, from, to]) => Number(from) < margin - 1 || Number(to) > width - margin + 1)
        .map(([, from, to, word]) => `${word} from ${from} to ${to} of ${width}`);
    });
}

/** Rows of `pdfimages -list` under its two lines of head; null where Poppler is not installed. */
export const rastersOf = (file: string): string[] | null =>
  run('pdfimages', ['-list', file])?.trim().split('\n').slice(2) ?? null;

/** Lay the page out as for paper of that width, everything drawn; the screen comes back by `onScreen`. */
export async function onPaper(page: Page, paper: Paper, marginMm: number): Promise<void> {
  const width = Math.floor((PAPERS[paper].width / 72 - (2 * marginMm) / 25.4) * 96);
  await page.setViewportSize({ width, height: 1000 });
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
}

/** Back to the screen; naming the screen instead would print the next PDF as the screen shows it. */
export async function onScreen(page: Page): Promise<void> {
  await page.emulateMedia({ media: null });
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
}

/** Elements that stick out at either edge, or cut off what they hold; one line for each. */
export const clipped = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const limit = document.documentElement.clientWidth + 1;
    const name = (e: Element) =>
      `<${e.tagName.toLowerCase()} class="${e.getAttribute('class') ?? ''}"> ${(e.textContent ?? '').trim().slice(0, 60)}`;
    /** Said aloud only: shrunk to a dot and cut off on purpose. */
    const hidden = (e: Element): boolean => {
      const { position, overflow, visibility } = getComputedStyle(e);
      const dot = position === 'absolute' && overflow !== 'visible' && e.clientWidth <= 1;
      return (
        dot || visibility === 'hidden' || (e.parentElement !== null && hidden(e.parentElement))
      );
    };
    const outside = (e: Element) => {
      const box = e.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) return false;
      // Curves run past the frame of their plot, which cuts them; letters must not.
      if (e instanceof SVGElement && !(e instanceof SVGTextElement || e instanceof SVGSVGElement))
        return false;
      const cuts =
        !(e instanceof SVGElement) &&
        getComputedStyle(e).overflowX !== 'visible' &&
        e.scrollWidth > e.clientWidth + 1;
      return (box.right > limit || box.left < -1 || cuts) && !hidden(e);
    };
    return [...document.body.querySelectorAll('*')].filter(outside).map(name);
  });

/** Texts whose ink is too light for white paper: contrast against white under 4.5, as WCAG counts it. */
export const paleTexts = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const context = document.createElement('canvas').getContext('2d')!;
    const luminance = (colour: string) => {
      context.fillStyle = '#fff';
      context.fillRect(0, 0, 1, 1);
      context.fillStyle = colour;
      context.fillRect(0, 0, 1, 1);
      const [r, g, b] = [...context.getImageData(0, 0, 1, 1).data].map((byte) => {
        const c = byte / 255;
        return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      }) as [number, number, number];
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const pale = new Set<string>();
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement!;
      if (!node.textContent?.trim() || !parent.checkVisibility()) continue;
      const style = getComputedStyle(parent);
      const ink = parent instanceof SVGElement ? style.fill : style.color;
      if (ink === 'none') continue;
      if (1.05 / (luminance(ink) + 0.05) < 4.5)
        pale.add(`${ink}: ${node.textContent.trim().slice(0, 40)}`);
    }
    return [...pale];
  });
