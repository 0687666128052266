/** From the blanks of what was measured to readings with standard deviations. */
import { DUTY_CHANNELS, usualPlusMinus } from '$lib/solver/diagnosis/channels';
import { PLUS_MINUS_SIGMAS } from '$lib/solver/diagnosis/likelihood';
import {
  SETTLED_DUTIES,
  type Channel,
  type Conditions,
  type DutyChannel,
  type Place,
  type Reading,
} from '$lib/solver/diagnosis/types';
import { standardUncertainty } from '../sure/plusMinus';
import type { Values } from '../values';

/** ± of an ambient reading where none is stated, K (2 °F; common practice, no source). */
const AMBIENT_PLUS_MINUS = 2 / 1.8;

const PAPER: Readonly<Record<string, number>> = { held: 1, drops: 0, blown: -1 };

/** Everything measured, in the order of the sheet. */
export function toReadings(values: Values): Reading[] {
  const reading = (channel: Channel, place: Place, path: string): Reading[] => {
    const value = values[path];
    const si = value?.si;
    if (!value || si === undefined) return [];
    // A ± of nothing is no instrument's: the usual one stands in.
    const sigma = standardUncertainty(value) ?? usualPlusMinus(channel, si) / PLUS_MINUS_SIGMAS;
    return [{ channel, place, value: si, sigma }];
  };
  const paper = PAPER[values['measured.paper']?.choice ?? ''];
  return [
    ...SETTLED_DUTIES.flatMap((duty) =>
      (Object.keys(DUTY_CHANNELS) as DutyChannel[]).flatMap((channel) =>
        reading(channel, duty, `measured.${duty}.${channel}`),
      ),
    ),
    ...reading('soak', 'once', 'measured.soak'),
    ...(paper === undefined
      ? []
      : [
          {
            channel: 'paper',
            place: 'once',
            value: paper,
            sigma: usualPlusMinus('paper', paper) / PLUS_MINUS_SIGMAS,
          } as const,
        ]),
    ...reading('volume', 'once', 'measured.volume'),
  ];
}

/** Ambient and speeds as the readings were taken; what is left empty is as described. */
export function toConditions(values: Values): Conditions {
  const ambient = values['measured.ambient'];
  const stated = ambient?.si === undefined ? values['site.ambient'] : ambient;
  const speed: Partial<Record<(typeof SETTLED_DUTIES)[number], number>> = {};
  for (const duty of SETTLED_DUTIES) {
    const si = values[`measured.${duty}.speed`]?.si;
    if (si !== undefined) speed[duty] = si;
  }
  return {
    ...(ambient?.si !== undefined && { ambient: ambient.si }),
    ambientSigma: (stated && standardUncertainty(stated)) ?? AMBIENT_PLUS_MINUS / PLUS_MINUS_SIGMAS,
    speed,
  };
}
