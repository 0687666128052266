export type { Quantity } from '$lib/solver/quantity';
export { DISPLAY, shownUnit, type Display, type ShownUnit, type UnitSystem } from './display';
export {
  formatQuantity,
  fromShown,
  printNumber,
  showQuantity,
  toShown,
  type FormatOptions,
  type Formatted,
} from './format';
export {
  expectedWords,
  parseQuantity,
  type NotParsed,
  type ParseCode,
  type ParseContext,
  type Parsed,
} from './parse';
export type { DashConvention, DashSize } from './dash';
