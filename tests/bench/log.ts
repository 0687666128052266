/** Reading a log of the largest size and fitting the loop to ten minutes of one. Contents invented. */
import { LogReader, PIECE } from '$lib/log';
import { identify } from '$lib/solver/loop/identify/identify';
import type { ParameterName } from '$lib/solver/loop/identify/types';
import { drive, logOf, RING, TRUE } from '../solver/loop/identify/synthetic';

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

/** What a technician would seek: both ends of the heat's way, the flow, every mass, and how it began. */
const FREE: readonly ParameterName[] = [
  'frontUA',
  'capacityRate',
  'chargeCapacity',
  'reservoirCapacity',
  'pumpCapacity',
  'frontCapacity',
  'chargeStart',
  'reservoirStart',
  'pumpStart',
  'frontStart',
];

/** @returns a run that reads the whole log, and one that fits ten minutes of another each time */
export function logRuns(): { readLargeLog: () => void; fitTenMinutes: () => void } {
  const log = pieces();
  let seed = 1;
  return {
    readLargeLog() {
      const reader = new LogReader();
      for (const piece of log) reader.push(piece);
      if (reader.finish().rows !== ROWS) throw new Error('rows were lost');
    },
    fitTenMinutes() {
      const found = identify({
        model: RING,
        drive: drive(600),
        channels: logOf(['reservoir', 'pump', 'front'], { seed: seed++ }),
        from: { ...TRUE, frontUA: 400, capacityRate: 2000, reservoirCapacity: 25000 },
        free: FREE,
      });
      if (found.fit.reason !== 'converged') throw new Error('the fit did not settle');
    },
  };
}
