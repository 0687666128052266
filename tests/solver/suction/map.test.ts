import { describe, expect, it } from 'vitest';
import { prepareLoop } from '$lib/solver/loop/prepare';
import {
  mapSpan,
  marginBand,
  marginContour,
  marginLevels,
  suctionMap,
} from '$lib/solver/suction/map';
import { pathPoint } from '$lib/solver/suction/path';
import { CAP_STEP, LEVEL_STEP, whatHelps } from '$lib/solver/suction/whatHelps';
import { exampleLoop } from '../hydraulics/exampleLoop';

const prepared = prepareLoop(exampleLoop);
const map = suctionMap(prepared);

describe('the map', () => {
  it('falls with temperature and with flow, near the hot end', () => {
    for (let row = 0; row < map.flows.length; row++) {
      for (let i = 30; i < map.temperatures.length; i++) {
        const here = map.margin[row]![i]!;
        expect(here).toBeLessThan(map.margin[row]![i - 1]!);
        if (row > 0) expect(here).toBeLessThan(map.margin[row - 1]![i]!);
      }
    }
  });
  it('holds the path of the loop', () => {
    const span = mapSpan(prepared);
    for (const T of span.temperatures) {
      const { flow, margin } = pathPoint(prepared, T);
      expect(flow).toBeLessThan(span.flowMax);
      const one = suctionMap(prepared, { temperatures: [T, T], flowMax: flow });
      expect(one.margin[one.flows.length - 1]![0]).toBeCloseTo(margin, 12);
    }
  });
  it('a line of equal margin has that margin, to the width of a pen', () => {
    const contour = marginContour(map, 0);
    expect(contour.length).toBeGreaterThan(5);
    for (const [flow, T] of contour) {
      const one = suctionMap(prepared, { temperatures: [T, T], flowMax: flow });
      expect(Math.abs(one.margin[one.flows.length - 1]![0]!)).toBeLessThan(0.05);
    }
  });
  it('bands of neighbouring margins meet and stay on the map', () => {
    const [under, over] = [marginBand(map, [0, 3]), marginBand(map, [-3, 0])];
    const end = map.temperatures[map.temperatures.length - 1]!;
    under.forEach(([, low, high], i) => {
      expect(low).toBeLessThanOrEqual(high);
      expect(high).toBeLessThanOrEqual(end);
      expect(over[i]![1]).toBe(high);
    });
  });
  it('levels are multiples of the step, zero among them', () => {
    const levels = marginLevels(map, 3, 2);
    expect(levels).toContain(0);
    for (const level of levels) expect(level % 3).toBeCloseTo(0, 12);
  });
});

describe('what helps', () => {
  const T = 365;
  const helps = whatHelps(prepared, T);
  const gain = (id: string) => helps.find((help) => help.id === id)!.gain;
  // Source: definition of NPSH. The flow does not move with cap or level, so the gain is exact.
  it('a cap is worth its pressure as head, a foot of level a foot', () => {
    const { rho } = prepared.liquidAt(T);
    expect(gain('cap')).toBeCloseTo(CAP_STEP / (rho * 9.80665), 9);
    expect(gain('level')).toBeCloseTo(LEVEL_STEP, 9);
  });
  it('hose, cooler liquid and the sea gain too; the largest stands first', () => {
    for (const id of ['bore', 'length', 'cooler', 'sea-level']) expect(gain(id)).toBeGreaterThan(0);
    const gains = helps.map((help) => help.gain);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
  });
  it('marks a cap above what the tank is made for', () => {
    const rated = (ratedGauge: number) => {
      const loop = { ...exampleLoop, reservoir: { ...exampleLoop.reservoir, ratedGauge } };
      return whatHelps(prepareLoop(loop), T).find(({ id }) => id === 'cap')!.allowed;
    };
    expect(rated(CAP_STEP)).toBe(true);
    expect(rated(0.9 * CAP_STEP)).toBe(false);
  });
  it('leaves out what cannot be', () => {
    const { suction } = exampleLoop.hoses;
    const odd = prepareLoop({
      ...exampleLoop,
      site: { ...exampleLoop.site, altitude: 0 },
      hoses: { ...exampleLoop.hoses, suction: { ...suction, bore: 0.05 } },
    });
    const ids = whatHelps(odd, odd.coldest + 1).map(({ id }) => id);
    expect(ids.sort()).toEqual(['cap', 'length', 'level']);
  });
});
