import { resistancePerMetre } from '$lib/solver/feed/copper';
import { wireArea, wireDiameter } from '$lib/solver/feed/gauge';
import { operatingVoltage, type MotorLoad } from '$lib/solver/feed/motor';
import { largestResistance, thinnestGauge, wireResistance } from '$lib/solver/feed/wire';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const perMetre = (given: Given) => ({
  R_per_m: resistancePerMetre({ by: 'awg', awg: given.number('awg') }, given.number('T')),
});

function loaded(given: Given, motor: MotorLoad) {
  const point = operatingVoltage(given.number('V_source'), given.number('R_feed'), motor);
  if (point.status !== 'runs') throw new Error(point.reason);
  return { V_load: point.volts, current: point.current };
}

export const copperWire: Readonly<Record<string, Adapter>> = {
  'awg-diameter': (given) => {
    const awg = given.number('awg');
    return { diameter: wireDiameter({ awg }), area: wireArea({ awg }) };
  },
  'awg-resistance': perMetre,
  'awg-resistance-table': perMetre,
  'area-resistance': (given) => ({
    R_per_m: resistancePerMetre({ by: 'area', area: given.number('area') }, given.number('T')),
  }),
  'iso6722-max-resistance': (given) => ({
    R_per_m: largestResistance(given.number('nominal_area'), given.numberOr('T', 293.15)),
  }),
  'voltage-drop': (given) => {
    const current = given.number('current');
    const R_total =
      wireResistance({
        size: { by: 'awg', awg: given.number('awg') },
        lengthOneWay: given.number('length_one_way'),
        temperature: given.number('T'),
      }) + given.numberOr('R_contacts', 0);
    return { R_total, drop: current * R_total, loss: current * current * R_total };
  },
  'constant-power-load': (given) =>
    loaded(given, { kind: 'constant-power', power: given.number('power'), cutoutVolts: 0 }),
  'constant-resistance-load': (given) =>
    loaded(given, {
      kind: 'constant-resistance',
      resistance: given.number('V_rated') / given.number('current_rated'),
    }),
  'thinnest-awg-for-drop': (given) => {
    const choice = thinnestGauge(
      {
        lengthOneWay: given.number('length_one_way'),
        current: given.number('current'),
        temperature: given.number('T'),
        dropMax: given.number('drop_max'),
      },
      given.flag('even_gauges_only'),
    );
    if (choice?.size.by !== 'awg') throw new Error('no gauge keeps that drop');
    return { awg: choice.size.awg };
  },
};
