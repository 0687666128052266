/** What a job asks of the fit of its log. */
import type { MassesSought } from '$lib/solver/loop/fromLog/types';
import type { FitWish } from './logFit';
import type { Values } from '../value';

const SOAK = ['soak.engineConductance', 'soak.hoseConductance', 'soak.reservoirConductance'];

/** Where nobody entered how engine and bay heat the liquid, the log has to tell it. */
export const fitWish = (values: Values): FitWish => ({
  sought: {
    masses: values['log.masses']!.choice as MassesSought,
    soak: SOAK.every((path) => values[path]!.assumed),
  },
  errors: {
    temperature: values['log.temperatureError']!.si!,
    flow: values['log.flowError']!.si!,
  },
});
