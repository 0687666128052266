import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '$lib/solver/errors';
import { heldOut } from '$lib/solver/loop/identify/heldOut';
import { identify, type IdentifyRequest } from '$lib/solver/loop/identify/identify';
import { leastDeviations } from '$lib/solver/loop/identify/information';
import { proposals } from '$lib/solver/loop/identify/separate';
import type { ParameterName, Parameters } from '$lib/solver/loop/identify/types';
import { seededRandom } from '$lib/solver/numerics/random';
import { RING, TRUE, drive, logOf } from './synthetic';

const FREE: readonly ParameterName[] = ['frontUA', 'capacityRate', 'reservoirCapacity'];
/** A technician's first guess. */
const GUESS: Parameters = { ...TRUE, frontUA: 400, capacityRate: 2000, reservoirCapacity: 25000 };

const request = (seed: number, change: Partial<IdentifyRequest> = {}): IdentifyRequest => ({
  model: RING,
  drive: drive(),
  channels: logOf(['reservoir', 'pump', 'front'], { seed }),
  from: GUESS,
  free: FREE,
  ...change,
});

describe('repeated logs of one loop', () => {
  const RUNS = 120;
  const runs = Array.from({ length: RUNS }, (_, i) => identify(request(1000 + i)));
  const bound = leastDeviations(
    { model: RING, drive: drive(), noise: { reservoir: 0.2, pump: 0.2, front: 0.2 } },
    TRUE,
    FREE,
  );

  it.each(FREE.map((name, j) => [name, j] as const))(
    '%s scatters within 20 %% of the Cramér-Rao bound, without bias',
    (name, j) => {
      const values = runs.map(({ parameters }) => parameters[name]);
      const mean = values.reduce((a, b) => a + b, 0) / RUNS;
      const scatter = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (RUNS - 1));
      expect(scatter / bound[j]!).toBeGreaterThan(0.8);
      expect(scatter / bound[j]!).toBeLessThan(1.2);
      expect(Math.abs(mean - TRUE[name])).toBeLessThan((3.5 * bound[j]!) / Math.sqrt(RUNS));
    },
  );

  it('lie in their 95 % intervals at that rate, all parameters together', () => {
    let covered = 0;
    for (const { estimates } of runs)
      for (const { name, low, high } of estimates.parameters)
        if (low <= TRUE[name as ParameterName] && TRUE[name as ParameterName] <= high) covered++;
    // 360 intervals, some of them correlated: 95 % ± 3 standard deviations of 1.4 %.
    expect(covered / (RUNS * FREE.length)).toBeGreaterThan(0.907);
    expect(covered / (RUNS * FREE.length)).toBeLessThan(0.993);
  });

  it('find the noise of each channel, which was not told', () => {
    for (const { channels } of runs)
      for (const { noise } of channels) expect(Math.abs(noise / 0.2 - 1)).toBeLessThan(0.2);
  });
});

describe('a log with faults', () => {
  it('gaps and channels read at another rate are fitted as they are', () => {
    const channels = logOf(['reservoir', 'pump', 'front'], { seed: 4 });
    channels.reservoir!.forEach((_, k, a) => k % 5 && (a[k] = NaN));
    channels.front!.fill(NaN, 100, 160);
    const { estimates } = identify(request(4, { channels }));
    for (const { name, value, deviation } of estimates.parameters)
      expect(Math.abs(value - TRUE[name as ParameterName])).toBeLessThan(4 * deviation);
  });

  it('one reading in thirty wild: Huber’s loss holds, plain squares do not', () => {
    const random = seededRandom(8);
    const channels = logOf(['reservoir', 'pump', 'front'], { seed: 9 });
    for (const column of Object.values(channels))
      column.forEach((_, k) => random.uniform() < 1 / 30 && (column[k] = column[k]! + 25));
    const miss = (loss: IdentifyRequest['loss']) =>
      Math.abs(identify(request(9, { channels, loss })).parameters.frontUA - TRUE.frontUA);
    const robust = identify(request(9, { channels }));
    const ua = robust.estimates.parameters[0]!;
    expect(Math.abs(ua.value - TRUE.frontUA)).toBeLessThan(4 * ua.deviation);
    expect(miss({ kind: 'squares' })).toBeGreaterThan(4 * miss(undefined));
  });

  it('something that drove the loop and was not logged is told, and the intervals widened', () => {
    const shaken = drive();
    const soaked = { ...shaken, heat: shaken.heat!.map((Q, k) => Q + 3000 * Math.sin(k / 25)) };
    const found = identify(
      request(5, { channels: logOf(['reservoir', 'pump', 'front'], { seed: 5, of: soaked }) }),
    );
    expect(found.widened).toBeGreaterThan(1.5);
    expect(found.notes.map(({ code }) => code)).toContain('fit-residuals-hang-together');
  });
});

describe('held-out readings', () => {
  it('are foretold as well as those seen', () => {
    const { overSeen, overNoise, channels } = heldOut(request(21), { from: 230, to: 400 });
    for (const ratio of [overSeen, overNoise]) {
      expect(ratio).toBeGreaterThan(0.85);
      expect(ratio).toBeLessThan(1.15);
    }
    expect(channels.map(({ count }) => count)).toEqual([171, 171, 171]);
  });

  it('are missed where the model is wrong: a reservoir half as heavy held fixed', () => {
    const from = { ...GUESS, reservoirCapacity: 15000 };
    const free: ParameterName[] = ['frontUA', 'capacityRate'];
    const { overNoise } = heldOut(request(21, { from, free }), { from: 230, to: 400 });
    expect(overNoise).toBeGreaterThan(2);
  });
});

describe('what a log cannot separate', () => {
  // Heat, UA, flow and all masses times one factor leave every temperature as it was.
  const free: readonly ParameterName[] = [
    'heatScale',
    'frontUA',
    'capacityRate',
    'chargeCapacity',
    'reservoirCapacity',
    'pumpCapacity',
    'frontCapacity',
  ];
  const found = identify(request(31, { free, from: { ...GUESS, pumpHeat: 0 } }));

  it('is named: heat load with UA, flow and every mass', () => {
    expect(found.separability.weak).toHaveLength(1);
    const [{ parameters, moves }] = found.separability.weak as [
      (typeof found.separability.weak)[number],
    ];
    expect([...parameters].sort()).toEqual([...free].sort());
    // All by the same share in the same direction.
    for (const move of moves) expect(move).toBeGreaterThan(0.9);
    expect(found.notes.map(({ code }) => code)).toContain('fit-not-separated');
  });

  it('leaves what it can tell: the ratio UA over flow', () => {
    const { frontUA, capacityRate } = found.parameters;
    expect(frontUA / capacityRate / (TRUE.frontUA / TRUE.capacityRate)).toBeCloseTo(1, 1);
  });

  it('no drive separates it, and the proposals say so', () => {
    const list = proposals(request(31, { free, from: { ...GUESS, pumpHeat: 0 } }), found);
    expect(list.length).toBeGreaterThan(3);
    for (const { worst } of list) expect(worst).toBeGreaterThan(1);
  });

  it('a steady log tells UA but no mass; pulls or a cool-down would', () => {
    const t = drive().t;
    const steady = { ...drive(), heat: t.map(() => 4000) };
    const settled = {
      ...TRUE,
      // Where this load settles: ring balance by hand.
      frontStart: 303 + 4100 / 650,
      chargeStart: 303 + 4100 / 650 + 4000 / 2800,
      reservoirStart: 303 + 4100 / 650 + 4000 / 2800,
      pumpStart: 303 + 4100 / 650 + 4100 / 2800,
    };
    const masses: readonly ParameterName[] = ['frontUA', 'reservoirCapacity'];
    const asked = request(41, {
      drive: steady,
      from: { ...settled, frontUA: 640, reservoirCapacity: 30000 },
      free: masses,
      channels: logOf(['reservoir', 'front'], { seed: 41, of: steady, parameters: settled }),
    });
    const dull = identify(asked);
    expect(dull.separability.weak.map(({ parameters }) => parameters)).toEqual([
      ['reservoirCapacity'],
    ]);
    expect(Math.abs(dull.parameters.frontUA - 650)).toBeLessThan(
      4 * dull.estimates.parameters[0]!.deviation,
    );
    const [best] = proposals(asked, dull);
    expect(['pulses', 'cool-down']).toContain(best!.id);
    expect(best!.worst).toBeLessThan(0.05);
  });

  it('and a log of such a drive does: the deviation foretold is the one found', () => {
    const asked = request(51, { free: ['frontUA', 'reservoirCapacity'] });
    const foretold = leastDeviations(
      { model: RING, drive: drive(), noise: { reservoir: 0.2, pump: 0.2, front: 0.2 } },
      TRUE,
      ['frontUA', 'reservoirCapacity'],
    );
    const from = { ...TRUE, frontUA: 500, reservoirCapacity: 30000 };
    const { estimates, separability } = identify({ ...asked, from });
    expect(separability.weak).toEqual([]);
    estimates.parameters.forEach(({ deviation }, j) =>
      expect(Math.abs(deviation / foretold[j]! - 1)).toBeLessThan(0.15),
    );
  });
});

describe('refusals', () => {
  it('nothing sought, nothing read', () => {
    expect(() => identify(request(1, { free: [] }))).toThrow(InvalidInputError);
    const empty = { reservoir: new Float64Array(601).fill(NaN) };
    expect(() => identify(request(1, { channels: empty }))).toThrow(/cannot tell/);
  });
});
