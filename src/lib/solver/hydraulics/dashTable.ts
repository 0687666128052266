/**
 * Bores by dash size, m. Two conventions of the trade share one number, so a sheet must ask for the
 * measured bore and say which of these it offers.
 */
import type { Source } from '../sources';

const inch = 0.0254;

/** Dash number = sixteenths of an inch of hose bore: rubber hydraulic and heater hose. */
export const HOSE_BORE_SOURCE: Source = {
  cite: "Dash size as sixteenths of the hose bore: hose makers' numbering",
  standing: 'common practice',
};

/** Dash number = tube outside diameter replaced: SAE 100R5 and R14 style hose, bore smaller. */
export const TUBE_REPLACED_SOURCE: Source = {
  cite: 'Dash size as tube outside diameter replaced, SAE 100R5 / R14 style hose (table not seen)',
  standing: 'from memory',
};

/** True bore of hose that is named by the tube it replaces. */
export const TUBE_REPLACED_BORE: Readonly<Record<number, number>> = {
  4: (3 / 16) * inch,
  6: (5 / 16) * inch,
  8: (13 / 32) * inch,
  10: (1 / 2) * inch,
  12: (5 / 8) * inch,
  16: (7 / 8) * inch,
  20: (1 + 1 / 8) * inch,
  24: (1 + 3 / 8) * inch,
};
