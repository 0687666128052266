/** Work too long for the page's own thread. Each takes one side of a job and gives plain data. */
import type { Side } from '$lib/job/evaluate';
import { eventDrive, type EventDrive } from '$lib/job/models/toDrive';
import { toConditions } from '$lib/job/models/toReadings';
import { BAND_SOURCES } from '$lib/job/sure/bands';
import type { Bands } from '$lib/job/sure/bands/bandSource';
import { faultGrid, type Shown } from '$lib/solver/diagnosis/grid';
import { suctionPicture, type SuctionPicture } from '$lib/solver/suction/picture';

/** What each task gives. */
export interface TaskResult {
  /** Predictions in the order of the faults: a fault itself holds functions and cannot be sent. */
  readonly faults: readonly (readonly Shown[])[];
  /** Null where the loop cannot be prepared. */
  readonly suction: SuctionPicture | null;
  readonly drive: EventDrive | null;
  /** Bands round curves, by the name of their source; null where nothing has a ±. */
  readonly [band: `band ${string}`]: Bands | null;
}
export type TaskName = keyof TaskResult;

/** A side of a job, and all sides drawn with it: as found, and the candidate where there is one. */
type Task<T> = (side: Side, sides: readonly Side[]) => T;

const BANDS = Object.fromEntries(
  BAND_SOURCES.map((source): [`band ${string}`, Task<Bands | null>] => [
    `band ${source.name}`,
    (side, sides) => source.bands(side, sides),
  ]),
);

export const TASKS: { readonly [K in TaskName]: Task<TaskResult[K]> } = {
  ...BANDS,
  faults: (side) => faultGrid(side.loop, toConditions(side.values)).map(({ shown }) => shown),
  drive: ({ prepared, request, values }) =>
    prepared.ok && request.ok ? eventDrive(values, prepared.value, request.value) : null,
  suction: ({ prepared }) => (prepared.ok ? suctionPicture(prepared.value) : null),
};
