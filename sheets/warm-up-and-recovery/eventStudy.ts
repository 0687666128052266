/** The drive with everything that may happen on it: worked out when asked for, kept by what it uses. */
import type { Side } from '$lib/job/evaluate';
import { problemOf } from '$lib/job/problem';
import { asksOfDrive, eventDrive, type EventDrive } from '$lib/job/models/toDrive';
import type { Outcome } from '$lib/job/types';
import { Keep } from '$lib/keep';
import type { Keeping } from '$lib/workers/background.svelte';

const drives = new Keep<EventDrive>(6);

export const KEEPING: Keeping<'drive'> = {
  task: 'drive',
  keyOf: ({ loop, values }) => JSON.stringify([loop, asksOfDrive(values)]),
  known: (key) => drives.has(key),
  keep: (key, drive) => drive && drives.set(key, drive),
};

/** The drive of a side; a problem where it cannot be followed. */
export function eventsOf(side: Side): Outcome<EventDrive> {
  const { prepared, request, values } = side;
  if (!prepared.ok) return prepared;
  if (!request.ok) return request;
  try {
    const work = () => eventDrive(values, prepared.value, request.value);
    return { ok: true, value: drives.of(KEEPING.keyOf(side), work) };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown, 'US') };
  }
}
