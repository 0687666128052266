/** Names of causes and places, as every part of this sheet says them. */
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import type { Cause } from '$lib/solver/diagnosis/rank';
import type { Place, Reading } from '$lib/solver/diagnosis/types';

export const PLACE_WORDS: Readonly<Record<Place, string>> = {
  traffic: 'in traffic',
  cruise: 'at cruise',
  once: 'standing',
};

export const causeName = ({ fault }: Cause): string =>
  fault?.name ?? 'None of these, or two at once';

export const causeId = ({ fault }: Cause): string => fault?.id ?? 'none-of-these';

export const readingName = ({ channel, place }: Pick<Reading, 'channel' | 'place'>): string =>
  place === 'once' ? CHANNELS[channel].name : `${CHANNELS[channel].name}, ${PLACE_WORDS[place]}`;
