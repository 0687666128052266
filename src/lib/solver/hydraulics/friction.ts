/**
 * Friction factors of round pipes and hoses. Every factor here is the Darcy one (four times
 * Fanning's): head lost = f (L/D) V²/(2g).
 */
import { requireWithin, type Interval } from '../errors';

/** Laminar law: ends where the flow may begin to break up. */
export const LAMINAR_RANGE = { Re: [1e-12, 2300] } as const satisfies Record<string, Interval>;

/** Turbulent law of Colebrook: the span of the Moody chart. */
export const COLEBROOK_RANGE = {
  Re: [4000, 1e8],
  relativeRoughness: [0, 0.05],
} as const satisfies Record<string, Interval>;

/** Churchill's law spans all regimes; the roughness is limited to the Moody chart's. */
export const CHURCHILL_RANGE = {
  Re: [1e-12, 1e8],
  relativeRoughness: [0, 0.05],
} as const satisfies Record<string, Interval>;

/** A rough wall's limit needs a wall that is rough. */
export const FULLY_ROUGH_RANGE = {
  relativeRoughness: [1e-6, 0.05],
} as const satisfies Record<string, Interval>;

export interface PipeFlow {
  /** Reynolds number on the bore, 1. */
  readonly Re: number;
  /** Height of the wall's roughness over the bore, 1. */
  readonly relativeRoughness: number;
}

/**
 * Darcy friction factor of laminar flow in a round pipe.
 *
 * @formula f = 64 / Re
 * @symbol Re - Reynolds number on the bore, 1
 * @returns Darcy friction factor, 1; exact for developed flow
 * @throws {@link OutOfRangeError} outside {@link LAMINAR_RANGE}
 * @source Hagen-Poiseuille, any hydraulics text
 * @example frictionLaminar({ Re: 640 }) // 0.1
 */
export function frictionLaminar({ Re }: Pick<PipeFlow, 'Re'>): number {
  requireWithin('laminar friction', LAMINAR_RANGE, { Re });
  return 64 / Re;
}

/**
 * Darcy friction factor of turbulent flow, the implicit law solved until its last digit stands:
 * 1/√f = −2 log₁₀(2.51/(Re √f) + (ε/D)/3.7).
 *
 * @symbol Re - Reynolds number on the bore, 1
 * @symbol relativeRoughness - roughness over bore, 1
 * @returns Darcy friction factor, 1
 * @throws {@link OutOfRangeError} outside {@link COLEBROOK_RANGE}
 * @source Colebrook, J. Inst. Civ. Eng. 11 (1939) 133, doi:10.1680/ijoti.1939.13150
 * @example frictionColebrook({ Re: 1e5, relativeRoughness: 1e-4 }) // 0.01851386608
 */
export function frictionColebrook({ Re, relativeRoughness }: PipeFlow): number {
  requireWithin('Colebrook', COLEBROOK_RANGE, { Re, relativeRoughness });
  const rough = relativeRoughness / 3.7;
  let x = 8; // 1/√f; Newton's step on this rising, concave function reaches the root from either side
  for (let i = 0; i < 30; i++) {
    const inside = (2.51 * x) / Re + rough;
    const value = x + 2 * Math.log10(inside);
    const next = x - value / (1 + (2 * Math.LOG10E * 2.51) / (Re * inside));
    if (next === x) break;
    x = next;
  }
  return 1 / (x * x);
}

/**
 * Darcy friction factor where the wall's roughness alone decides.
 *
 * @formula f = 0.25 / (log(relativeRoughness / 3.7) / log(10))^2
 * @symbol relativeRoughness - roughness over bore, 1
 * @returns Darcy friction factor, 1
 * @throws {@link OutOfRangeError} outside {@link FULLY_ROUGH_RANGE}
 * @source von Kármán's rough limit of Colebrook's law
 * @example frictionFullyRough({ relativeRoughness: 0.01 }) // 0.03790371189
 */
export function frictionFullyRough({
  relativeRoughness,
}: Pick<PipeFlow, 'relativeRoughness'>): number {
  requireWithin('fully rough friction', FULLY_ROUGH_RANGE, { relativeRoughness });
  return 0.25 / Math.log10(relativeRoughness / 3.7) ** 2;
}

/**
 * Darcy friction factor in every regime: laminar, transitional, turbulent, smooth or rough.
 * The transition (about Re 2000 to 4000) is a smooth blend; real flow there is not repeatable.
 *
 * @formula f = 8 * ((8 / Re)^12 + 1 / ((2.457 * log(1 / ((7 / Re)^0.9 + 0.27 * relativeRoughness)))^16 + (37530 / Re)^16)^1.5)^(1 / 12)
 * @symbol Re - Reynolds number on the bore, 1
 * @symbol relativeRoughness - roughness over bore, 1
 * @returns Darcy friction factor, 1; within 2 % of Colebrook above Re 4000
 * @throws {@link OutOfRangeError} outside {@link CHURCHILL_RANGE}
 * @source Churchill, Chem. Eng. 84(24) (1977) 91 (from memory; agrees with an open library)
 * @example frictionChurchill({ Re: 1e4, relativeRoughness: 0.001 }) // 0.03269019858
 */
export function frictionChurchill({ Re, relativeRoughness }: PipeFlow): number {
  requireWithin('Churchill', CHURCHILL_RANGE, { Re, relativeRoughness });
  return churchill(Re, relativeRoughness);
}

/** {@link frictionChurchill} without its checks, for use inside a root finder. */
export function churchill(Re: number, relativeRoughness: number): number {
  // Below Re 100 the turbulent terms are less than the last digit of the laminar one; leaving them
  // out keeps the powers from overflowing as Re goes to zero.
  if (Re < 100) return 64 / Re;
  const l = 8 / Re;
  const l3 = l * l * l;
  const laminar = l3 * l3 * l3 * l3;
  const A = power16(2.457 * Math.log(1 / (Math.pow(7 / Re, 0.9) + 0.27 * relativeRoughness)));
  const B = power16(37530 / Re);
  const sum = A + B;
  // Roots and products instead of powers: this is most of the work of finding an operating point.
  return 8 * Math.sqrt(Math.sqrt(Math.cbrt(laminar + 1 / (sum * Math.sqrt(sum)))));
}

function power16(x: number): number {
  const x2 = x * x;
  const x4 = x2 * x2;
  const x8 = x4 * x4;
  return x8 * x8;
}
