/** Reading a log of the largest size and fitting the loop to ten minutes of one. Contents invented. */
import { demoJob } from '$lib/job/demo';
import { evaluate } from '$lib/job/evaluate';
import { FIT_ROWS, fitLog, type Span } from '$lib/job/log/logFit';
import { LogReader, PIECE, readLog } from '$lib/log';
import { LogSession } from '$lib/log/worker/session';
import { demoLog } from '../log/demoLog';

const ROWS = 1_000_000;
const COLUMNS = 12;

/** A log of 85 MB in the pieces in which a worker would hand it over. */
function pieces(): Uint8Array[] {
  const encoder = new TextEncoder();
  const channels = Array.from({ length: COLUMNS - 1 }, (_, j) => `Channel ${j + 1} (°F)`);
  const out: Uint8Array[] = [];
  let text = `Time (s),${channels.join(',')}\n`;
  for (let k = 0; k < ROWS; k++) {
    text += (k / 100).toFixed(2);
    for (let j = 1; j < COLUMNS; j++) text += `,${(120 + 20 * Math.sin(k / 1000 + j)).toFixed(2)}`;
    text += '\n';
    if (text.length >= PIECE) {
      out.push(encoder.encode(text));
      text = '';
    }
  }
  out.push(encoder.encode(text));
  return out;
}

const TEN_MINUTES: readonly Span[] = [{ from: 200, to: 800, use: 'fit' }];

/**
 * What the sheet's button does: ten minutes at {@link FIT_ROWS} rows, five channels, with the share of the
 * instruments and each quarter foretold by a fit of the others.
 */
function fitOfTenMinutes(): () => void {
  const { asFound } = evaluate(demoJob());
  const { prepared } = asFound;
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const bytes = new TextEncoder().encode(demoLog(asFound.loop));
  const session = new LogSession(readLog(bytes), { name: 'log.csv', size: bytes.length });
  session.map(session.opened().guesses.map((guess) => ({ ...guess, unit: guess.unit! })));
  const paced = session.pace(TEN_MINUTES, FIT_ROWS, true);
  const wish = {
    sought: { masses: 'reservoir', soak: false },
    errors: { temperature: 0.5, flow: 0.03 },
  } as const;
  return () => {
    const { heldOut } = fitLog(prepared.value, 'cruise', paced, TEN_MINUTES, wish);
    if (heldOut.length !== 4) throw new Error('a quarter could not be foretold');
  };
}

/** @returns a run that reads the whole log, and one that fits ten minutes of a drive */
export function logRuns(): { readLargeLog: () => void; fitTenMinutes: () => void } {
  const log = pieces();
  return {
    readLargeLog() {
      const reader = new LogReader();
      for (const piece of log) reader.push(piece);
      if (reader.finish().rows !== ROWS) throw new Error('rows were lost');
    },
    fitTenMinutes: fitOfTenMinutes(),
  };
}
