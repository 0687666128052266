/** Both drawings of the loop, in either order of the cores, wide and narrow: do they show the loop there is? */
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { coresInOrder, type CoreId } from '$lib/solver/loop/order';
import { steady } from '$lib/solver/loop/steady';
import type { LiquidOrder, Loop } from '$lib/solver/loop/types';
import { PLANS } from '../../sheets/instruments/drawing';
import type { PlaceId } from '../../sheets/instruments/places';
import {
  RUNS,
  type Box,
  type Corner,
  type Drawing,
  type RunName,
  type TagName,
} from '../../sheets/loop-balance/drawing';
import { DRAWINGS } from '../../sheets/loop-balance/drawings';
import { otherOrder, picture } from '../../sheets/loop-balance/picture';
import { demoJob, DUTY_IDS } from './jobs';

const ORDERS = ['cooler-first', 'front-first'] as const;
const ALL = ORDERS.flatMap((order) =>
  (['wide', 'narrow'] as const).map((w) => [order, w] as const),
);

type Part = CoreId | 'reservoir' | 'pump';
type Leg = readonly [Corner, Corner];

const between = (x: number, a: number, b: number) =>
  Math.max(Math.min(a, b), Math.min(x, Math.max(a, b)));
/** How far a point is from a piece of hose; all of them run along an axis. */
const fromLeg = ([x, y]: Corner, [[ax, ay], [bx, by]]: Leg) =>
  Math.hypot(x - between(x, ax, bx), y - between(y, ay, by));
const legs = (corners: readonly Corner[]): Leg[] =>
  corners.slice(1).map((corner, i) => [corners[i]!, corner] as const);
const fromRun = (point: Corner, corners: readonly Corner[]) =>
  Math.min(...legs(corners).map((leg) => fromLeg(point, leg)));

const boxOf = (d: Drawing, part: Part): Box =>
  part === 'pump'
    ? { x: d.pump.x - d.pump.r, y: d.pump.y - d.pump.r, w: 2 * d.pump.r, h: 2 * d.pump.r }
    : { chargeCooler: d.cooler, frontExchanger: d.front, reservoir: d.reservoir }[part];

function onEdge(d: Drawing, part: Part, [x, y]: Corner): boolean {
  if (part === 'pump') return Math.hypot(x - d.pump.x, y - d.pump.y) === d.pump.r;
  const b = boxOf(d, part);
  const upright = (x === b.x || x === b.x + b.w) && y > b.y && y < b.y + b.h;
  const level = (y === b.y || y === b.y + b.h) && x > b.x && x < b.x + b.w;
  return upright || level;
}

/** What each run comes from and goes to. */
function joined(order: LiquidOrder): Record<RunName, readonly [Part, Part]> {
  const [first, second] = coresInOrder({ liquidOrder: order });
  return {
    suction: ['reservoir', 'pump'],
    delivery: ['pump', first],
    transfer: [first, second],
    back: [second, 'reservoir'],
  };
}

/** The run on which liquid comes to a core, and the one on which it leaves it. */
const runTo = (order: LiquidOrder, core: CoreId) =>
  RUNS.find((run) => joined(order)[run][1] === core)!;
const runFrom = (order: LiquidOrder, core: CoreId) =>
  RUNS.find((run) => joined(order)[run][0] === core)!;

const nearestRun = (d: Drawing, point: Corner): RunName =>
  RUNS.toSorted((a, b) => fromRun(point, d.runs[a]) - fromRun(point, d.runs[b]))[0]!;

describe.each(ALL)('the loop, %s, %s', (order, width) => {
  const d = DRAWINGS[order][width];

  it('each run starts and ends on the edge of the part it joins', () => {
    for (const run of RUNS) {
      const corners = d.runs[run];
      const [from, to] = joined(order)[run];
      expect(onEdge(d, from, corners[0]!), `${run} from ${from}`).toBe(true);
      expect(onEdge(d, to, corners.at(-1)!), `${run} to ${to}`).toBe(true);
    }
  });

  it('no run goes through a part, meets another run or the charge air', () => {
    const charge: Leg = [
      [d.charge.x, d.charge.from],
      [d.charge.x, d.charge.to],
    ];
    const pieces = RUNS.flatMap((run) => legs(d.runs[run]).map((leg) => [run, leg] as const));
    const apart = ([[ax, ay], [bx, by]]: Leg, x0: number, y0: number, x1: number, y1: number) =>
      Math.max(ax, bx) <= x0 ||
      Math.min(ax, bx) >= x1 ||
      Math.max(ay, by) <= y0 ||
      Math.min(ay, by) >= y1;
    for (const [run, leg] of pieces) {
      const [[ax, ay], [bx, by]] = leg;
      expect(ax === bx || ay === by, `${run} is drawn along an axis`).toBe(true);
      for (const part of ['reservoir', 'pump', 'chargeCooler', 'frontExchanger'] as const) {
        const { x, y, w, h } = boxOf(d, part);
        expect(apart(leg, x, y, x + w, y + h), `${run} and ${part}`).toBe(true);
      }
      const others = [...pieces.filter(([other]) => other !== run), ['charge', charge] as const];
      for (const [other, [[cx, cy], [dx, dy]]] of others) {
        const clear = apart(
          leg,
          Math.min(cx, dx) - 6,
          Math.min(cy, dy) - 6,
          Math.max(cx, dx) + 6,
          Math.max(cy, dy) + 6,
        );
        expect(clear, `${run} and ${other}`).toBe(true);
      }
    }
  });

  it('the temperatures of the liquid hang at the run they are of', () => {
    const tags: readonly [TagName, RunName][] = [
      ['toFront', runTo(order, 'frontExchanger')],
      ['fromFront', runFrom(order, 'frontExchanger')],
      ['toCooler', runTo(order, 'chargeCooler')],
      ['fromCooler', runFrom(order, 'chargeCooler')],
    ];
    for (const [tag, run] of tags) {
      expect(nearestRun(d, [d.tags[tag].x, d.tags[tag].y]), tag).toBe(run);
    }
  });

  it('everything stands on the page', () => {
    const points = [
      ...RUNS.flatMap((run) => d.runs[run]),
      ...Object.values(d.tags).map((t) => [t.x, t.y]),
    ];
    for (const [x, y] of points) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(d.width);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(d.height);
    }
  });
});

describe.each(ALL)('the plan of instruments, %s, %s', (order, width) => {
  const { loop: d, spots, r } = PLANS[order][width];

  it('is drawn on the loop of that order', () => expect(d).toBe(DRAWINGS[order][width]));

  it('each spot in the liquid lies on its run, clear of the parts', () => {
    const on: readonly [PlaceId, RunName][] = [
      ['frontIn', runTo(order, 'frontExchanger')],
      ['frontOut', runFrom(order, 'frontExchanger')],
      ['coolerIn', runTo(order, 'chargeCooler')],
      ['coolerOut', runFrom(order, 'chargeCooler')],
      ['pumpInlet', 'suction'],
      ['pumpOutlet', 'delivery'],
      ['flow', 'back'],
    ];
    for (const [place, run] of on) {
      expect(fromRun(spots[place], d.runs[run]), `${place} on ${run}`).toBe(0);
      const ends = [d.runs[run][0]!, d.runs[run].at(-1)!];
      for (const [x, y] of ends) {
        expect(Math.hypot(spots[place][0] - x, spots[place][1] - y), place).toBeGreaterThan(r);
      }
    }
  });

  it('along a run shared by two cores, the place left first comes first', () => {
    const [first] = coresInOrder({ liquidOrder: order });
    const [leaving, reaching] =
      first === 'chargeCooler'
        ? (['coolerOut', 'frontIn'] as const)
        : (['frontOut', 'coolerIn'] as const);
    const start = d.runs.transfer[0]!;
    const along = (place: PlaceId) =>
      Math.abs(spots[place][0] - start[0]) + Math.abs(spots[place][1] - start[1]);
    expect(along(leaving)).toBeLessThan(along(reaching));
  });

  it('the tank’s spot is in it, the pump’s are on its feed, and no two touch', () => {
    const { x, y, w, h } = d.reservoir;
    const [rx, ry] = spots.reservoir;
    expect(rx > x && rx < x + w && ry > y && ry < y + h).toBe(true);
    for (const place of ['volts', 'amps'] as const) {
      expect(spots[place][0]).toBe(d.pump.x);
      expect(spots[place][1]).toBeGreaterThan(d.pump.y + d.pump.r);
    }
    const all = Object.entries(spots);
    for (const [i, [a, [ax, ay]]] of all.entries()) {
      for (const [b, [bx, by]] of all.slice(i + 1)) {
        expect(Math.hypot(ax - bx, ay - by), `${a} and ${b}`).toBeGreaterThan(2 * r);
      }
    }
  });
});

describe('the numbers on the drawing', () => {
  const { loop } = evaluate(demoJob()).asFound;
  const drawn = (liquidOrder: LiquidOrder, duty: (typeof DUTY_IDS)[number]) => {
    const ordered: Loop = { ...loop, liquidOrder };
    const s = steady(ordered, duty);
    return { t: s.temperatures, p: picture(s, loop.site.ambientTemperature, ordered) };
  };

  it.each(DUTY_IDS)('each run has the colour of the liquid at its end, %s', (duty) => {
    const cooler = drawn('cooler-first', duty);
    expect(cooler.p.runs).toEqual({
      suction: cooler.t.pumpIn,
      delivery: cooler.t.chargeCoolerIn,
      transfer: cooler.t.frontIn,
      back: cooler.t.frontOut,
    });
    const front = drawn('front-first', duty);
    expect(front.p.runs).toEqual({
      suction: front.t.pumpIn,
      delivery: front.t.frontIn,
      transfer: front.t.chargeCoolerIn,
      back: front.t.chargeCoolerOut,
    });
    // The front exchanger cools what the pump delivers, wherever it stands; the other core warms it.
    expect(front.p.runs.transfer).toBeLessThan(front.p.runs.delivery);
    expect(front.p.runs.back).toBeGreaterThan(front.p.runs.transfer);
    expect(cooler.p.runs.transfer).toBeGreaterThan(cooler.p.runs.delivery);
    expect(cooler.p.runs.back).toBeLessThan(cooler.p.runs.transfer);
  });

  it.each(ORDERS)('each tag says what its words say, %s', (order) => {
    const { t, p } = drawn(order, 'cruise');
    const value = (tag: TagName) => p.numbers[tag]![0]!.value;
    expect(value('toFront')).toBe(t.frontIn);
    expect(value('fromFront')).toBe(t.frontOut);
    expect(value('toCooler')).toBe(t.chargeCoolerIn);
    expect(value('fromCooler')).toBe(t.chargeCoolerOut);
  });

  it('says so where the candidate’s order is not the one drawn, and only there', () => {
    const [cooler, front] = ORDERS.map((order) => drawn(order, 'cruise').p) as [
      ReturnType<typeof picture>,
      ReturnType<typeof picture>,
    ];
    expect(otherOrder(cooler, null)).toBeNull();
    expect(otherOrder(front, front)).toBeNull();
    expect(otherOrder(cooler, front)).toMatch(/charge cooler first; .*front exchanger first/);
    expect(otherOrder(front, cooler)).toMatch(/front exchanger first; .*charge cooler first/);
  });
});
