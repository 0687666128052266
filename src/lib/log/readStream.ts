/** A log read from a file or a stream, with progress and a way to stop: what a worker runs. */
import { LogError } from './errors';
import { LogReader, PIECE, type Log, type LogReaderOptions } from './reader';

export interface ReadOptions extends LogReaderOptions {
  /** Called after each piece. */
  readonly progress?: (done: { readonly bytes: number; readonly rows: number }) => void;
  readonly signal?: AbortSignal;
}

/** Read a file piece by piece; between pieces other messages are heard. @throws {@link LogError} */
export function readFile(file: Blob, options: ReadOptions = {}): Promise<Log> {
  async function* cut() {
    for (let at = 0; at < file.size; at += PIECE)
      yield new Uint8Array(await file.slice(at, at + PIECE).arrayBuffer());
  }
  return readPieces(cut(), { claimedSize: file.size, ...options });
}

/** @throws {@link LogError} `cancelled` once `signal` is raised; for what cannot be read as {@link LogReader} */
export async function readPieces(
  pieces: AsyncIterable<Uint8Array>,
  options: ReadOptions = {},
): Promise<Log> {
  const reader = new LogReader(options);
  for await (const piece of pieces) {
    if (options.signal?.aborted)
      throw new LogError('cancelled', 'Reading was stopped; nothing was changed.');
    reader.push(piece);
    options.progress?.({ bytes: reader.bytesRead, rows: reader.rowsRead });
  }
  return reader.finish();
}
