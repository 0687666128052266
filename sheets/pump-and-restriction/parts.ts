/** The six parts in the way of the liquid, by name. */
import type { HeadShare } from '$lib/solver/loop/types';

export type PartId = HeadShare['part'];

/** As a row or an axis names it. */
export const PART_NAME: Readonly<Record<PartId, string>> = {
  suction: 'Hose, reservoir to pump',
  delivery: 'Hose, pump to first core',
  chargeCooler: 'Charge cooler',
  transfer: 'Hose between the cores',
  frontExchanger: 'Front exchanger',
  back: 'Hose, last core to reservoir',
};

/** Inside a sentence. */
export const PART_WORDS: Readonly<Record<PartId, string>> = {
  suction: 'the hose from reservoir to pump',
  delivery: 'the hose from pump to first core',
  chargeCooler: 'the charge cooler',
  transfer: 'the hose between the cores',
  frontExchanger: 'the front exchanger',
  back: 'the hose from last core to reservoir',
};

/** The pump, or both of them. */
export const PUMPS_NAME = {
  one: 'One pump',
  'two-in-series': 'Two in series',
  'two-in-parallel': 'Two in parallel',
} as const;
