/** Rectangular offset-strip fins, as in bar-and-plate cores. */
import { requireWithin, type Interval } from '../../errors';

/** One offset-strip fin; m. */
export interface OffsetStripFin {
  /** Clear gap from fin to fin. */
  readonly spacing: number;
  /** Clear height of the passage: fin height less its thickness. */
  readonly height: number;
  readonly thickness: number;
  /** Of one strip along the flow. */
  readonly stripLength: number;
}

/** Reynolds number on the hydraulic diameter: fitted, and let run with a note. */
export const OFFSET_STRIP_RE = {
  fitted: [120, 10_000],
  usable: [20, 20_000],
} as const satisfies Record<string, Interval>;

/** Ratios of the 18 cores fitted. From memory of the paper. */
export const OFFSET_STRIP_DATA = {
  spacingOverHeight: [0.134, 0.997],
  thicknessOverStrip: [0.012, 0.048],
  thicknessOverSpacing: [0.041, 0.121],
} as const satisfies Record<string, Interval>;

/** The three ratios of the correlation: alpha = s/h, delta = t/l, gamma = t/s. */
export const offsetStripRatios = ({ spacing, height, thickness, stripLength }: OffsetStripFin) => ({
  spacingOverHeight: spacing / height,
  thicknessOverStrip: thickness / stripLength,
  thicknessOverSpacing: thickness / spacing,
});

/**
 * Hydraulic diameter as the correlation counts it, ends of the strips included.
 * @formula D_h = 4 s h l / (2 (s l + h l + t h) + t s)
 * @returns m
 * @source Manglik & Bergles 1995
 */
export function offsetStripDiameter(fin: OffsetStripFin): number {
  const { spacing: s, height: h, thickness: t, stripLength: l } = fin;
  return (4 * s * h * l) / (2 * (s * l + h * l + t * h) + t * s);
}

/**
 * Colburn factor of an offset-strip fin, laminar to turbulent in one expression.
 * @formula j = 0.6522 Re^-0.5403 alpha^-0.1541 delta^0.1499 gamma^-0.0678 (1 + 5.269e-5 Re^1.340 alpha^0.504 delta^0.456 gamma^-1.055)^0.1
 * @symbol Re - Reynolds number on {@link offsetStripDiameter} and core velocity, 1
 * @returns 1; data within ±20 %
 * @throws {@link OutOfRangeError} outside `OFFSET_STRIP_RE.usable`, NaN included
 * @source Manglik & Bergles, Exp. Thermal Fluid Sci. 10 (1995) 171, doi:10.1016/0894-1777(94)00096-Q
 *   (from memory; the same coefficients stand in several open implementations)
 */
export function colburnOffsetStrip(Re: number, fin: OffsetStripFin): number {
  requireWithin('Manglik-Bergles', { Re: OFFSET_STRIP_RE.usable }, { Re });
  const r = offsetStripRatios(fin);
  return (
    0.6522 *
    Re ** -0.5403 *
    r.spacingOverHeight ** -0.1541 *
    r.thicknessOverStrip ** 0.1499 *
    r.thicknessOverSpacing ** -0.0678 *
    (1 +
      5.269e-5 *
        Re ** 1.34 *
        r.spacingOverHeight ** 0.504 *
        r.thicknessOverStrip ** 0.456 *
        r.thicknessOverSpacing ** -1.055) **
      0.1
  );
}

/**
 * Fanning friction factor of an offset-strip fin.
 * @formula f = 9.6243 Re^-0.7422 alpha^-0.1856 delta^0.3053 gamma^-0.2659 (1 + 7.669e-8 Re^4.429 alpha^0.920 delta^3.767 gamma^0.236)^0.1
 * @symbol Re - as for {@link colburnOffsetStrip}, 1
 * @returns 1; data within ±20 %
 * @throws {@link OutOfRangeError} outside `OFFSET_STRIP_RE.usable`, NaN included
 * @source Manglik & Bergles 1995 (formula from memory)
 */
export function fanningOffsetStrip(Re: number, fin: OffsetStripFin): number {
  requireWithin('Manglik-Bergles', { Re: OFFSET_STRIP_RE.usable }, { Re });
  const r = offsetStripRatios(fin);
  return (
    9.6243 *
    Re ** -0.7422 *
    r.spacingOverHeight ** -0.1856 *
    r.thicknessOverStrip ** 0.3053 *
    r.thicknessOverSpacing ** -0.2659 *
    (1 +
      7.669e-8 *
        Re ** 4.429 *
        r.spacingOverHeight ** 0.92 *
        r.thicknessOverStrip ** 3.767 *
        r.thicknessOverSpacing ** 0.236) **
      0.1
  );
}
