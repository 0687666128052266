/** The fit's model against the loop's own engine: same loop, same drive, other equations of the hoses. */
import { describe, expect, it } from 'vitest';
import { identify } from '$lib/solver/loop/identify/identify';
import { simulator } from '$lib/solver/loop/identify/simulate';
import { askLog } from '$lib/solver/loop/fromLog/request';
import type { Logged } from '$lib/solver/loop/fromLog/types';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { LiquidOrder, Segment } from '$lib/solver/loop/types';
import { settledState } from '$lib/solver/loop/warmUp';
import { seededRandom } from '$lib/solver/numerics/random';
import { followed, type Row } from '../../../../log/followed';
import { exampleLoop } from '../../example';

const RATE = 1;
const DRIVE: readonly Segment[] = [
  { duty: 'traffic', duration: 30 },
  { duty: 'cruise', duration: 120 },
  { duty: 'pull', duration: 25 },
  { duty: 'cruise', duration: 120 },
  { duty: 'pull', duration: 15 },
  { duty: 'cruise', duration: 60 },
];

/** As it really is: both cores with less conductance than described; in either order. */
const described = prepareLoop(exampleLoop);
const followedIn = (liquidOrder: LiquidOrder) => {
  const real = prepareLoop({
    ...exampleLoop,
    liquidOrder,
    frontExchanger: { ...exampleLoop.frontExchanger, cleanliness: 0.8 },
    chargeCooler: { ...exampleLoop.chargeCooler, cleanliness: 0.9 },
  });
  return { real, ...followed(real, DRIVE, { start: settledState(real, 'traffic'), rate: RATE }) };
};
const usual = followedIn('cooler-first');

/** Instruments: K, kg/s, m³/s, m/s; one standard deviation. */
const NOISE = { liquid: 0.15, air: 0.4, airFlow: 1e-3, flow: 3e-6, speed: 0.2 };

function logged(seed: number | null, rows: readonly Row[] = usual.rows): Logged {
  const random = seededRandom(seed ?? 0);
  const column = (of: (row: Row) => number, noise: number) =>
    Float64Array.from(rows, (row) => of(row) + (seed === null ? 0 : noise * random.normal()));
  return {
    t: Float64Array.from(rows, ({ t }) => t),
    reservoir: column((r) => r.reservoir, NOISE.liquid),
    frontIn: column((r) => r.frontIn, NOISE.liquid),
    frontOut: column((r) => r.frontOut, NOISE.liquid),
    chargeAirOut: column((r) => r.chargeOut, NOISE.air),
    chargeAirIn: column((r) => r.chargeAirIn, NOISE.air),
    airFlow: column((r) => r.chargeAirFlow, NOISE.airFlow),
    flow: column((r) => r.flow, NOISE.flow),
    vehicleSpeed: column((r) => exampleLoop.duties[r.duty].vehicleSpeed, NOISE.speed),
  };
}
const all = () => true;
const SOUGHT = { masses: 'reservoir', soak: false } as const;

const ORDERS = ['cooler-first', 'front-first'] as const;
describe.each(ORDERS)('the loop of the sheets through the rows of a log, %s', (order) => {
  const { real, rows } = order === 'cooler-first' ? usual : followedIn(order);
  const log = logged(null, rows);
  const { request } = askLog(real, 'cruise', log, SOUGHT, all);
  const { frontIn, frontOut, chargeAirOut, reservoir } = log;
  const predicted = simulator(
    request.model,
    request.drive,
  )({
    ...request.from,
    reservoirStart: rows[0]!.reservoir,
    chargeStart: rows[0]!.chargeLiquid,
    frontStart: rows[0]!.frontOut,
  });
  const off = (a: Float64Array, b: Float64Array, to = rows.length) =>
    Math.max(...Array.from(a.subarray(0, to), (x, k) => Math.abs(x - b[k]!)));

  it('stands where the steady balance stands', () => {
    // The first half minute is one duty from its settled state: nothing may move.
    const { temperatures } = steady(real, 'traffic');
    expect(Math.abs(predicted.front[25]! - temperatures.frontOut)).toBeLessThan(0.02);
    expect(Math.abs(predicted.frontIn[25]! - temperatures.frontIn)).toBeLessThan(0.02);
    expect(off(predicted.reservoir, reservoir!, 28)).toBeLessThan(0.02);
  });
  it('follows pulls as the event engine does, but for what its hoses mix more', () => {
    const rise = Math.max(...frontIn!) - Math.min(...frontIn!);
    expect(rise).toBeGreaterThan(8);
    expect(off(predicted.reservoir, reservoir!)).toBeLessThan(0.02 * rise);
    expect(off(predicted.front, frontOut!)).toBeLessThan(0.06 * rise);
    expect(off(predicted.frontIn, frontIn!)).toBeLessThan(0.15 * rise);
    const settled = [...rows.keys()].filter((k) => rows[k]!.t > 120 && rows[k]!.t < 148);
    for (const k of settled)
      expect(Math.abs(predicted.chargeAirOut[k]! - chargeAirOut![k]!)).toBeLessThan(0.05);
  });
});

describe('one fit over cruise and pulls', { timeout: 120_000 }, () => {
  const SEEDS = 12;
  const truth = askLog(usual.real, 'cruise', logged(null), SOUGHT, all).request.from;
  const fits = Array.from({ length: SEEDS }, (_, i) =>
    identify(askLog(described, 'cruise', logged(i + 1), SOUGHT, all).request),
  );
  const NAMES = ['frontUA', 'chargeUA', 'heatScale', 'reservoirCapacity'] as const;
  const estimatesOf = (name: (typeof NAMES)[number]) =>
    fits.map(({ estimates }) => estimates.parameters.find((e) => e.name === name)!);

  it('the 95 % intervals hold the truth as often as they say', () => {
    const misses = NAMES.flatMap((name) =>
      estimatesOf(name).filter(({ low, high }) => low > truth[name] || high < truth[name]),
    );
    // Of 48 at 5 %: six or fewer in 98.7 of 100 such tests.
    expect(misses.length).toBeLessThanOrEqual(6);
  });
  it('is not off by more than two per cent in the mean', () => {
    for (const name of NAMES) {
      const mean = estimatesOf(name).reduce((sum, { value }) => sum + value, 0) / SEEDS;
      expect(Math.abs(mean / truth[name] - 1)).toBeLessThan(0.02);
    }
  });
  it('the intervals are no wider than a few per cent', () => {
    for (const { value, low, high } of estimatesOf('frontUA'))
      expect((high - low) / value).toBeLessThan(0.1);
  });
});

describe('a fit, front exchanger first', { timeout: 120_000 }, () => {
  const { real, rows } = followedIn('front-first');
  const truth = askLog(real, 'cruise', logged(null, rows), SOUGHT, all).request.from;
  const entered = prepareLoop({ ...exampleLoop, liquidOrder: 'front-first' });
  const wrong = [1, 2, 3].map(
    (seed) => askLog(described, 'cruise', logged(seed, rows), SOUGHT, all).request,
  );
  const right = [1, 2, 3].map(
    (seed) => askLog(entered, 'cruise', logged(seed, rows), SOUGHT, all).request,
  );
  const UA = (fit: ReturnType<typeof identify>, name: 'frontUA' | 'chargeUA') =>
    fit.estimates.parameters.find((e) => e.name === name)!.value;

  it.each(['frontUA', 'chargeUA'] as const)('finds %s again within two per cent', (name) => {
    for (const request of right)
      expect(Math.abs(UA(identify(request), name) / truth[name] - 1)).toBeLessThan(0.02);
  });
  it('leaves far more unexplained where the order was entered wrong', () => {
    const left = (request: (typeof right)[number]) =>
      identify(request).channels.find(({ channel }) => channel === 'reservoir')!.rms;
    wrong.forEach((request, i) => expect(left(request)).toBeGreaterThan(1.5 * left(right[i]!)));
  });
});
