/** Bytes to text: UTF-8 or UTF-16 by their marks, else UTF-8, else Windows Latin. */
import { LogError } from './errors';

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** Bytes of the mark that may stand before a text. */
export function markLength(bytes: Uint8Array): number {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 3;
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 2;
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 2;
  return 0;
}

/** @throws {@link LogError} `binary` where the head of a file is no text */
export function encodingOf(head: Uint8Array): Encoding {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  requireText(head);
  try {
    // A character cut off at the end of the head is no fault.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** Control characters other than tab, line ends and form feed do not occur in a text. */
function requireText(head: Uint8Array): void {
  let odd = 0;
  for (const byte of head) {
    if (byte === 0) throw binary();
    if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 12 && byte !== 13) odd++;
  }
  if (odd > 0.01 * head.length) throw binary();
}

const binary = () =>
  new LogError(
    'binary',
    'This is not a text file. Export the log as CSV from the logger’s own program and open that.',
  );
