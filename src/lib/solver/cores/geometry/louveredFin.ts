/** Louvered fins between flat tubes: heat transfer and friction of the air side. */
import { requireWithin, type Interval } from '../../errors';

/** One louvered fin; lengths in m. */
export interface LouveredFin {
  /** Angle of the louvers to the air, degrees as the papers count it. */
  readonly louverAngleDegrees: number;
  /** Along the flow. */
  readonly louverPitch: number;
  /** Across the gap between tubes: length of the cut. */
  readonly louverLength: number;
  /** From fin to fin. */
  readonly finPitch: number;
  /** Between tubes: tube pitch less tube height. */
  readonly finHeight: number;
  /** Of the core, along the air. */
  readonly flowDepth: number;
  readonly finThickness: number;
  readonly tubePitch: number;
  /** Outside, across the gap. */
  readonly tubeHeight: number;
  /** 4 (free flow area) (depth) / (area touched by air). */
  readonly hydraulicDiameter: number;
}

/** Geometries the two papers were fitted to; m and degrees. From memory of the papers. */
export const LOUVERED_DATA = {
  louverAngleDegrees: [8.4, 35],
  louverPitch: [0.5e-3, 3e-3],
  louverLength: [2.13e-3, 18.5e-3],
  finPitch: [0.51e-3, 3.33e-3],
  finHeight: [2.84e-3, 20e-3],
  flowDepth: [15.6e-3, 57.4e-3],
  tubePitch: [7.51e-3, 25e-3],
  hydraulicDiameter: [0.82e-3, 5.02e-3],
} as const satisfies Record<string, Interval>;

/** Reynolds number on the louver pitch: fitted; and how far the law is let run, with a note. */
export const LOUVERED_RE = { fitted: [30, 3000], usable: [10, 10_000] } as const satisfies Record<
  string,
  Interval
>;

/** Where the friction law changes its form. */
export const FRICTION_SWITCH = 150;

/**
 * Colburn factor of a louvered fin.
 *
 * @formula j = Re^-0.49 (theta/90)^0.27 (F_p/L_p)^-0.14 (F_l/L_p)^-0.29 (T_d/L_p)^-0.23 (L_l/L_p)^0.68 (T_p/L_p)^-0.28 (delta/L_p)^-0.05
 * @symbol Re - Reynolds number on louver pitch and core velocity, 1
 * @returns j = h Pr^(2/3) / (G cp), 1; 89 % of the data within ±15 %
 * @throws {@link OutOfRangeError} outside `LOUVERED_RE.usable`, NaN included
 * @source Chang & Wang, Int. J. Heat Mass Transfer 40 (1997) 533, doi:10.1016/0017-9310(96)00116-0
 *   (formula from memory)
 * @example colburnLouvered(100, fin) // 0.03952 with a 1.2 mm louver at 30°, 1.5 mm fin pitch
 */
export function colburnLouvered(Re: number, fin: LouveredFin): number {
  requireWithin('Chang-Wang', { Re: LOUVERED_RE.usable }, { Re });
  const L_p = fin.louverPitch;
  return (
    Re ** -0.49 *
    (fin.louverAngleDegrees / 90) ** 0.27 *
    (fin.finPitch / L_p) ** -0.14 *
    (fin.finHeight / L_p) ** -0.29 *
    (fin.flowDepth / L_p) ** -0.23 *
    (fin.louverLength / L_p) ** 0.68 *
    (fin.tubePitch / L_p) ** -0.28 *
    (fin.finThickness / L_p) ** -0.05
  );
}

/**
 * Fanning friction factor of a louvered fin. Two fits that do not meet at Re = 150: they
 * can differ by a third there, which is the papers' own jump and not smoothed.
 *
 * @formula f = f_1 f_2 f_3, each form in the body
 * @symbol Re - as for {@link colburnLouvered}, 1
 * @returns f, 1 (a quarter of Darcy's); 83 % of the data within ±15 %
 * @throws {@link OutOfRangeError} outside `LOUVERED_RE.usable`, NaN included
 * @source Chang, Hsu, Lin & Wang, Int. J. Heat Mass Transfer 43 (2000) 2237,
 *   doi:10.1016/S0017-9310(99)00289-6 (formula from memory)
 */
export function fanningLouvered(Re: number, fin: LouveredFin): number {
  requireWithin('Chang friction', { Re: LOUVERED_RE.usable }, { Re });
  return Re < FRICTION_SWITCH ? slow(Re, fin) : fast(Re, fin);
}

function slow(Re: number, fin: LouveredFin): number {
  const f_1 =
    14.39 *
    Re ** ((-0.805 * fin.finPitch) / fin.finHeight) *
    Math.log(1 + fin.finPitch / fin.louverPitch) ** 3.04;
  const f_2 =
    Math.log((fin.finThickness / fin.finPitch) ** 0.48 + 0.9) ** -1.435 *
    (fin.hydraulicDiameter / fin.louverPitch) ** -3.01 *
    Math.log(0.5 * Re) ** -3.01;
  const f_3 =
    (fin.finPitch / fin.louverLength) ** -0.308 *
    (fin.flowDepth / fin.louverLength) ** -0.308 *
    Math.exp((-0.1167 * fin.tubePitch) / fin.tubeHeight) *
    fin.louverAngleDegrees ** 0.35;
  return f_1 * f_2 * f_3;
}

function fast(Re: number, fin: LouveredFin): number {
  const f_1 =
    4.97 *
    Re ** (0.6049 - 1.064 / fin.louverAngleDegrees ** 0.2) *
    Math.log((fin.finThickness / fin.finPitch) ** 0.5 + 0.9) ** -0.527;
  const f_2 =
    ((fin.hydraulicDiameter / fin.louverPitch) * Math.log(0.3 * Re)) ** -2.966 *
    (fin.finPitch / fin.louverLength) ** ((-0.7931 * fin.tubePitch) / fin.finHeight);
  const f_3 =
    (fin.tubePitch / fin.tubeHeight) ** -0.0446 *
    Math.log(1.2 + (fin.louverPitch / fin.finPitch) ** 1.4) ** -3.553 *
    fin.louverAngleDegrees ** -0.477;
  return f_1 * f_2 * f_3;
}
