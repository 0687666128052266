import { describe, expect, it } from 'vitest';
import { plugVolts } from '$lib/solver/loop/events/plugVolts';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { exampleLoop } from '../example';

const prepared = prepareLoop(exampleLoop);
const along = (...on: readonly number[]) => ({
  pumpOn: Float64Array.from(on),
  pumpIn: Float64Array.from(on, (_, i) => 310 + 10 * i),
});

describe('volts on the plug', () => {
  it('are those stated while the pump is on, none while it is off', () => {
    expect([...plugVolts(prepared, along(1, 0, 1))]).toEqual([
      exampleLoop.pump.volts,
      0,
      exampleLoop.pump.volts,
    ]);
  });
});
