/**
 * Loss coefficients of fittings: pressure lost = K ½ ρ V². A K means nothing without the bore whose
 * velocity it goes with; here every K of a change of bore is on the smaller bore.
 */
import { requireWithin, type Interval } from '../errors';
import { frictionFullyRough } from './friction';
import {
  CRANE_BEND,
  CRANE_INWARD_ENTRANCE,
  CRANE_MULTIPLE,
  CRANE_ROUNDED_ENTRANCE,
} from './craneTable';

export const BORE_CHANGE_RANGE = {
  small: [1e-6, 1],
  beta: [1e-6, 1],
  angle: [1e-3, Math.PI],
} as const satisfies Record<string, Interval>;

export interface BoreChange {
  /** Smaller bore, m. */
  readonly small: number;
  /** Larger bore, m. */
  readonly large: number;
  /** Full angle of the cone, rad; π (the default) is a sudden step. */
  readonly angle?: number;
}

function boreRatio(law: string, { small, large, angle = Math.PI }: BoreChange) {
  const beta = small / large;
  requireWithin(law, BORE_CHANGE_RANGE, { small, beta, angle });
  return { beta, angle };
}

/**
 * Loss coefficient where the bore narrows, on the smaller bore.
 *
 * @symbol small - smaller bore, m
 * @symbol large - larger bore, m
 * @symbol angle - full angle of the cone, rad; π for a sudden step: K = 0.5 (1 − β²)
 * @returns K, 1
 * @throws {@link OutOfRangeError} outside {@link BORE_CHANGE_RANGE}
 * @source Crane TP-410 (two formulas, split at 45°)
 * @example contractionK({ small: 0.02, large: 0.04 }) // 0.375
 */
export function contractionK(change: BoreChange): number {
  const { beta, angle } = boreRatio('contraction', change);
  const step = 1 - beta * beta;
  return angle <= Math.PI / 4
    ? 0.8 * Math.sin(angle / 2) * step
    : 0.5 * step * Math.sqrt(Math.sin(angle / 2));
}

/**
 * Loss coefficient where the bore widens, on the smaller bore.
 *
 * @symbol small - smaller bore, m
 * @symbol large - larger bore, m
 * @symbol angle - full angle of the cone, rad; π for a sudden step: K = (1 − β²)² (Borda-Carnot)
 * @returns K, 1
 * @throws {@link OutOfRangeError} outside {@link BORE_CHANGE_RANGE}
 * @source Crane TP-410 (two formulas, split at 45°)
 * @example expansionK({ small: 0.02, large: 0.04 }) // 0.5625
 */
export function expansionK(change: BoreChange): number {
  const { beta, angle } = boreRatio('expansion', change);
  const step = (1 - beta * beta) ** 2;
  return angle <= Math.PI / 4 ? 2.6 * Math.sin(angle / 2) * step : step;
}

/**
 * The same loss, its K referred to the velocity in another bore.
 *
 * @formula K_to = K * (to / from)^4
 * @symbol K - loss coefficient on the bore `from`, 1
 * @symbol from - bore whose velocity K goes with, m
 * @symbol to - bore whose velocity the result goes with, m
 * @source Continuity: velocity goes with 1/bore²
 * @example referK({ K: 0.5, from: 0.01, to: 0.02 }) // 8
 */
export function referK({ K, from, to }: { K: number; from: number; to: number }): number {
  return K * (to / from) ** 4;
}

export type Entrance =
  | { readonly kind: 'flush-sharp' }
  | { readonly kind: 'inward-projecting' }
  | { readonly kind: 'rounded'; /** Edge radius over bore, 1. */ readonly radiusOverBore: number };

/**
 * Loss coefficient from a tank into a pipe, on the pipe's bore.
 * @throws {@link OutOfRangeError} for a negative edge radius
 * @source Crane TP-410 (from memory); between its rows along a straight line, beyond the last as the last
 * @example entranceK({ kind: 'flush-sharp' }) // 0.5
 */
export function entranceK(entrance: Entrance): number {
  if (entrance.kind === 'inward-projecting') return CRANE_INWARD_ENTRANCE;
  if (entrance.kind === 'flush-sharp') return CRANE_ROUNDED_ENTRANCE[0][1];
  const { radiusOverBore } = entrance;
  requireWithin('entrance', { radiusOverBore: [0, 1] }, { radiusOverBore });
  return alongTable(CRANE_ROUNDED_ENTRANCE, radiusOverBore);
}

/** Loss coefficient from a pipe into a tank: the whole velocity head. @source definition */
export const EXIT_K = 1;

/**
 * Friction factor f_T (Darcy) that Crane's multiples go with: that of clean steel at full roughness.
 * It belongs to the size, not to the hose at hand nor to its Reynolds number.
 * @source Crane TP-410, steel roughness 0.0457 mm (0.0018 in); fully rough law
 * @example craneTurbulentFriction(0.0266) // 0.0225022
 */
export function craneTurbulentFriction(bore: number): number {
  return frictionFullyRough({ relativeRoughness: 4.57e-5 / bore });
}

/**
 * Loss coefficient of a fitting: n f_T.
 * @source Crane TP-410 (multiples from memory)
 * @example craneFittingK('elbow-90-standard', 0.022) // 0.66
 */
export function craneFittingK(
  kind: keyof typeof CRANE_MULTIPLE,
  frictionTurbulent: number,
): number {
  return CRANE_MULTIPLE[kind] * frictionTurbulent;
}

export const CRANE_BEND_RANGE = {
  radiusOverBore: [1, 20],
} as const satisfies Record<string, Interval>;

/**
 * Loss coefficient of a smooth 90° bend.
 * @throws {@link OutOfRangeError} outside {@link CRANE_BEND_RANGE}
 * @source Crane TP-410 (from memory), straight lines between its rows
 * @example craneBendK({ radiusOverBore: 1.5, frictionTurbulent: 0.02 }) // 0.28
 */
export function craneBendK({
  radiusOverBore,
  frictionTurbulent,
}: {
  radiusOverBore: number;
  frictionTurbulent: number;
}): number {
  requireWithin('bend', CRANE_BEND_RANGE, { radiusOverBore });
  return alongTable(CRANE_BEND, radiusOverBore) * frictionTurbulent;
}

const FLOW_COEFFICIENT_RANGE = {
  coefficient: [1e-9, 1e9],
  bore: [1e-6, 10],
} as const satisfies Record<string, Interval>;

/**
 * Loss coefficient of a fitting known by its Kv, on the bore given.
 *
 * @symbol Kv - flow of water in m³/h at 1 bar lost, m³/h
 * @symbol bore - bore whose velocity the K goes with, m
 * @returns K, 1
 * @throws {@link OutOfRangeError} when a value is not positive
 * @source Definition of Kv, water of 1000 kg/m³
 * @example kvToK({ Kv: 17.3, bore: 0.0254 }) // 2.223604
 */
export function kvToK({ Kv, bore }: { Kv: number; bore: number }): number {
  return fromFlowCoefficient(Kv, bore, { flow: 1 / 3600, loss: 1e5, density: 1000 });
}

/**
 * Loss coefficient of a fitting known by its Cv, on the bore given.
 *
 * @symbol Cv - flow of water in US gal/min at 1 psi lost
 * @symbol bore - bore whose velocity the K goes with, m
 * @returns K, 1
 * @throws {@link OutOfRangeError} when a value is not positive
 * @source Definition of Cv, water at 60 °F (999.0 kg/m³); gallon and psi by NIST SP 811
 * @example cvToK({ Cv: 20, bore: 0.0254 }) // 2.225945
 */
export function cvToK({ Cv, bore }: { Cv: number; bore: number }): number {
  return fromFlowCoefficient(Cv, bore, {
    flow: 6.30901964e-5,
    loss: 6894.757293,
    density: 999,
  });
}

function fromFlowCoefficient(
  coefficient: number,
  bore: number,
  at: { flow: number; loss: number; density: number },
): number {
  requireWithin('flow coefficient', FLOW_COEFFICIENT_RANGE, { coefficient, bore });
  const velocity = (coefficient * at.flow) / ((Math.PI / 4) * bore * bore);
  return (2 * at.loss) / (at.density * velocity * velocity);
}

/** Straight lines between rows; the last row holds beyond itself. */
function alongTable(rows: readonly (readonly [number, number])[], x: number): number {
  for (let i = 1; i < rows.length; i++) {
    const [x0, y0] = rows[i - 1]!;
    const [x1, y1] = rows[i]!;
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return rows[rows.length - 1]![1];
}
