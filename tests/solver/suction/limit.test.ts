import { describe, expect, it } from 'vitest';
import { coolantProperties } from '../../../src/lib/solver/fluids/coolant';
import { hydraulicModel } from '../../../src/lib/solver/hydraulics/operatingPoint';
import {
  suctionLimitTemperature,
  ventedSuctionMargin,
} from '../../../src/lib/solver/suction/limit';
import type { Loop } from '../../../src/lib/solver/loop/types';
import { exampleLoop } from '../hydraulics/exampleLoop';

const limitOf = (loop: Loop) => suctionLimitTemperature(loop, hydraulicModel(loop));
const tank = (change: Partial<Loop['reservoir']>): Loop => ({
  ...exampleLoop,
  reservoir: { ...exampleLoop.reservoir, ...change },
});

describe('how hot before the suction head runs short', () => {
  it('there the margin is used up', () => {
    const T = limitOf(exampleLoop)!;
    const { rho, mu } = coolantProperties(exampleLoop.coolant, T);
    const { npshAvailable } = hydraulicModel(exampleLoop).operatingPoint({ rho, mu }, T);
    expect(npshAvailable).toBeCloseTo(exampleLoop.pump.npshRequired, 4);
  });
  // Less air above and a lower tank both take suction head away; a cap gives some.
  it('comes sooner at altitude and with a low tank, later under a cap', () => {
    const T = limitOf(exampleLoop)!;
    const high = { ...exampleLoop, site: { ...exampleLoop.site, altitude: 2500 } };
    expect(limitOf(high)!).toBeLessThan(T);
    expect(limitOf(tank({ levelAbovePump: -1 }))!).toBeLessThan(T);
    expect(limitOf(tank({ capGauge: 3e4 }))!).toBeGreaterThan(T);
  });
  it('is not there where the margin holds over the whole range of the liquid', () =>
    expect(limitOf(tank({ capGauge: 4e5 }))).toBeNull());
  it('is not there where the margin is gone from the start', () =>
    expect(limitOf(tank({ levelAbovePump: -20 }))).toBeNull());
});

// Source: definition of NPSH (ISO 9906:2012): a cap of 110 kPa is worth 110 kPa/(ρ g) of head.
it('the cap off takes its pressure as head', () => {
  const T = 350;
  const { rho, mu } = coolantProperties(exampleLoop.coolant, T);
  const open = ventedSuctionMargin(exampleLoop, { rho, mu }, T);
  const capped = tank({ capGauge: 110e3 });
  const { npshAvailable } = hydraulicModel(capped).operatingPoint({ rho, mu }, T);
  const margin = npshAvailable - exampleLoop.pump.npshRequired;
  expect(margin - open).toBeCloseTo(110e3 / (rho * 9.80665), 9);
  expect(ventedSuctionMargin(capped, { rho, mu }, T)).toBe(open);
});
