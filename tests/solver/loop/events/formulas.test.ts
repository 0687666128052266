import { describe, expect, it } from 'vitest';
import * as events from '$lib/solver/loop/events/formulas';

describe('lines of a drive with events', () => {
  it('a pound of ice takes up 143.4 Btu', () => {
    // 144 Btu/lb is the figure of a ton of refrigeration (12 000 Btu/h, 2000 lb in 24 h): 288 000 / 2000.
    // Melting alone is within half a per cent of it.
    const E = events.meltingHeat.value({ m_0: 0.45359237, m_1: 0 });
    expect(Math.abs(E / 1055.05585 / 144 - 1)).toBeLessThan(0.005);
  });
  it('a gallon of hose at a gallon a minute takes a minute', () => {
    const gallon = 3.785411784e-3;
    expect(events.hoseTime.value({ V_h: gallon, Q: gallon / 60 })).toBeCloseTo(60, 9);
  });
  it('parts add up, shares are shares', () => {
    expect(events.keptInParts.value({ E_s: 1, E_h: 2, E_m: 3, E_v: 4 })).toBe(10);
    expect(events.runningTime.value({ t_on: 30, t: 120 })).toBe(0.25);
    expect(events.peakShift.value({ T_e: 350, T_p: 340 })).toBe(10);
  });
});
