/** The quick way to a drawn loop gives what the plain way gives, whatever is drawn. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { demoJob } from '$lib/job/demo';
import { drawnLoop, plainLoop, withDrawn } from '$lib/job/sure/drawnLoop';
import { evaluate, type Side } from '$lib/job/evaluate';
import { FIELDS } from '$lib/job/fields';
import { emptyJob, type Job } from '$lib/job/types';
import { keptParts } from '$lib/solver/kept';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steadyIn } from '$lib/solver/loop/steady';
import { seededRandom } from '$lib/solver/numerics/random';
import { standardDeviation } from '$lib/solver/uncertainty/distributions';
import { loopModel } from '$lib/job/sure/surenessModel';
import { uncertainOf } from '$lib/job/sure/surenessInputs';

const OF_THE_LOOP =
  /^(site|coolant|engine|duty|chargeCooler|frontExchanger|hose|pump|feed|reservoir|fans|airPath|soak)\./;
const edit = (job: Job, path: string, text: string) => applyEdit(job, 'asFound', path, text).job;

const demo = demoJob();
const SIDES: Readonly<Record<string, Side>> = {
  'a job with nothing entered': evaluate(emptyJob()).asFound,
  'the demonstration': evaluate(demo).asFound,
  'its candidate': evaluate(demo).candidate!,
  'pump on its feed': evaluate(edit(demo, 'pump.voltsFrom', 'feed')).asFound,
  'cores by measures': evaluate(
    edit(edit(demo, 'frontExchanger.by', 'measures'), 'chargeCooler.by', 'measures'),
  ).asFound,
  'cavitation counted': evaluate(edit(demo, 'pump.cavitation', 'counted')).asFound,
  'speed and density': evaluate(edit(demo, 'duty.pull.by', 'speed-density')).asFound,
};

/** Every quantity of the loop that has a value, a hair off its value. */
function nudged({ values }: Side) {
  const paths = [...FIELDS].flatMap(([path, { kind }]) =>
    kind === 'quantity' && OF_THE_LOOP.test(path) && values[path]!.si !== undefined ? [path] : [],
  );
  const random = seededRandom(3);
  const x = paths.map((path) => {
    const si = values[path]!.si!;
    return si === 0 ? 1e-6 * random.uniform() : si * (1 + 1e-4 * (random.uniform() - 0.5));
  });
  return { paths, x };
}

/** The same loop; a factor may leave the last digit different. */
function expectSame(quick: unknown, plain: unknown): void {
  if (typeof plain !== 'object' || plain === null) {
    if (typeof plain === 'number')
      expect(Math.abs((quick as number) - plain)).toBeLessThanOrEqual(1e-14 * Math.abs(plain));
    else expect(quick).toBe(plain);
    return;
  }
  expect(Object.keys(quick as object)).toEqual(Object.keys(plain));
  for (const [key, value] of Object.entries(plain))
    expectSame((quick as Record<string, unknown>)[key], value);
}

describe.each(Object.entries(SIDES))(
  '%s',
  (_name, side) => {
    it('one input at a time', () => {
      const { paths, x } = nudged(side);
      for (const [i, path] of paths.entries()) {
        let plain: unknown;
        try {
          plain = plainLoop(withDrawn(side.values, [path], [x[i]!]));
        } catch {
          continue; // a whole number that no longer is one
        }
        expectSame(drawnLoop(side.values, [path])([x[i]!]), plain);
      }
    });

    it('those with a ± together, and the loop they began with is left alone', () => {
      const inputs = uncertainOf(side.values);
      const paths = inputs.map(({ path }) => path);
      const loopAt = drawnLoop(side.values, paths);
      const before = JSON.stringify(side.loop);
      const random = seededRandom(11);
      for (let n = 0; n < 20; n++) {
        const x = inputs.map(
          ({ path, distribution }) =>
            side.values[path]!.si! + standardDeviation(distribution) * (random.uniform() - 0.5),
        );
        expectSame(loopAt(x), plainLoop(withDrawn(side.values, paths, x)));
      }
      expect(JSON.stringify(side.loop)).toBe(before);
    });

    it('settles where the plain way settles, as sharply as told', () => {
      const inputs = uncertainOf(side.values);
      if (inputs.length === 0) return;
      const paths = inputs.map(({ path }) => path);
      const duties = ['traffic', 'cruise', 'pull'] as const;
      const model = loopModel(side.values, inputs, (solve) =>
        duties.flatMap((duty) => {
          const { reservoir, chargeOut, flow } = solve(duty);
          return [reservoir, chargeOut ?? NaN, flow];
        }),
      );
      const random = seededRandom(5);
      for (let n = 0; n < 30; n++) {
        const x = inputs.map(({ path, distribution, ends: [least, most] }) => {
          const off = 1.8 * standardDeviation(distribution) * (2 * random.uniform() - 1);
          return Math.min(most, Math.max(least, side.values[path]!.si! + off));
        });
        const quick = model(Float64Array.from(x))!;
        const ready = prepareLoop(plainLoop(withDrawn(side.values, paths, x)));
        duties.forEach((duty, d) => {
          const plain = steadyIn(
            ready,
            ready.loop.duties[duty],
            ready.loop.duties[duty].vehicleSpeed,
          );
          // What the ± allow spreads over kelvins; this is a ten-thousandth of one.
          expect(Math.abs(quick[3 * d]! - plain.temperatures.reservoir)).toBeLessThan(1e-4);
          expect(Math.abs(quick[3 * d + 1]! - plain.chargeOut!)).toBeLessThan(1e-4);
          const flow = plain.operating.flow;
          expect(Math.abs(quick[3 * d + 2]! - flow)).toBeLessThanOrEqual(1e-6 * flow);
        });
      }
    });
  },
  60_000,
);

describe('parts kept', () => {
  it('holds what was made of the same things, and makes anew of others', () => {
    const kept = keptParts();
    const [a, b] = [{}, {}];
    let made = 0;
    const make = () => ++made;
    expect(kept.of('x', [a, 1], make)).toBe(1);
    expect(kept.of('x', [a, 1], make)).toBe(1);
    expect(kept.of('x', [b, 1], make)).toBe(2);
    expect(kept.of('y', [b, 1], make)).toBe(3);
    expect(() =>
      kept.of('z', [a], () => {
        throw new Error('no');
      }),
    ).toThrow('no');
    expect(kept.of('z', [a], make)).toBe(4);
  });
});
