/** The solver alone, on an example loop described afresh each time, as after an edit. */
import { steady } from '$lib/solver/loop/steady';
import { exampleLoop } from '../solver/loop/example';
import { timed, type Entry } from './measure';

/** A loop no cache has seen: one input differs from run to run. */
function edited(i: number) {
  const site = { ...exampleLoop.site, ambientTemperature: 300 + (i % 97) * 0.1 };
  return { ...exampleLoop, site };
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
  ];
}
