/** What the solver's bench runs: an example loop described afresh each time, as after an edit. */
import { demoJob } from '$lib/job/demo';
import { evaluate } from '$lib/job/evaluate';
import { finished } from '$lib/job/sure/sureness';
import { uncertainOf } from '$lib/job/sure/surenessInputs';
import { loopModel } from '$lib/job/sure/surenessModel';
import { simulate } from '$lib/solver/loop/events/simulate';
import { preferredValues } from '$lib/solver/instruments/preferred';
import { nearestNetworks, stockOf } from '$lib/solver/instruments/probe/trim/search';
import { steady } from '$lib/solver/loop/steady';
import { coldState, warmUp } from '$lib/solver/loop/warmUp';
import type { WarmUpRequest } from '$lib/solver/loop/types';
import { propagate } from '$lib/solver/uncertainty/propagate';
import { exampleLoop } from '../solver/loop/example';

export { logRuns } from './log';

/** A loop no cache has seen: one input differs from run to run. */
function edited(i: number) {
  const site = { ...exampleLoop.site, ambientTemperature: 300 + (i % 97) * 0.1 };
  return { ...exampleLoop, site };
}

export const balance = (i: number) => steady(edited(i), 'cruise');

const E24 = stockOf(preferredValues('E24', 1, 1e7).map((R) => ({ R })));

/** All networks of three resistors of E24 from 1 ohm to 10 megohm, for a target not just asked for. */
export const threeOfE24 = (i: number) => nearestNetworks(1000 + 37.7 * (i % 211), E24, 3, 4);

/** Half an hour: traffic, road, two pulls, and standing in traffic again. */
const SCHEDULE: WarmUpRequest['schedule'] = [
  { duty: 'traffic', duration: 300 },
  { duty: 'cruise', duration: 600 },
  { duty: 'pull', duration: 12 },
  { duty: 'cruise', duration: 240 },
  { duty: 'pull', duration: 12 },
  { duty: 'cruise', duration: 336 },
  { duty: 'traffic', duration: 300 },
];

export function halfHour(i: number) {
  const loop = edited(i);
  return warmUp(loop, {
    schedule: SCHEDULE,
    start: coldState(loop),
    chargeLimit: 340,
    recoveryBand: 2,
  });
}

/**
 * The demonstration's loop drawn so many times over every input that has a ±, prepared and settled at
 * cruise: what the sheet does, from its compiled setters to the last draw.
 */
export function drawnLoops(samples: number, seed: number) {
  const { values } = evaluate(demoJob()).asFound;
  const inputs = uncertainOf(values);
  const study = {
    inputs: inputs.map(({ distribution }) => distribution),
    axes: inputs.map(({ axis }) => axis),
    outputs: 1,
    samples,
    seed,
  };
  const model = loopModel(values, inputs, (solve) => [solve('cruise').chargeOut ?? NaN]);
  return { inputs: inputs.length, ...finished(propagate(study, model)) };
}

/** The same half hour with everything that switches on the way: a dozen trips, fans, a warm bay. */
export function halfHourOfEvents(i: number) {
  const loop = edited(i);
  return simulate(loop, {
    schedule: SCHEDULE,
    start: coldState(loop),
    cavitation: 'counted',
    boiling: true,
    breaker: {
      breaker: {
        rating: 8,
        referenceTemperature: 298.15,
        lossPerKelvin: 0.003,
        timeConstant: 300,
        reset: 'automatic',
        resetState: 0.6,
      },
    },
    thermostat: { sensor: 'reservoir', onAt: 318, offAt: 313 },
    underhood: { timeConstant: 200, liquidGain: 0.3, inletShare: 0.4 },
  });
}
