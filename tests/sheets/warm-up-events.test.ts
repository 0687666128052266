/** The drive with what may happen on the way, as the sheet tells it. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { content, plainContent } from '../../sheets/warm-up-and-recovery/content';
import {
  eventTemperatures,
  flowStrip,
  hasIce,
  iceStrip,
  listOf,
  voltsStrip,
} from '../../sheets/warm-up-and-recovery/eventCharts';
import { eventsOf, KEEPING } from '../../sheets/warm-up-and-recovery/eventStudy';
import { demoJob, edited, JOBS } from './jobs';
import { walkContent } from './walk';

const QUIET = { 'events.airAt': '', 'events.pumpOffAt': '', 'events.pumpOnAt': '' };
const side = (changes: Readonly<Record<string, string>>) =>
  evaluate(edited(demoJob(), { ...QUIET, ...changes })).asFound;
const said = (changes: Readonly<Record<string, string>>) => content(side(changes));
const codes = (changes: Readonly<Record<string, string>>) =>
  said(changes).findings.map(({ code }) => code);
const value = (changes: Readonly<Record<string, string>>, id: string) =>
  said(changes).results.find((r) => r.id === id)!.value;

const BREAKER = { 'pump.voltsFrom': 'feed', 'feed.protection.rated': '4 A' };
const ICE = {
  'coolant.kind': 'water',
  'site.ambient': '70 °F',
  'reservoir.totalVolume': '6 gal',
  'events.ice': '10 lb',
};
const HOT = { 'reservoir.vent': 'vented', 'site.ambient': '115 °F', 'fans.volts': '4 V' };

describe.each(Object.keys(JOBS))('%s', (name) => {
  it('draws and tells only numbers', () => {
    const { asFound, candidate } = evaluate(JOBS[name]!());
    for (const chart of [
      eventTemperatures(asFound, candidate),
      flowStrip(asFound, candidate),
      voltsStrip(asFound, candidate),
      iceStrip(asFound, candidate),
    ]) {
      for (const { points } of chart.curves ?? []) {
        expect(points.flat().every(Number.isFinite)).toBe(true);
      }
      for (const { x, y } of chart.spots ?? []) expect([x, y].every(Number.isFinite)).toBe(true);
    }
    for (const { sentence } of listOf(asFound)) {
      for (const word of sentence) if (typeof word !== 'string') expect(word.value).not.toBeNaN();
    }
  });
});

describe.each([
  ['a breaker that opens', BREAKER],
  ['ice', ICE],
  ['boiling', HOT],
  ['a thermostat and a warm bay', { 'events.fans': 'reservoir', 'events.underhood': 'on' }],
] as const)('%s', (_, changes) => {
  it('leaves lines that can be rebuilt, and a heat balance that closes', () => {
    const content = said(changes);
    for (const units of ['US', 'SI'] as const) expect(walkContent(content, units)).toEqual([]);
    const line = content.lines.find(({ id }) => id === 'events-energy');
    if (line?.kind !== 'balance') throw new Error('no balance of the drive');
    expect(line.unknown.value).toBeLessThan(1e-6);
  });
});

describe('what the sheet tells', () => {
  it('a breaker that opens: told, counted, flow gone with the volts', () => {
    expect(codes(BREAKER)).toContain('events-trips');
    const trips = value(BREAKER, 'breaker-trips')!;
    expect(trips).toBeGreaterThan(3);
    // The first trip from cold is that of the closed form: bay and current do not move before it.
    const hand = said(BREAKER).lines.find(({ id }) => id === 'events-trip-time');
    if (hand?.kind !== 'formula') throw new Error('no line of the trip');
    expect(Math.abs(value(BREAKER, 'first-trip')! - hand.value)).toBeLessThan(1e-3);
    const listed = listOf(side(BREAKER));
    expect(listed.length).toBeLessThan(16);
    expect(listed.some(({ number }) => number === null)).toBe(true);
    const outcome = eventsOf(side(BREAKER));
    if (!outcome.ok) throw new Error(outcome.problem.message);
    const { run, volts } = outcome.value;
    run.history.flow.forEach((flow, i) => {
      if (volts[i] === 0) expect(flow).toBe(0);
    });
  });
  it('air in the pump: flow gone at full volts, and only a rest helps', () => {
    const AIR = { 'events.airAt': '27.5 min' };
    const outcome = eventsOf(side(AIR));
    if (!outcome.ok) throw new Error(outcome.problem.message);
    const { run, volts } = outcome.value;
    expect(run.history.flow.at(-1)).toBe(0);
    expect(volts.at(-1)).toBeGreaterThan(5);
    const rested = { ...AIR, 'events.pumpOffAt': '35 min', 'events.pumpOnAt': '36 min' };
    expect(value(rested, 'flow-share')!).toBeGreaterThan(value(AIR, 'flow-share')!);
    expect(codes(rested)).toContain('events-prime');
  });
  it('a pump that stands: charge air higher, tank lower than with flow', () => {
    // The fault table of the trade: a stopped pump leaves the tank flat while the intake climbs.
    const line = (id: string) => {
      const found = said({ 'events.airAt': '20 min' }).lines.find((l) => l.id === id);
      return found?.kind === 'formula' ? found.value : NaN;
    };
    expect(line('charge-shift')).toBeGreaterThan(5);
    expect(line('reservoir-shift')).toBeLessThanOrEqual(0.1);
  });
  it('ice: on the plot, in the list, in the balance', () => {
    expect(codes(ICE)).toContain('events-ice');
    expect(hasIce(side(ICE), null)).toBe(true);
    expect(listOf(side(ICE)).length).toBe(1);
    expect(value(ICE, 'ice-gone')).toBeGreaterThan(0);
  });
  it('boiling and its steam, where the tank is open', () => {
    expect(codes(HOT)).toContain('events-boil');
    expect(value(HOT, 'steam-lost')!).toBeGreaterThan(0);
    expect(value(HOT, 'cap-lifts')).toBeNull();
  });
  it('a sealed tank: the cap lifts', () => {
    expect(codes({})).toContain('events-cap');
  });
  it('what cannot be followed is said, and the plain drive stands', () => {
    const bad = said({ 'events.ice': '5 lb' });
    expect(bad.findings.map(({ code }) => code)).toContain('events-refused');
    expect(bad.results.find(({ id }) => id === 'peak-charge')!.value).not.toBeNull();
    expect(bad.lines.map(({ id }) => id)).toContain('energy-closure');
    expect(codes({ 'events.pumpOnAt': '5 min' })).toContain('events-refused');
    expect(
      codes({ 'events.fans': 'reservoir', 'events.fansOn': '90 °F', 'events.fansOff': '95 °F' }),
    ).toContain('events-refused');
  });
  it('before it is worked out the plain drive is shown', () => {
    const { results, findings } = plainContent(side({}));
    expect(results.map(({ id }) => id)).not.toContain('breaker-trips');
    expect(findings.map(({ code }) => code)).toContain('events-under-way');
  });
  it('depends on nothing that only other sheets use', () => {
    const key = (changes: Readonly<Record<string, string>>) => KEEPING.keyOf(side(changes));
    expect(key({ 'measured.traffic.volts': '9 V', 'runaway.flowShare': '50 %' })).toBe(key({}));
    expect(key({ 'events.ice': '1 lb' })).not.toBe(key({}));
    expect(key({ 'feed.protection.rated': '4 A' })).not.toBe(key({}));
    expect(key({ 'reservoir.volume': '1 gal' })).not.toBe(key({}));
  });
});
