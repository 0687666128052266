import { describe, expect, it } from 'vitest';
import { LogError, readFile, readPieces } from '$lib/log';

const rows = Array.from({ length: 60_000 }, (_, k) => `${k / 10},${(300 + (k % 97)).toFixed(1)}`);
const file = new Blob([`Time (s),Tank (K)\n${rows.join('\n')}\n`]);

describe('a file read in pieces', () => {
  it('tells how far it is, up to all of it', async () => {
    const seen: number[] = [];
    const log = await readFile(file, { progress: ({ bytes }) => seen.push(bytes) });
    expect(log.rows).toBe(60_000);
    expect(log.columns[1]!.values[59_999]).toBe(300 + (59_999 % 97));
    expect(seen.length).toBeGreaterThan(1);
    expect(seen.at(-1)).toBe(file.size);
    expect([...seen].sort((a, b) => a - b)).toEqual(seen);
  });

  it('stops between pieces when told to', async () => {
    const stop = new AbortController();
    let pieces = 0;
    const reading = readFile(file, {
      signal: stop.signal,
      progress: () => {
        pieces++;
        stop.abort();
      },
    });
    await expect(reading).rejects.toThrow(LogError);
    await expect(reading).rejects.toMatchObject({ code: 'cancelled' });
    expect(pieces).toBe(1);
  });

  it('a file of 5 GB is refused before a piece is asked for', async () => {
    let asked = false;
    async function* pieces() {
      asked = true;
      yield new Uint8Array(10);
    }
    await expect(readPieces(pieces(), { claimedSize: 5e9 })).rejects.toMatchObject({
      code: 'too-large',
    });
    expect(asked).toBe(false);
  });
});
