import {
  nearestPreferred,
  PREFERRED,
  preferredValues,
  type SeriesName,
} from '$lib/solver/instruments/preferred';
import { nearestNetworks, stockOf } from '$lib/solver/instruments/probe/trim/search';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const SERIES: Readonly<Record<SeriesName, SeriesName>> = { E12: 'E12', E24: 'E24', E96: 'E96' };
const seriesOf = (given: Given) => given.oneOf('series', SERIES);

export const preferredNumbersAdapters: Readonly<Record<string, Adapter>> = {
  'series-values': (given) => ({ values: [...PREFERRED[seriesOf(given)]] }),
  nearest: (given) => {
    const R = given.number('R');
    const R_nearest = nearestPreferred(seriesOf(given), R);
    return { R_nearest, relative_error: R_nearest / R - 1 };
  },
  'best-parallel-pair': (given) => {
    const target = given.number('R_target');
    const values = preferredValues(
      seriesOf(given),
      given.number('R_lowest'),
      given.number('R_highest'),
    );
    const stock = stockOf(values.map((R) => ({ R })));
    const { below, above } = nearestNetworks(target, stock, 2, 40);
    const off = (R: number) => Math.abs(R / target - 1);
    const best = [...below, ...above]
      .filter(({ network }) => network.form === 'a|b')
      .reduce((a, b) => (off(b.R) < off(a.R) ? b : a));
    const [R_a, R_b] = [...best.network.parts].sort((a, b) => a - b);
    return { R_a: R_a!, R_b: R_b!, relative_error_abs: off(best.R) };
  },
};
