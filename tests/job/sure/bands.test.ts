import { describe, expect, it } from 'vitest';
import { applyEdit, setPm, startCandidate } from '$lib/job/edit';
import { evaluate, type Side } from '$lib/job/evaluate';
import { BAND_SOURCES } from '$lib/job/sure/bands';
import { AMBIENT_DAYS } from '$lib/job/sure/bands/ambient';
import { curveSet, type BandSource } from '$lib/job/sure/bands/bandSource';
import { DRIVE } from '$lib/job/sure/bands/drive';
import { FEED } from '$lib/job/sure/bands/feed';
import { HEADS, PUMP_CHOICES } from '$lib/job/sure/bands/pump';
import { SUCTION } from '$lib/job/sure/bands/suction';
import { finished, FULL, sureness } from '$lib/job/sure/sureness';
import { emptyJob, type Job } from '$lib/job/types';
import { InvalidInputError } from '$lib/solver/errors';
import { copperArea } from '$lib/solver/feed/gauge';
import { readAt } from '$lib/solver/loop/history';
import type { BandPoint } from '$lib/solver/uncertainty/band';
import { spread } from '$lib/solver/uncertainty/propagate';
import { toFeed } from '$lib/job/models/toFeed';

const pm = (job: Job, path: string, value: string, text: string) =>
  setPm(applyEdit(job, 'asFound', path, value).job, 'asFound', path, text).job;
const unsure = (kelvin: number) => pm(emptyJob('SI'), 'site.ambient', '35 °C', `${kelvin} K`);
const side = (job: Job) => evaluate(job).asFound;
const bands = (source: BandSource, of: Side) => source.bands(of, [of])!;
const width = (band: readonly BandPoint[]) => band.map(([, low, high]) => high - low);
/** Of a normal distribution 95 % lie within so many standard deviations. */
const Z = 1.959964;
/**
 * An end of the band is a quantile of 256 draws. Were they independent, its standard error would be
 * sqrt(p (1 - p) / n) / f(z) = 0.17 standard deviations (f = 0.0584 at the 2.5 % point; David & Nagaraja,
 * Order Statistics, section 10.2, from memory); points of a lattice lie closer. Two of those over 1.96.
 */
const SAMPLING = 0.17;

/** Ambient itself times x, and x squared which nothing moves. */
const TOY = curveSet({
  name: 'toy',
  curves: ({ loop }) => ({
    line: [0, 1, 2].map((x) => [x, x * loop.site.ambientTemperature] as const),
    sure: [0, 1, 2].map((x) => [x, x * x] as const),
    value: loop.site.ambientTemperature,
  }),
});

describe('bands of any curve', () => {
  it('are none where nothing has a ±', () => {
    const of = side(emptyJob());
    for (const source of [...BAND_SOURCES, TOY])
      expect(source.bands(of, [of]), source.name).toBeNull();
  });

  // A ± without more words is two standard deviations (JCGM 100:2008, 6.2.1 with k = 2): u = 1 K.
  // y = x T: u(y) = x u(T) (JCGM 100:2008, 5.1.2).
  it('of a straight model are x u(T) times 1.96 either way', () => {
    const { of, drawn, without } = bands(TOY, side(unsure(2)));
    expect(drawn).toBe(256);
    expect(without).toEqual({ line: 0, sure: 0, value: 0 });
    const T = 35 + 273.15;
    for (const [x, low, high, middle] of of.line!) {
      expect(Math.abs(high - x * (T + Z))).toBeLessThanOrEqual(SAMPLING * x);
      expect(Math.abs(low - x * (T - Z))).toBeLessThanOrEqual(SAMPLING * x);
      expect(Math.abs(middle - x * T)).toBeLessThanOrEqual(0.05 * x);
    }
    expect(of.line).toHaveLength(3);
    // Nothing moves it: no band.
    expect(of.sure).toEqual([]);
    expect(of.value![0]![2] - of.value![0]![1]).toBeCloseTo(of.line![1]![2] - of.line![1]![1], 9);
  });

  it('leave out the loops that have no such curve, and say how many', () => {
    // Warmer than one standard deviation above: 15.9 of 100 (any table of the normal distribution).
    const lost = curveSet({
      name: 'lost',
      curves({ loop }) {
        const { ambientTemperature: T } = loop.site;
        if (T > 36 + 273.15) throw new InvalidInputError('toy', 'is too warm', T);
        return { level: [[0, T], [1, T]] }; // prettier-ignore
      },
    });
    const { of, drawn, without } = bands(lost, side(unsure(2)));
    expect(Math.abs(without.level! / drawn - 0.1587)).toBeLessThan(0.02);
    // What is left is cut off there.
    expect(of.level![0]![2]).toBeLessThanOrEqual(36 + 273.15);
  });

  it('of two sides come of the same draws', () => {
    const warmer = curveSet({
      name: 'warmer',
      curves: ({ id, loop }) => ({
        level: loop.site.ambientTemperature + (id === 'candidate' ? 7 : 0),
      }),
    });
    const job = applyEdit(startCandidate(unsure(2)), 'candidate', 'hose.back.length', '3 m').job;
    const { asFound, candidate } = evaluate(job);
    const sides = [asFound, candidate!];
    const [one, other] = sides.map((of) => warmer.bands(of, sides)!.of.level![0]!);
    expect(other![1] - one![1]).toBeCloseTo(7, 9);
    expect(other![2] - one![2]).toBeCloseTo(7, 9);
  });

  it('are kept by all that they depend on', () => {
    const key = (source: BandSource, of: Side) => source.keyOf(of, [of]);
    const [a, b] = [side(unsure(2)), side(unsure(3))];
    for (const source of BAND_SOURCES) expect(key(source, a), source.name).not.toBe(key(source, b));
    const longer = side(applyEdit(unsure(2), 'asFound', 'reservoirQuestion.pullTime', '40 s').job);
    const named = BAND_SOURCES.filter((source) => key(source, longer) !== key(source, a));
    expect(named.map(({ name }) => name)).toEqual(['inversion', 'reservoir']);
  });
});

describe('bands of the sheets', () => {
  // h = K V^2 / (2 g) with V = Q / (pi d^2 / 4) (Darcy-Weisbach; Crane TP-410): u(h) = u(K) V^2 / (2 g)
  // (JCGM 100:2008, 5.1.2). By hand at Q = 0.3 L/s in 16 mm: V = 1.4921 m/s, V^2 / 2 g = 0.11351 m;
  // K known to ± 4, u = 2: 1.96 * 2 * 0.11351 m = 0.4450 m either way.
  it('head asked: as wide as the law of propagation says for a loss coefficient', () => {
    const base = applyEdit(emptyJob('SI'), 'asFound', 'hose.back.bore', '16 mm').job;
    const band = bands(HEADS, side(pm(base, 'hose.back.otherK', '10', '4'))).of.loop!;
    const Q = 3e-4;
    const above = band.findIndex(([x]) => x >= Q);
    const [[x0, l0, h0], [x1, l1, h1]] = [band[above - 1]!, band[above]!];
    const share = (Q - x0) / (x1 - x0);
    const half = (h0 - l0 + share * (h1 - l1 - (h0 - l0))) / 2;
    // The liquid settles a little warmer with more loss, and straight pieces lie above a parabola.
    expect(Math.abs(half / 0.445 - 1)).toBeLessThan(SAMPLING / Z + 0.01);
  });

  // C = rho c_p V: u(C) = rho c_p u(V). Water at 20 °C, 998.2 kg/m^3 and 4.184 kJ/(kg K) (CRC Handbook,
  // from memory); 10 L ± 1 L, u = 0.5 L: 1.96 * 0.5e-3 * 4.1765e6 = 4.093 kJ/K either way.
  it('what holds the heat: as wide as the ± of the volume', () => {
    const water = applyEdit(emptyJob('SI'), 'asFound', 'coolant.kind', 'water').job;
    const cool = applyEdit(water, 'asFound', 'site.ambient', '20 °C').job;
    const [[, low, high]] = bands(DRIVE, side(pm(cool, 'reservoir.volume', '10 L', '1 L'))).of[
      'mass reservoirLiquid'
    ] as [BandPoint];
    expect(Math.abs((high - low) / 2 / 4093 - 1)).toBeLessThan((SAMPLING * Math.SQRT2) / Z);
  });

  it('at the present wire agree with what How sure gives of the flow', () => {
    const fed = applyEdit(emptyJob('SI'), 'asFound', 'pump.voltsFrom', 'feed').job;
    const base = applyEdit(fed, 'asFound', 'view.duty', 'cruise').job;
    const of = side(pm(base, 'hose.delivery.bore', '16 mm', '2 mm'));
    const flow = spread(finished(sureness(of, FULL))!.draws['flow-cruise'])!;
    const area = copperArea(toFeed(of.values).circuit.wire.size);
    const band = bands(FEED, of).of.flow!;
    const after = band.findIndex(([x]) => x >= area);
    const at = (end: 1 | 2) => {
      const [a, b] = [band[after - 1]!, band[after]!];
      return a[end] + ((area - a[0]) / (b[0] - a[0])) * (b[end] - a[end]);
    };
    // The curve is straight between the wires drawn.
    expect(Math.abs(at(1) - flow.low)).toBeLessThan(SAMPLING * flow.sd + 0.002 * flow.median);
    expect(Math.abs(at(2) - flow.high)).toBeLessThan(SAMPLING * flow.sd + 0.002 * flow.median);
    expect(flow.sd / flow.median).toBeGreaterThan(0.01);
  });

  it('hold the drive as entered, and are half as wide for half the ±', () => {
    const wide = bands(DRIVE, side(unsure(4))).of.reservoir!;
    const narrow = bands(DRIVE, side(unsure(2))).of.reservoir!;
    const run = side(unsure(4)).warmUp;
    if (!run.ok) throw new Error(run.problem.message);
    expect(wide.length).toBeGreaterThan(100);
    for (const [t, low, high] of wide) {
      const value = readAt(run.value.history, 'reservoir', t);
      expect(value).toBeGreaterThanOrEqual(low - 1e-3);
      expect(value).toBeLessThanOrEqual(high + 1e-3);
    }
    const last = width(wide).at(-1)! / width(narrow).at(-1)!;
    expect(Math.abs(last - 2)).toBeLessThan(0.05);
    // Ambient by itself: the loop rises with it, two standard deviations either way.
    expect(width(wide).at(-1)!).toBeGreaterThan(3);
    expect(width(wide).at(-1)!).toBeLessThan(12);
  });

  it('of pump and loop cross where the loop settles', () => {
    const job = pm(emptyJob('SI'), 'hose.suction.bore', '19 mm', '2 mm');
    const { pump, loop } = bands(HEADS, side(job)).of;
    const settled = side(job).steady.cruise;
    if (!settled.ok) throw new Error(settled.problem.message);
    const { flow } = settled.value.operating;
    const above = loop!.findIndex(([x]) => x >= flow);
    const [low, high] = [loop![above - 1]![1], loop![above]![2]];
    // The hose moves the loop; the pump not even by the liquid's warmth, which its curve does not know.
    expect(settled.value.operating.head).toBeGreaterThan(low);
    expect(settled.value.operating.head).toBeLessThan(high);
    expect(high / low).toBeGreaterThan(1.02);
    expect(pump).toEqual([]);
  });

  it('against the day: rises with it, holds the loop as entered', () => {
    const job = pm(unsure(1), 'soak.engineConductance', '30 W/K', '10 W/K');
    const band = bands(AMBIENT_DAYS, side(job)).of.reservoir!;
    const middles = band.map(([, , , middle]) => middle);
    expect(middles).toEqual(middles.toSorted((a, b) => a - b));
    const settled = side(job).steady.cruise;
    if (!settled.ok) throw new Error(settled.problem.message);
    const T = settled.value.temperatures.reservoir;
    const day = 35 + 273.15;
    const above = band.find(([x]) => x >= day)!;
    const below = band.findLast(([x]) => x <= day)!;
    expect(T).toBeGreaterThan(below[1]);
    expect(T).toBeLessThan(above[2]);
  });
}, 60_000);

describe('bands of curves that another is compared with', () => {
  it('with the cap off its pressure is no matter; with it on its ± is a head, Δp/(ρ g)', () => {
    const of = side(pm(emptyJob('SI'), 'reservoir.cap', '100 kPa', '10 kPa'));
    const { margin, vented } = bands(SUCTION, of).of;
    expect(vented).toEqual([]);
    // 10 kPa typed are two standard deviations; Any mix of coolant weighs 900 to 1090 kg/m³ here.
    const heads = [1090, 900].map((rho) => ((Z / 2) * 10e3) / (rho * 9.80665));
    const cold = margin!.filter(([T]) => T < 330);
    expect(cold.length).toBeGreaterThan(3);
    for (const wide of width(cold)) {
      expect(wide / 2).toBeGreaterThan(heads[0]! * (1 - SAMPLING));
      expect(wide / 2).toBeLessThan(heads[1]! * (1 + SAMPLING));
    }
  });
  it('with the cap off what is unsure of the suction hose still counts', () => {
    const of = side(pm(emptyJob('SI'), 'hose.suction.length', '1 m', '0.2 m'));
    expect(bands(SUCTION, of).of['vented']!.length).toBeGreaterThan(3);
  });
  it('fittings as they are: an unsure one moves the flow of wide hoses most', () => {
    const necked = pm(emptyJob('SI'), 'hose.suction.fittingBore', '14 mm', '1 mm');
    const { kept } = bands(PUMP_CHOICES, side(necked)).of;
    // A fitting of one size chokes a wide hose and is nothing to a narrow one.
    const wide = width(kept!);
    expect(wide.at(-1)!).toBeGreaterThan(2 * wide[0]!);
  });
});
