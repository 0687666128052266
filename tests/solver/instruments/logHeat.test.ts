/**
 * From the log, how much heat, and how sure? 140 °F in, 126 out, 6.0 gpm of 50/50. Figures computed apart
 * from this project; the heat itself is held where the diagnosis is tested, here is its ±.
 */
import { describe, expect, it } from 'vitest';
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import { measuredDrop, measuredHeat } from '$lib/solver/diagnosis/formulas';
import { coolantProperties } from '$lib/solver/fluids/coolant';

const fahrenheit = (f: number) => (f + 459.67) / 1.8;
const gpm = 3.785411784e-3 / 60;

function heat(
  T_in = fahrenheit(140),
  T_out = fahrenheit(126),
  V = 6 * gpm,
  coolant: Parameters<typeof coolantProperties>[0] = {
    kind: 'ethylene-glycol',
    massFraction: 0.527,
  },
): number {
  const { rho, cp } = coolantProperties(coolant, (T_in + T_out) / 2);
  const C_l = liquidCapacityRate.value({ rho, V, c_p: cp });
  return measuredHeat.value({ C_l, dT: measuredDrop.value({ T_in, T_out }) });
}

/** ± of the heat as the sheets compute it, each reading moved by its own ±, as a share. */
function share(sensor: number, flow: number): number {
  const u = sensor / 1.8;
  return (
    Math.hypot(
      heat(fahrenheit(140) + u) - heat(),
      heat(fahrenheit(140), fahrenheit(126) + u) - heat(),
      heat(fahrenheit(140), fahrenheit(126), 6 * gpm * (1 + flow)) - heat(),
    ) / heat()
  );
}

describe('heat from a drop of 14 °F', () => {
  it.each([
    ['±1 °F per sensor', 1, 0, 0.1],
    ['and ±10 % of flow', 1, 0.1, 0.14],
    ['±3 °F per sensor', 3, 0, 0.3],
  ])('%s', (_, sensor, flow, said) => {
    // Said in whole per cents.
    expect(Math.abs(share(sensor, flow) - said)).toBeLessThan(0.005);
  });
  it('taken with the properties of water it is 14.5 % too much', () => {
    const water = heat(undefined, undefined, undefined, { kind: 'water', massFraction: 0 });
    expect(Math.abs(water / heat() - 1.145)).toBeLessThan(0.02);
  });
});
