import { describe, expect, it } from 'vitest';
import { closedForm } from '$lib/solver/loop/closedForm';
import { steady } from '$lib/solver/loop/steady';
import { coldState } from '$lib/solver/loop/warmUp';
import { exampleLoop, stoppedLoop } from './example';

describe('closed form beside integration', () => {
  it.each(['traffic', 'cruise', 'pull'] as const)('after one time constant, %s', (duty) => {
    const both = closedForm(exampleLoop, duty, coldState(exampleLoop))!;
    const way = both.T_end - both.T_0;
    expect(both.T_end).toBeCloseTo(steady(exampleLoop, duty).temperatures.reservoir, 9);
    // 1 - 1/e by definition of the time constant.
    expect((both.T_closed - both.T_0) / way).toBeCloseTo(1 - Math.exp(-1), 9);
    // One mass against five: what is left out (lag between parts, conductances that move) is a tenth.
    expect(Math.abs(both.T_integrated - both.T_closed)).toBeLessThan(way / 10);
  });
  it('there is none where nothing flows', () => {
    expect(closedForm(stoppedLoop, 'cruise', coldState(stoppedLoop))).toBeNull();
  });
});
