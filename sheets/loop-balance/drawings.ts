/** The drawings of the loop there are. */
import type { Drawing, Drawn } from './drawing';
import * as narrow from './narrow';
import * as wide from './wide';

export const DRAWINGS: Drawn<Drawing> = {
  'cooler-first': { wide: wide.COOLER_FIRST, narrow: narrow.COOLER_FIRST },
  'front-first': { wide: wide.FRONT_FIRST, narrow: narrow.FRONT_FIRST },
};
