/** Lines of the balance on the face: behind the shroud, and on the part left open. */
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import {
  airLossPower,
  airLossTwoPart,
  clearPathLoss,
  drivingPressure,
  overlapVelocity,
  resistingPressure,
} from '$lib/solver/airside/formulas';
import { airLosses, type AirLosses } from '$lib/solver/airside/losses';
import type { RatedLossModel } from '$lib/solver/hydraulics/ratedLoss';
import { coveredShare } from '$lib/solver/airside/overlap';
import type { AirSide, FacePart, FaceZone, Loop } from '$lib/solver/loop/types';

const ZONE_WORDS = {
  shrouded: 'behind the shroud',
  open: 'of the open face',
} as const satisfies Record<FaceZone['zone'], string>;

/** What core and stack take at the velocity of the zone, then the balance that gave that velocity. */
export function zoneLines(loop: Loop, air: AirSide, zone: FaceZone): Line[] {
  const losses = airLosses(loop);
  const key = zone.zone;
  const [covered, clear] = zone.parts ?? [];
  const where = covered ? `${ZONE_WORDS[key]} where covered` : ZONE_WORDS[key];
  const u = covered?.faceVelocity ?? zone.faceVelocity;
  const stack = losses.stack && [
    lossLine(losses.stack, losses, u, {
      id: `stack-loss-${key}`,
      statement: `Pressure lost in the other cores, at the face velocity ${where}`,
      why: 'What they take the core does not get: a condenser costs air whether it runs or not.',
    }),
  ];
  return [
    lossLine(losses.core, losses, u, {
      id: `core-loss-${key}`,
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
        id: `face-velocity-${key}`,
        statement: `The face velocity ${where} is the one at which what drives and what resists agree`,
        why:
          key === 'open'
            ? 'No fan reaches this part: without wind nothing moves there.'
            : 'A negative fan pressure means that the wind drives more through the fans than they move.',
        unknown: {
          tex: covered ? 'u_c' : 'u',
          quantity: 'faceVelocity',
          name: covered ? 'face velocity where covered' : 'face velocity',
          value: u,
        },
        method: 'Face velocity found by bracketed root finding (Brent).',
      },
    ),
    ...(covered && clear ? clearLines(loop, zone, covered, clear) : []),
  ];
}

/** The path beside the other cores, under the same pressure, and both paths together. */
function clearLines(loop: Loop, zone: FaceZone, covered: FacePart, clear: FacePart): Line[] {
  const losses = airLosses(loop);
  const key = zone.zone;
  const where = ZONE_WORDS[key];
  return [
    lossLine(losses.core, losses, clear.faceVelocity, {
      id: `core-loss-${key}-clear`,
      statement: `Pressure lost in the core, at the face velocity ${where} where clear`,
      why: 'Here the core has all of the pressure to itself, so more air crosses it.',
    }),
    balanceLine(
      {
        formula: resistingPressure,
        x: { dp_core: covered.coreLoss, dp_stack: covered.stackLoss },
      },
      { formula: clearPathLoss, x: { dp_core: clear.coreLoss } },
      {
        id: `clear-velocity-${key}`,
        statement: `The face velocity ${where} where clear: both paths lose the same pressure`,
        why: 'Air takes the easy way: what stands over a part of the face sends air round itself.',
        unknown: {
          tex: 'u_u',
          quantity: 'faceVelocity',
          name: 'face velocity where clear',
          value: clear.faceVelocity,
        },
        method: 'Inverse of the core’s own loss.',
      },
    ),
    formulaLine(
      overlapVelocity,
      { phi: coveredShare(loop.airPath), u_c: covered.faceVelocity, u_u: clear.faceVelocity },
      {
        id: `velocity-${key}`,
        statement: `Face velocity ${where}, both paths together`,
        why: 'This is what the fans see: one flow behind the core, however it came through.',
      },
    ),
  ];
}

function lossLine(
  model: RatedLossModel,
  { air, rated }: AirLosses,
  u: number,
  words: { readonly id: string; readonly statement: string; readonly why: string },
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
