/** Work too long for the page's own thread. Each takes one side of a job and gives plain data. */
import type { Side } from '$lib/job/evaluate';
import { eventDrive, type EventDrive } from '$lib/job/models/toDrive';
import { toConditions } from '$lib/job/models/toReadings';
import {
  ambientBand,
  driveBands,
  headBands,
  type AmbientBand,
  type DriveBands,
  type HeadBands,
} from '$lib/job/sure/surenessBands';
import { faultGrid, type Shown } from '$lib/solver/diagnosis/grid';
import { suctionPicture, type SuctionPicture } from '$lib/solver/suction/picture';

/** What each task gives. */
export interface TaskResult {
  /** Predictions in the order of the faults: a fault itself holds functions and cannot be sent. */
  readonly faults: readonly (readonly Shown[])[];
  /** Null where the loop cannot be prepared. */
  readonly suction: SuctionPicture | null;
  readonly drive: EventDrive | null;
  /** Bands round curves; null where nothing has a ±. */
  readonly ambientBand: AmbientBand | null;
  readonly driveBands: DriveBands | null;
  readonly headBands: HeadBands | null;
}
export type TaskName = keyof TaskResult;

export const TASKS: { readonly [K in TaskName]: (side: Side) => TaskResult[K] } = {
  faults: (side) => faultGrid(side.loop, toConditions(side.values)).map(({ shown }) => shown),
  drive: ({ prepared, request, values }) =>
    prepared.ok && request.ok ? eventDrive(values, prepared.value, request.value) : null,
  ambientBand,
  driveBands,
  headBands,
  suction: ({ prepared }) => (prepared.ok ? suctionPicture(prepared.value) : null),
};
