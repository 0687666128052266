/** The solver alone, on an example loop described afresh each time, as after an edit. */
import { simulate } from '$lib/solver/loop/events/simulate';
import { steady } from '$lib/solver/loop/steady';
import { coldState, warmUp } from '$lib/solver/loop/warmUp';
import type { WarmUpRequest } from '$lib/solver/loop/types';
import { exampleLoop } from '../solver/loop/example';
import { timed, type Entry } from './measure';

/** A loop no cache has seen: one input differs from run to run. */
function edited(i: number) {
  const site = { ...exampleLoop.site, ambientTemperature: 300 + (i % 97) * 0.1 };
  return { ...exampleLoop, site };
}

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

function halfHour(i: number) {
  const loop = edited(i);
  warmUp(loop, {
    schedule: SCHEDULE,
    start: coldState(loop),
    chargeLimit: 340,
    recoveryBand: 2,
  });
}

/** The same half hour with everything that switches on the way: a dozen trips, fans, a warm bay. */
function halfHourOfEvents(i: number) {
  const loop = edited(i);
  simulate(loop, {
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

export function solverEntries(): Entry[] {
  let i = 0;
  return [
    // A quarter of the frame, the rest is for the page.
    timed('steady-solve', () => void steady(edited(i++), 'cruise'), {
      runs: 500,
      warmUp: 200,
      aim: 4,
    }),
    // Of the 50 ms that an edit may take where a transient runs.
    timed('warm-up-30min', () => halfHour(i++), { runs: 200, warmUp: 40, aim: 30 }),
    timed('transient-events-30min', () => halfHourOfEvents(i++), {
      runs: 200,
      warmUp: 40,
      aim: 10,
    }),
  ];
}
