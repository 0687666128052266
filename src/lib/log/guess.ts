/** Which column is which channel of the loop: a guess from names and units, for the user to confirm. */
import { COMMON, LOG_CHANNELS, type ChannelFacts, type LogChannel } from './channels';
import type { LogColumn } from './reader';
import { logScale, quantitiesOf } from './units';

export interface Guess {
  readonly channel: LogChannel;
  /** Index of the column. */
  readonly column: number;
  /** Unit as written, or null: none was, and the user must say. */
  readonly unit: string | null;
  /** 0 to 1: how much the name says; below 0.5 look twice. */
  readonly confidence: number;
}

const ENOUGH = 3;
const SURE = 7;

/**
 * Give each channel its best column and each column one channel, best matches first. A unit that cannot
 * measure the channel rules it out.
 */
export function guessChannels(columns: readonly LogColumn[]): readonly Guess[] {
  const candidates: (Guess & { readonly score: number })[] = [];
  columns.forEach((column, index) => {
    const { name, unit } = column.heading;
    const words = spelled(name);
    for (const channel of Object.keys(LOG_CHANNELS) as LogChannel[]) {
      const facts: ChannelFacts = LOG_CHANNELS[channel];
      const isTime = column.form === 'clock' || column.form === 'date';
      if (isTime !== (channel === 'time') && (isTime || column.form === null)) continue;
      if (!isTime && unit !== '' && !logScale(unit, facts.quantity)) continue;
      const met = facts.words.filter(([pattern]) => pattern.test(words));
      let score = met.reduce((sum, [, weight]) => sum + weight, 0);
      // A name that says nothing of the place is not saved by its unit, nor by “temp” or “coolant”.
      const own = met.some((word) => word[1] > 0 && !COMMON.has(word));
      if (!own && !isTime) continue;
      if (isTime) score += 6;
      else if (unit !== '' && quantitiesOf(unit).length === 1) score += 2;
      if (score >= ENOUGH)
        candidates.push({
          channel,
          column: index,
          unit: unit || null,
          confidence: Math.min(1, score / SURE),
          score,
        });
    }
  });
  candidates.sort((a, b) => b.score - a.score || a.column - b.column);
  const taken = { channels: new Set<string>(), columns: new Set<number>() };
  const guesses: Guess[] = [];
  for (const { channel, column, unit, confidence } of candidates) {
    if (taken.channels.has(channel) || taken.columns.has(column)) continue;
    taken.channels.add(channel);
    taken.columns.add(column);
    guesses.push({ channel, column, unit, confidence });
  }
  return guesses.sort((a, b) => a.column - b.column);
}

/** A heading as words: parted where case, digits or marks part them, lower case. */
const spelled = (name: string): string =>
  name
    .replace(/([a-zà-ÿ])([A-Z])/g, '$1 $2')
    .replace(/[_.:\-–#()[\]]+/g, ' ')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
