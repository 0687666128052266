/** Lines of the air itself: density, ram pressure, face; and of what the whole face passes. */
import { airDensity, pressureAtAltitude } from '$lib/solver/fluids/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import {
  airAtFace,
  airCapacityRate,
  faceArea,
  faceMassFlow,
  meanFaceVelocity,
  ramPressure,
  recirculation,
} from '$lib/solver/airside/formulas';
import { faceAirCp } from '$lib/solver/loop/faceAir';
import { stackLines } from './stackLines';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';

/** What the weather, the speed and the size of the core give. */
export function givenLines({ site, airPath, frontExchanger }: Loop, vehicleSpeed: number): Line[] {
  const p = formulaLine(
    pressureAtAltitude,
    { h: site.altitude },
    {
      id: 'ambient-pressure',
      statement: 'Pressure of the air at this altitude',
      why: 'It sets the density, and with it what every cubic foot of air can carry off.',
    },
  );
  const rho = formulaLine(
    airDensity,
    { p: p.value, T: site.ambientTemperature },
    {
      id: 'air-density',
      statement: 'Density of the air',
      why: 'Fans move volume; heat goes with mass. A hot day and altitude take from both.',
    },
  );
  return [
    p,
    rho,
    formulaLine(
      ramPressure,
      { k: airPath.ramRecovery, rho: rho.value, v: vehicleSpeed },
      {
        id: 'ram-pressure',
        statement: 'Pressure that the vehicle’s speed leaves across the stack',
        why: 'It goes with speed squared: little in town, and on the road as much as grille and ducting let through.',
      },
    ),
    formulaLine(
      faceArea,
      { w: frontExchanger.width, h: frontExchanger.height },
      {
        id: 'face-area',
        statement: 'Finned face of the front exchanger',
        why: 'The same fans drive more air through a larger face: area is cheaper than pressure.',
      },
    ),
  ];
}

/** Mean velocity, mass flow, what that carries, how warm it is. */
export function wholeFaceLines(loop: Loop, s: SteadySolution, area: number): Line[] {
  const { air } = s;
  const [shrouded, open] = air.zones;
  const mean = open
    ? [
        formulaLine(
          meanFaceVelocity,
          { u_s: shrouded!.faceVelocity, u_o: open.faceVelocity, x: shrouded!.share },
          {
            id: 'mean-face-velocity',
            statement: 'Mean face velocity over the whole core',
            why: 'One figure to compare fans and shrouds by; the core itself does best where it is even.',
          },
        ),
      ]
    : [];
  const cp = faceAirCp(loop, air);
  const mass = formulaLine(
    faceMassFlow,
    { rho: air.density, u: air.meanFaceVelocity, A: area },
    {
      id: 'air-mass-flow',
      statement: 'Air through the core',
      why: 'Heat goes with the mass of air, not with its volume.',
    },
  );
  const rate = formulaLine(
    airCapacityRate,
    { m_a: mass.value, cp },
    {
      id: 'air-capacity-rate',
      statement: 'Heat the air can carry off per degree',
      why: 'No core, however good, gives off more than this times the liquid’s lead over the air.',
      notes: [CP_NOTE],
    },
  );
  return [
    ...mean,
    mass,
    rate,
    ...warmthLines(loop, s, { mass: mass.value, rate: rate.value, area }),
  ];
}

function warmthLines(
  loop: Loop,
  s: SteadySolution,
  { mass, rate, area }: { readonly mass: number; readonly rate: number; readonly area: number },
): Line[] {
  const { airPath, site, duties } = loop;
  const { air, front } = s;
  const back =
    airPath.recirculation > 0
      ? [
          formulaLine(
            recirculation,
            {
              r_0: airPath.recirculation,
              v: duties[s.duty].vehicleSpeed,
              v_f: airPath.recirculationFade,
            },
            {
              id: 'recirculation',
              statement: 'Share of hot air that comes round again at this speed',
              why: 'It comes through gaps between core, shroud and body; sealing them costs little.',
            },
          ),
        ]
      : [];
  return [
    ...back,
    ...stackLines(loop, s, { mass, area }),
    formulaLine(
      airAtFace,
      {
        T_a: site.ambientTemperature,
        dT_stack: air.stackRise,
        r: air.recirculation,
        Q_f: front.heat,
        C_a: rate,
      },
      {
        id: 'air-at-face',
        statement: 'Air at the face of the core',
        why: 'A thermometer there against ambient checks stack heat and recirculation together.',
      },
    ),
  ];
}

const CP_NOTE = {
  code: 'air.specific-heat',
  message: 'Specific heat of air at the temperature it enters with: NASA/TP-2002-211556.',
};
