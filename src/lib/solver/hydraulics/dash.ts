/** From a dash size to a bore, by both conventions of the trade. */
import { InvalidInputError, requireWithin } from '../errors';
import type { Source } from '../sources';
import { HOSE_BORE_SOURCE, TUBE_REPLACED_BORE, TUBE_REPLACED_SOURCE } from './dashTable';

export type DashConvention = 'hose-bore' | 'tube-replaced';

export interface DashBore {
  readonly convention: DashConvention;
  /** m */
  readonly bore: number;
  readonly source: Source;
}

/**
 * Bore of a hose of the given dash size.
 * `hose-bore`: sixteenths of an inch of bore. `tube-replaced`: the number names the outside diameter
 * of the tube it replaces and the bore is smaller.
 *
 * @throws {@link OutOfRangeError} for a dash size outside 2 to 32
 * @throws {@link InvalidInputError} for a size the table of replaced tubes does not hold
 * @example dashBore(12, 'hose-bore').bore // 0.01905
 * @example dashBore(12, 'tube-replaced').bore // 0.015875
 */
export function dashBore(dash: number, convention: DashConvention): DashBore {
  requireWithin('dash size', { dash: [2, 32] }, { dash });
  if (convention === 'hose-bore') {
    return { convention, bore: (dash / 16) * 0.0254, source: HOSE_BORE_SOURCE };
  }
  const bore = TUBE_REPLACED_BORE[dash];
  if (bore === undefined) {
    const known = Object.keys(TUBE_REPLACED_BORE).join(', ');
    throw new InvalidInputError(
      'dash',
      `no bore on record for dash ${dash}; known: ${known}`,
      dash,
    );
  }
  return { convention, bore, source: TUBE_REPLACED_SOURCE };
}
