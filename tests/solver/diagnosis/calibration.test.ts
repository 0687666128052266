/**
 * Are the probabilities what they claim? Every fault is simulated many times with its severity, the
 * choice of readings and all errors drawn at random; the loop is solved at the drawn severity, off the
 * grid of the diagnosis. A set said to hold the cause nine times in ten must do so.
 */
import { describe, expect, it } from 'vitest';
import { faultGrid } from '$lib/solver/diagnosis/grid';
import { FAULTS } from '$lib/solver/diagnosis/faults';
import { predictor } from '$lib/solver/diagnosis/predict';
import { rank } from '$lib/solver/diagnosis/rank';
import { seededRandom } from '$lib/solver/numerics/random';
import { exampleLoop } from '../loop/example';
import { CONDITIONS, drawnSeverity, readingsOf, shownBy, somePlaces } from './simulate';

/** Draws of each fault. Binomial error of the whole: about 1 in 100. */
const DRAWS = 40;
const SHARE_READ = 0.35;

const random = seededRandom(20240611);
const grid = faultGrid(exampleLoop, CONDITIONS);
const predict = predictor(exampleLoop);

/** Every diagnosis of the study with the fault it was drawn from. */
function study() {
  return FAULTS.flatMap((fault) =>
    Array.from({ length: DRAWS }, () => {
      const shown = shownBy(predict, fault, drawnSeverity(fault, random));
      const readings = readingsOf(shown, somePlaces(SHARE_READ, random), random);
      const { causes, set } = rank(grid, readings, CONDITIONS);
      return { fault, causes, set };
    }),
  );
}

describe('probabilities', () => {
  const drawn = study();

  it('hold the true fault in the nine-in-ten set 85 to 95 times in 100', () => {
    const held = drawn.filter(({ fault, set }) => set.some((c) => c.fault === fault)).length;
    console.info(`true fault in the set: ${held} of ${drawn.length}`);
    expect(held / drawn.length).toBeGreaterThanOrEqual(0.85);
    expect(held / drawn.length).toBeLessThanOrEqual(0.95);
  });

  it('come true as often as they say, by tenths', () => {
    const tenths = Array.from({ length: 10 }, () => ({ n: 0, said: 0, true: 0 }));
    for (const { fault, causes } of drawn) {
      for (const c of causes) {
        if (!c.fault) continue;
        const tenth = tenths[Math.min(9, Math.floor(c.probability * 10))]!;
        tenth.n++;
        tenth.said += c.probability;
        if (c.fault === fault) tenth.true++;
      }
    }
    // The study draws every fault as often as any other, the weights do not: a tenth is allowed.
    for (const { n, said, true: came } of tenths) {
      if (n >= 20) expect(Math.abs(said - came) / n).toBeLessThan(0.1);
    }
  });

  it('put the true fault first far more often than chance', () => {
    const first = drawn.filter(({ fault, causes }) => causes[0]!.fault === fault).length;
    expect(first / drawn.length).toBeGreaterThan(5 / FAULTS.length);
  });
});
