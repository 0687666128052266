/** In what order to fit: by what a reading can still tell for its minutes, where there is something to go by. */
import type { NextMeasurement } from '$lib/solver/diagnosis/nextMeasurement';
import type { Study as Diagnosis } from '../diagnosis/study';
import { PLACES, type Place } from './places';

export interface Placed extends Place {
  /** Position in the order of fitting, from 1; the drawing carries it. */
  readonly number: number;
  /** What the diagnosis expects of it; absent where it has no say. */
  readonly next?: NextMeasurement;
  /** A reading of it is in the job. */
  readonly read: boolean;
}

/** A reading expected to take away less of the doubt, as a share, has no say in the order. */
const WORTH_TELLING = 0.01;

/** Channels of which the job holds a reading. */
type Read = ReadonlySet<string>;

/**
 * The places in order. With a diagnosis: unread ones by doubt removed for each minute, then those it
 * has no say in, then what is read already; each in the trade's order among themselves.
 */
export function inOrder(read: Read, diagnosis: Diagnosis | null): Placed[] {
  const best = new Map<string, NextMeasurement>();
  for (const next of diagnosis?.next ?? []) {
    if (next.doubt > WORTH_TELLING && !best.has(next.channel)) best.set(next.channel, next);
  }
  const described = PLACES.map((place) => {
    const next = place.channel && best.get(place.channel);
    const isRead = place.channel !== undefined && read.has(place.channel);
    return { ...place, read: isRead, ...(next && !isRead && { next }) };
  });
  const sorted = diagnosis
    ? described.toSorted(
        (a, b) =>
          Number(a.read) - Number(b.read) || (b.next?.perMinute ?? 0) - (a.next?.perMinute ?? 0),
      )
    : described;
  return sorted.map((place, i) => ({ ...place, number: i + 1 }));
}
