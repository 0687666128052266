import { OutOfRangeError, requireWithin, type Interval } from '../errors';

/** Sources print 2300 or 3000 as the lower Re; the narrower is taken. */
export const GNIELINSKI_RANGE = {
  Re: [3000, 5e6],
  Pr: [0.5, 2000],
  f: [0.004, 0.1], // ours, to catch a wild value or a NaN; the source gives none
} as const satisfies Record<string, Interval>;

/**
 * Nusselt number of fully developed turbulent flow in a smooth round tube.
 *
 * @formula Nu = (f/8) * (Re - 1000) * Pr / (1 + 12.7 * sqrt(f/8) * (Pr^(2/3) - 1))
 * @symbol Re - Reynolds number on the tube bore, 1
 * @symbol Pr - Prandtl number of the liquid at its mean temperature, 1
 * @symbol f - Darcy friction factor (four times Fanning), 1
 * @returns Nu on the bore, 1; scatter about ±10 % (from memory)
 * @throws {@link OutOfRangeError} outside {@link GNIELINSKI_RANGE}, NaN included
 * @source Gnielinski, V., Int. Chem. Eng. 16 (1976) 359-368
 * @example nusseltGnielinski({ Re: 1e4, Pr: 12, f: 0.034 }) // 101.736
 */
export function nusseltGnielinski({ Re, Pr, f }: { Re: number; Pr: number; f: number }): number {
  requireWithin('Gnielinski', GNIELINSKI_RANGE, { Re, Pr, f });
  const root = Math.sqrt(f / 8);
  return (root * root * (Re - 1000) * Pr) / (1 + 12.7 * root * (Math.cbrt(Pr * Pr) - 1));
}

export const DITTUS_BOELTER_RANGE = {
  Re: [1e4, 5e6],
  Pr: [0.6, 160],
} as const satisfies Record<string, Interval>;

/**
 * Nusselt number of fully developed turbulent flow in a smooth round tube, the older and plainer law.
 *
 * @formula Nu = 0.023 * Re^0.8 * Pr^n
 * @symbol Re - Reynolds number on the tube bore, 1
 * @symbol Pr - Prandtl number of the liquid, 1
 * @symbol n - 0.4 when the liquid is heated, 0.3 when cooled, 1
 * @returns Nu on the bore, 1; scatter about ±25 % (from memory)
 * @throws {@link OutOfRangeError} outside {@link DITTUS_BOELTER_RANGE}, NaN included
 * @source Dittus & Boelter 1930 in McAdams' form; Bergman et al., ch. 8
 * @example nusseltDittusBoelter({ Re: 1e5, Pr: 4, liquidIs: 'heated' }) // 400.453
 */
export function nusseltDittusBoelter({
  Re,
  Pr,
  liquidIs,
}: {
  Re: number;
  Pr: number;
  liquidIs: 'heated' | 'cooled';
}): number {
  requireWithin('Dittus-Boelter', DITTUS_BOELTER_RANGE, { Re, Pr });
  return 0.023 * Re ** 0.8 * Pr ** (liquidIs === 'heated' ? 0.4 : 0.3);
}

/**
 * Nusselt number of developed laminar flow in a round tube: a constant of the wall's condition.
 * The first is the eigenvalue of the Graetz problem; 48/11 is exact.
 * @source Shah & London, Laminar Flow Forced Convection in Ducts, 1978
 */
export const NUSSELT_LAMINAR = {
  'constant-temperature': 3.656793458,
  'constant-flux': 48 / 11,
} as const;

export const LAMINAR_ENTRY_RANGE = {
  Re: [0, 2300],
  Pr: [0.5, 17000],
  D: [1e-4, 0.1],
  L: [1e-3, 100],
} as const satisfies Record<string, Interval>;

/** A laminar tube whose flow has not yet settled, wall at one temperature. */
export interface LaminarEntry {
  readonly Re: number;
  readonly Pr: number;
  /** Bore, m. */
  readonly D: number;
  /** Heated length, m. */
  readonly L: number;
}

/** Graetz number. */
function graetz(law: string, { Re, Pr, D, L }: LaminarEntry): number {
  requireWithin(law, LAMINAR_ENTRY_RANGE, { Re, Pr, D, L });
  return (Re * Pr * D) / L;
}

/**
 * Mean Nusselt number over a tube's length, laminar, velocity profile developed, temperature not.
 * Tends to 3.66 in a long tube.
 *
 * @formula Nu = 3.66 + 0.0668 * Gz / (1 + 0.04 * Gz^(2/3))
 * @symbol Gz - Graetz number Re Pr D / L, 1
 * @returns mean Nu on the bore, 1
 * @throws {@link OutOfRangeError} outside {@link LAMINAR_ENTRY_RANGE}, NaN included
 * @source Hausen 1943; Bergman et al., ch. 8
 * @example nusseltHausen({ Re: 800, Pr: 30, D: 0.01, L: 0.5 }) // 12.948
 */
export function nusseltHausen(entry: LaminarEntry): number {
  const Gz = graetz('Hausen', entry);
  return 3.66 + (0.0668 * Gz) / (1 + 0.04 * Math.cbrt(Gz * Gz));
}

/**
 * Mean Nusselt number over a short tube, laminar, both profiles developing.
 *
 * @formula Nu = 1.86 * Gz^(1/3) * x_mu^0.14
 * @symbol Gz - Graetz number Re Pr D / L, 1
 * @symbol x_mu - viscosity of the bulk over that at the wall, 1; 0.0044 to 9.75
 * @returns mean Nu on the bore, 1
 * @throws {@link OutOfRangeError} outside {@link LAMINAR_ENTRY_RANGE}, or where Gz^(1/3) x_mu^0.14 < 2:
 *   the tube is then too long for this law; `nusseltHausen` holds there
 * @source Sieder & Tate, Ind. Eng. Chem. 28 (1936) 1429, doi:10.1021/ie50324a027
 * @example nusseltSiederTate({ Re: 900, Pr: 25, D: 0.008, L: 0.4, viscosityRatio: 1 }) // 14.2534
 */
export function nusseltSiederTate({
  viscosityRatio,
  ...entry
}: LaminarEntry & { viscosityRatio: number }): number {
  const Gz = graetz('Sieder-Tate', entry);
  requireWithin('Sieder-Tate', { viscosityRatio: [0.0044, 9.75] }, { viscosityRatio });
  const group = Math.cbrt(Gz) * viscosityRatio ** 0.14;
  if (!(group >= 2))
    throw new OutOfRangeError('Sieder-Tate', 'Gz^(1/3) x_mu^0.14', group, [2, Infinity]);
  return 1.86 * group;
}
