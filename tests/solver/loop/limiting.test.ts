/**
 * What limits a loop, from the physics alone: a part grown without end cannot limit any more, a part
 * taken away must.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limiting, LEAST_GAIN, NEXT_SIZE, type LimitingPart } from '$lib/solver/loop/limiting';
import { scaledCore } from '$lib/solver/loop/frontWhatIf';
import { LIMITING_PARTS, withMore } from '$lib/solver/loop/limitingParts';
import { prepared, prepareLoop, type PreparedLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { DutyId, Loop } from '$lib/solver/loop/types';
import { exampleLoop, stoppedLoop } from './example';

const SOURCE = 13.8;
const FEED = { volts: exampleLoop.pump.volts, source: SOURCE };
const in_ = (duty: DutyId) => (ready: PreparedLoop) => steady(ready, duty).chargeOut;
const gains = (loop: Loop | PreparedLoop, duty: DutyId, source = SOURCE) => {
  const found = limiting(prepared(loop), in_(duty), source)!;
  const of = new Map(found.parts.map(({ part, gain }) => [part, gain]));
  return { part: found.part, of: (part: LimitingPart) => of.get(part) ?? 0 };
};
const example = prepareLoop(exampleLoop);
/** The example with a front exchanger of so many times its conductance. */
const fronted = (factor: number, loop = exampleLoop): PreparedLoop => {
  const ready = prepareLoop(loop);
  return { ...ready, frontCore: scaledCore(ready.frontCore, factor) };
};
const AIR: readonly (LimitingPart | null)[] = ['fans', 'shroud', 'opening'];
const LIQUID: readonly LimitingPart[] = ['pump', 'feed', 'hoses', 'passages'];

describe('what limits', () => {
  it('is the front exchanger where little of it is left', () => {
    // The whole face behind the shroud and no air coming round: nothing else can lend it area.
    const sealed: Loop = {
      ...exampleLoop,
      fans: { ...exampleLoop.fans, coverage: 1 },
      airPath: { ...exampleLoop.airPath, recirculation: 0 },
    };
    expect(gains(fronted(0.1, sealed), 'traffic').part).toBe('front');
    expect(gains(fronted(0.1, sealed), 'cruise').part).toBe('front');
  });

  it('is never an enormous exchanger: it moves on to the air and the flow', () => {
    for (const duty of ['traffic', 'pull'] as const) {
      const { of, part } = gains(fronted(50), duty);
      expect(Math.abs(of('front'))).toBeLessThan(LEAST_GAIN);
      expect(part).not.toBe('front');
    }
    // Standing in traffic with a core that takes all the air can carry, only more air carries more.
    const { of } = gains(fronted(50), 'traffic');
    const air = Math.max(of('fans'), of('shroud'), of('opening'));
    expect(air).toBeGreaterThan(of('cooler'));
    expect(air).toBeGreaterThan(of('front'));
  });

  it('is the feed where the pump has lost most of its volts and the source has them', () => {
    const on = (volts: number) =>
      gains({ ...exampleLoop, pump: { ...exampleLoop.pump, volts } }, 'pull');
    const { of, part } = on(1.5);
    expect(part).toBe('feed');
    // A quarter more volts lifts flow and head, a larger pump at the same volts lifts only one of them.
    for (const other of LIQUID) expect(of('feed')).toBeGreaterThanOrEqual(of(other));
    expect(of('feed')).toBeGreaterThan(of('pump'));
    expect(of('feed')).toBeGreaterThan(on(12).of('feed'));
  });

  it('is the feed, and only it, where the pump stands still for want of volts', () => {
    const { of, part } = gains(stoppedLoop, 'pull');
    expect(part).toBe('feed');
    expect(of('hoses')).toBe(0);
  });

  it('is never a feed that loses nothing', () => {
    const { of } = gains(exampleLoop, 'pull', 13);
    expect(of('feed')).toBe(0);
  });

  it('is the fans in traffic, standing still, and the opening on the road', () => {
    const still: Loop = {
      ...exampleLoop,
      duties: {
        ...exampleLoop.duties,
        traffic: { ...exampleLoop.duties.traffic, vehicleSpeed: 0 },
      },
    };
    expect(gains(fronted(20, still), 'traffic').of('opening')).toBeCloseTo(0, 6);
    expect(AIR).toContain(gains(fronted(20, still), 'traffic').part);
    const fanless: Loop = { ...exampleLoop, fans: { ...exampleLoop.fans, count: 0 } };
    const road = gains(fronted(20, fanless), 'pull');
    expect(road.of('fans')).toBe(0);
    expect(road.of('opening')).toBeGreaterThan(0);
  });

  it('never is the tank where the loop has settled: volume is delay', () => {
    for (const duty of ['traffic', 'cruise', 'pull'] as const) {
      expect(gains(exampleLoop, duty).of('tank')).toBeCloseTo(0, 9);
    }
  });

  it('counts heat that is not charge heat', () => {
    const soaked: Loop = {
      ...exampleLoop,
      soak: { ...exampleLoop.soak, engineConductance: 80 },
    };
    expect(gains(soaked, 'cruise').part).toBe('soak');
  });

  it('lists every part tried, the greatest gain first', () => {
    const found = limiting(example, in_('pull'), SOURCE)!;
    const list = found.parts.map(({ gain }) => gain);
    expect(list).toEqual([...list].sort((a, b) => b - a));
    expect(new Set(found.parts.map(({ part }) => part)).size).toBe(found.parts.length);
    for (const { T, gain } of found.parts) expect(found.T - T).toBe(gain);
  });

  it('has no answer where the loop has no such temperature', () => {
    expect(limiting(example, () => null, SOURCE)).toBeNull();
  });
});

describe('a part with more capacity', () => {
  it.each(LIMITING_PARTS.filter((part) => part !== 'shroud' && part !== 'tank'))(
    'never makes a pull hotter: %s',
    (part) => {
      const before = steady(exampleLoop, 'pull').chargeOut!;
      const more = withMore(example, part, NEXT_SIZE, FEED)!;
      expect(steady(more, 'pull').chargeOut!).toBeLessThanOrEqual(before + 1e-9);
    },
  );

  it('keeps shares inside their ends', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.constantFrom(...LIMITING_PARTS),
        (factor, part) => {
          const more = (withMore(example, part, factor, FEED) ?? example).loop;
          expect(more.fans.coverage).toBeLessThanOrEqual(1);
          expect(more.airPath.ramRecovery).toBeLessThanOrEqual(1);
          expect(more.pump.volts).toBeLessThanOrEqual(FEED.source);
          for (const duty of Object.values(more.duties)) {
            expect(duty.compressorEfficiency).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });

  it('of hoses passes a quarter more at the same loss, to about what a bend departs from a pipe', () => {
    // Smooth pipe: dp goes with Q^1.75 D^-4.75 (Blasius), so D = 1.25^0.4 asks 1.25^(1.75 - 1.9) of the
    // loss: 3 % less. With bends and ends, Q² D^-4, it is 8 % more.
    const D = NEXT_SIZE ** 0.4;
    const hose = withMore(example, 'hoses', NEXT_SIZE, FEED)!.loop.hoses.delivery;
    expect(hose.bore / exampleLoop.hoses.delivery.bore).toBeCloseTo(D, 12);
  });
});
