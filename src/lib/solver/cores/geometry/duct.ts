/** Flow along a rectangular passage, laminar to turbulent. */
import type { Note } from '../../errors';
import { frictionChurchill } from '../../hydraulics/friction';
import { nusseltGnielinski } from '../convection';
import { laminarFRe, laminarNusselt } from './rectangularDuct';

/** Where laminar ends and where the turbulent law takes over; between, straight on Re. */
const LAMINAR_ENDS = 2300;
const TURBULENT_BEGINS = 4000;

export interface Duct {
  /** Hydraulic diameter, m. */
  readonly diameter: number;
  /** Along the flow, m. */
  readonly length: number;
  /** Shorter side over longer, 0 to 1. */
  readonly sideRatio: number;
  /** m */
  readonly roughness: number;
}

export interface DuctFlow {
  /** Mean over the length. */
  readonly Nu: number;
  /** Darcy. */
  readonly f: number;
  readonly notes: readonly Note[];
}

/**
 * Mean Nusselt number and friction of a passage.
 *
 * Laminar: Nu_T of the passage raised for its start by Hausen's term, 0.0668 Gz / (1 + 0.04 Gz^(2/3))
 * with Gz = Re Pr D / L. Turbulent: Gnielinski with Churchill's friction. Between Re 2300 and 4000 a
 * straight blend of both ends, and a note.
 *
 * @throws {@link OutOfRangeError} for a Reynolds number at or below zero, and from the laws
 * @source Shah & London 1978; Hausen 1943; Gnielinski 1976, and for the blend Int. J. Heat Mass
 *   Transfer 63 (2013) 134 (from memory)
 */
export function ductFlow(Re: number, Pr: number, duct: Duct): DuctFlow {
  if (Re <= LAMINAR_ENDS) return { ...laminar(Re, Pr, duct), notes: [] };
  if (Re >= TURBULENT_BEGINS) return { ...turbulent(Re, Pr, duct), notes: [] };
  const w = (Re - LAMINAR_ENDS) / (TURBULENT_BEGINS - LAMINAR_ENDS);
  const a = laminar(LAMINAR_ENDS, Pr, duct);
  const b = turbulent(TURBULENT_BEGINS, Pr, duct);
  return {
    Nu: (1 - w) * a.Nu + w * b.Nu,
    f: (1 - w) * a.f + w * b.f,
    notes: [
      {
        code: 'between-laminar-and-turbulent',
        message: 'The flow is between laminar and turbulent: a blend of both, not a law.',
        quantity: 'Re',
        value: Re,
        range: [LAMINAR_ENDS, TURBULENT_BEGINS],
      },
    ],
  };
}

function laminar(Re: number, Pr: number, { diameter, length, sideRatio }: Duct) {
  const Gz = (Re * Pr * diameter) / length;
  return {
    Nu: laminarNusselt(sideRatio) + (0.0668 * Gz) / (1 + 0.04 * Math.cbrt(Gz * Gz)),
    f: (4 * laminarFRe(sideRatio)) / Re,
  };
}

function turbulent(Re: number, Pr: number, { diameter, roughness }: Duct) {
  const f = frictionChurchill({ Re, relativeRoughness: roughness / diameter });
  return { Nu: nusseltGnielinski({ Re, Pr, f }), f };
}
