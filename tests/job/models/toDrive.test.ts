import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { eventDrive, toEventRequest } from '$lib/job/models/toDrive';
import { demoJob, edited } from '../../sheets/jobs';

/** Nothing of the demonstration's own happens. */
const QUIET = { 'events.airAt': '', 'events.pumpOffAt': '', 'events.pumpOnAt': '' };
const side = (changes: Readonly<Record<string, string>>) =>
  evaluate(edited(demoJob(), { ...QUIET, ...changes })).asFound;
const asked = (changes: Readonly<Record<string, string>>) => {
  const { values, request } = side(changes);
  if (!request.ok) throw new Error(request.problem.message);
  return toEventRequest(values, request.value);
};

describe('a drive as its blanks ask for it', () => {
  it('asks for nothing that is switched off', () => {
    const plain = asked({
      'events.breaker': 'none',
      'events.hoses': 'parts',
      'events.boiling': 'end',
    });
    expect(Object.keys(plain).sort()).toEqual(['boiling', 'schedule', 'start']);
    expect(plain.boiling).toBe(false);
  });
  it('counts a breaker only where the feed has one', () => {
    expect(asked({}).breaker?.place).toBe('bay');
    expect(asked({ 'events.breaker': 'outside' }).breaker?.place).toBe('outside');
    expect(asked({ 'feed.protection.kind': 'fuse' }).breaker).toBeUndefined();
  });
  it('takes thermostat, ice, bay, air and switch in SI', () => {
    const all = asked({
      'events.fans': 'frontOut',
      'events.fansOn': '104 °F',
      'events.fansOff': '95 °F',
      'events.ice': '10 kg',
      'events.underhood': 'on',
      'events.bayLag': '2 min',
      'events.airAt': '10 min',
      'events.restToPrime': '20 s',
      'events.pumpOffAt': '12 min',
      'events.pumpOnAt': '13 min',
    });
    expect(all.thermostat!.sensor).toBe('frontOut');
    expect(all.thermostat!.onAt).toBeCloseTo(313.15, 6);
    expect(all.thermostat!.offAt).toBeCloseTo(308.15, 6);
    expect(all.ice).toEqual({ mass: 10 });
    expect(all.underhood!.timeConstant).toBe(120);
    expect(all.airBound).toEqual({ at: 600, restToPrime: 20 });
    expect(all.pumpOff).toEqual([{ from: 720, until: 780 }]);
  });
  it('a pump switched off for good is off past the end', () => {
    const { pumpOff, schedule } = asked({ 'events.pumpOffAt': '5 min' });
    const end = schedule.reduce((sum, { duration }) => sum + duration, 0);
    expect(pumpOff![0]!.until).toBeGreaterThan(end);
  });
  it('refuses a pump switched on that was never off', () => {
    expect(() => asked({ 'events.pumpOnAt': '5 min' })).toThrow(/never off/);
  });
  it('crosses to another thread: plain data, nothing lost', () => {
    const { prepared, request, values } = side({ 'events.airAt': '2 min' });
    if (!prepared.ok || !request.ok) throw new Error('not solved');
    const drive = eventDrive(values, prepared.value, request.value);
    expect(structuredClone(drive)).toEqual(drive);
    expect(drive.volts).toHaveLength(drive.run.history.t.length);
  });
});
