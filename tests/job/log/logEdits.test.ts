/** Values as measured: the loop described with them does what the fit found. */
import { describe, expect, it } from 'vitest';
import { startCandidate } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import {
  AS_MEASURED,
  asMeasured,
  clock,
  eventReadings,
  measuredEdits,
  withEdits,
} from '$lib/job/log/logEdits';
import type { LogFit } from '$lib/job/log/logRecord';
import { frontExchange } from '$lib/solver/loop/front';
import { uaOfInlet } from '$lib/solver/loop/fromLog/exchange';
import { demoJob } from '../../sheets/jobs';

const job = demoJob();
const found = evaluate(job).asFound;
const fit = job.log!.fit!;
const prepared = (side = found) => {
  if (!side.prepared.ok) throw new Error('the demonstration loop');
  return side.prepared.value;
};
const edits = (of: LogFit = fit) => measuredEdits(prepared(), of, 'US', 10.9);
const measured = () => evaluate(asMeasured(job, edits().edits, 'log')).candidate!;

describe('as measured', () => {
  it('the front exchanger of the candidate has the UA that was found', () => {
    const p = prepared(measured());
    const { at } = fit;
    const liquid = p.liquidAt(at.liquidTemperature);
    const G = frontExchange(p, p.airAt(at.speed), at.flow, liquid).conductance;
    const UA = uaOfInlet(G, {
      arrangement: p.loop.frontExchanger.arrangement,
      air: at.frontAirRate,
      liquid: liquid.rho * liquid.cp * at.flow,
    });
    const target = fit.estimates.find(({ name }) => name === 'frontUA')!.value;
    // The value is typed with four digits.
    expect(UA / target).toBeCloseTo(1, 3);
  });
  it('the charge cooler likewise', () => {
    const p = prepared(measured());
    const { at } = fit;
    const { UA } = p.chargeCore.at({
      airMassFlow: at.chargeAirFlow!,
      liquidFlow: at.flow,
      liquid: p.liquidAt(at.liquidTemperature),
    });
    const target = fit.estimates.find(({ name }) => name === 'chargeUA')!.value;
    expect(UA / target).toBeCloseTo(1, 3);
  });
  it('a flow half as large slows the pump until the loop flows so', () => {
    const slow = { ...fit, at: { ...fit.at, flow: 0.5 * fit.at.flow } };
    const only = edits(slow).edits.filter(({ path }) => path === 'pump.curve');
    const side = evaluate(
      withEdits(startCandidate({ ...job, candidate: null }), 'candidate', only, 'log'),
    );
    const { flow } = prepared(side.candidate!).flowAt(fit.at.liquidTemperature);
    expect(flow / slow.at.flow).toBeCloseTo(1, 2);
  });
  it('a mass that leaves no liquid is not carried over, and says so', () => {
    const light = {
      ...fit,
      estimates: fit.estimates.map((e) =>
        e.name === 'reservoirCapacity' ? { ...e, value: 100 } : e,
      ),
    };
    const { edits: some, left } = edits(light);
    expect(some.map(({ path }) => path)).not.toContain('reservoir.volume');
    expect(left.join(' ')).toMatch(/less than no liquid/);
  });
  it('puts the present candidate aside, says where each value came from, and does not pile up', () => {
    const once = asMeasured(job, edits().edits, 'log demo-log.csv, 3:35 to 6:20');
    expect(once.candidate!.name).toBe(AS_MEASURED);
    expect(once.aside).toEqual([...job.aside, job.candidate!]);
    for (const entry of Object.values(once.candidate!.changes)) {
      expect(entry.from).toBe('log demo-log.csv, 3:35 to 6:20');
      expect(entry.draft).toBeUndefined();
    }
    expect(once.candidate!.changes['frontExchanger.cleanliness']!.pm).toMatch(/%/);
    const twice = asMeasured(once, edits().edits, 'log again');
    expect(twice.aside).toEqual(once.aside);
  });
});

describe('from an event to the diagnosis', () => {
  it('fills the blanks of cruise with what was read afterwards', () => {
    const [event] = job.log!.events;
    const next = withEdits(job, 'asFound', eventReadings(event!, 'US'), 'log');
    const { values } = evaluate(next).asFound;
    expect(values['measured.cruise.flow']!.si! / event!.after.flow!.mean).toBeCloseTo(1, 3);
    expect(values['measured.cruise.volts']!.si).toBeCloseTo(event!.after.volts!.mean, 2);
    expect(values['measured.ambient']!.si).toBeCloseTo(event!.after.ambient!.mean, 1);
    expect(values['measured.cruise.flow']!.from).toBe('log');
  });
  it('times are told in minutes and seconds', () => expect(clock(809.6)).toBe('13:30'));
});
