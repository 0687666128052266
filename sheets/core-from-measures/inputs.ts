/** What is asked of each core. */
import { fieldGroup } from '$lib/job/fields';

const paths = (id: Parameters<typeof fieldGroup>[0]) =>
  fieldGroup(id).fields.map(({ path }) => path);

export const FRONT_PATHS = [
  'frontExchanger.by',
  'frontExchanger.width',
  'frontExchanger.height',
  ...paths('frontMeasures').filter((path) => path !== 'frontExchanger.by'),
];
export const CHARGE_PATHS = paths('chargeMeasures');

/** At which flows and inlets the measures are worked out: those of the rating. */
export const pointPaths = (core: 'frontExchanger' | 'chargeCooler') =>
  ['airMassFlow', 'airInlet', 'liquidFlow', 'liquidInlet', 'heat'].map(
    (key) => `${core}.rating.${key}`,
  );
