/** Lines of the balance on the face: behind the shroud, and on the part left open. */
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import {
  airLossPower,
  airLossTwoPart,
  drivingPressure,
  resistingPressure,
} from '$lib/solver/airside/formulas';
import { airLosses, type AirLosses } from '$lib/solver/airside/losses';
import type { RatedLossModel } from '$lib/solver/hydraulics/ratedLoss';
import type { AirSide, FaceZone, Loop } from '$lib/solver/loop/types';

const ZONE_WORDS = {
  shrouded: 'behind the shroud',
  open: 'of the open face',
} as const satisfies Record<FaceZone['zone'], string>;

/** What core and stack take at the velocity of the zone, then the balance that gave that velocity. */
export function zoneLines(loop: Loop, air: AirSide, zone: FaceZone): Line[] {
  const losses = airLosses(loop);
  const u = zone.faceVelocity;
  const where = ZONE_WORDS[zone.zone];
  const stack = losses.stack && [
    lossLine(losses.stack, losses, u, {
      id: `stack-loss-${zone.zone}`,
      statement: `Pressure lost in what stands in front, at the face velocity ${where}`,
    }),
  ];
  return [
    lossLine(losses.core, losses, u, {
      id: `core-loss-${zone.zone}`,
      statement: `Pressure lost in the core, at the face velocity ${where}`,
      why: 'At low velocity it goes with velocity, at high with its square.',
    }),
    ...(stack ?? []),
    balanceLine(
      { formula: drivingPressure, x: { p_ram: air.ramPressure, dp_fan: zone.fanPressure } },
      {
        formula: resistingPressure,
        x: { dp_core: zone.coreLoss, dp_stack: zone.stackLoss },
      },
      {
        id: `face-velocity-${zone.zone}`,
        statement: `The face velocity ${where} is the one at which what drives and what resists agree`,
        why:
          zone.zone === 'open'
            ? 'No fan reaches this part: without wind nothing moves there.'
            : 'A negative fan pressure means that the wind drives more through the fans than they move.',
        unknown: { tex: 'u', quantity: 'faceVelocity', name: 'face velocity', value: u },
        method: 'Face velocity found by bracketed root finding (Brent).',
      },
    ),
  ];
}

function lossLine(
  model: RatedLossModel,
  { air, rated }: AirLosses,
  u: number,
  words: { readonly id: string; readonly statement: string; readonly why?: string },
): Line {
  const { law } = model;
  const x = { u, u_r: law.flowRated, rho: air.rho, mu: air.mu, mu_r: rated.mu };
  const all = { ...words, notes: [VISCOSITY_NOTE, ...model.notesAt(u)] };
  return law.form === 'power'
    ? formulaLine(airLossPower, { ...x, dp_r: law.lossRated, n: law.n }, all)
    : formulaLine(airLossTwoPart, { ...x, dp_1: law.linearRated, dp_2: law.quadraticRated }, all);
}

const VISCOSITY_NOTE = {
  code: 'air.viscosity',
  message: 'Viscosity of air by Sutherland’s law (ISO 2533), at ambient and at 70 °F (21 °C).',
};
