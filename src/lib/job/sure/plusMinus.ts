/** What a ± says of a value: how its likely values lie, and how far off it is on the whole. */
import {
  calibrated,
  standardDeviation,
  within,
  type Distribution,
} from '$lib/solver/uncertainty/distributions';
import { parseQuantity, type UnitSystem } from '$lib/units';
import type { Entry } from '../types';
import type { Value } from '../value';

/** Coverage factor where a certificate states none: 95 of 100 in a normal distribution. */
export const USUAL_COVERAGE = 2;
/** Coverage factors that certificates state; wide. */
const COVERAGE = { least: 1, most: 10 } as const;

/** How the ± of a value is to be read; absent where it has none that counts. */
export function distributionOf({ si, pm, pmDown, spread, k }: Value): Distribution | null {
  if (si === undefined || pm === undefined || !(pm > 0 || (pmDown ?? 0) > 0)) return null;
  switch (spread) {
    case 'interval':
    case 'triangular':
      return within(spread, si, pm, pmDown);
    case 'calibration':
      return calibrated(si, pm, k ?? USUAL_COVERAGE);
    default:
      return calibrated(si, pm, USUAL_COVERAGE);
  }
}

/** Standard uncertainty, SI; null without a ± that counts. */
export function standardUncertainty(value: Value): number | null {
  const distribution = distributionOf(value);
  return distribution && standardDeviation(distribution);
}

/** Why a ± that is wider one way cannot be read as this kind; null where it can. */
export const uneven = (spread: Value['spread']): string | null =>
  spread === 'interval' || spread === 'triangular'
    ? null
    : 'A ± that is wider one way has bounds. Say how the value lies between them: anywhere within, or likeliest at the value. Until then this ± is left out.';

type Coverage = Pick<Value, 'spread' | 'k' | 'kText' | 'kMessage'>;

/** Kind of the ± of an entry, with its coverage factor where it is a calibration's. */
export function coverageOf({ spread, k }: Entry, units: UnitSystem): Coverage {
  if (spread !== 'calibration') return spread === undefined ? {} : { spread };
  if (k === undefined || k.trim() === '') return { spread, k: USUAL_COVERAGE };
  const checked = checkCoverage(k, units);
  return checked.ok
    ? { spread, k: checked.k, kText: k }
    : { spread, kText: k, kMessage: checked.message };
}

/** A coverage factor as typed. */
export function checkCoverage(
  typed: string,
  units: UnitSystem,
): { ok: true; k: number } | { ok: false; message: string } {
  const parsed = parseQuantity(typed.replace(/^\s*k\s*=?\s*/i, ''), 'ratio', { system: units });
  const { least, most } = COVERAGE;
  if (parsed.ok && parsed.si >= least && parsed.si <= most) return { ok: true, k: parsed.si };
  return {
    ok: false,
    message: `The coverage factor k is a plain number from ${least} to ${most}, as the certificate states it; 2 where it says 95 %. Until then this ± is left out.`,
  };
}
