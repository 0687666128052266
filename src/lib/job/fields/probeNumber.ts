/** A number of a probe's circuit, typical values from memory unless told. */
import type { QuantityField } from './types';

export const number = (
  path: string,
  label: string,
  quantity: QuantityField['quantity'],
  given: string,
  [min, max]: readonly [number, number],
  ask: string,
  more: Partial<Pick<QuantityField, 'symbol' | 'typical' | 'integer'>> = {},
): QuantityField => ({
  kind: 'quantity',
  path,
  label,
  quantity,
  default: given,
  standing: 'from memory',
  min,
  max,
  ask,
  ...more,
});
