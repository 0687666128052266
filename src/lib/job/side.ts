/** One side of a job, evaluated. */
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type {
  DutyId,
  Loop,
  SteadySolution,
  WarmUpRequest,
  WarmUpSolution,
} from '$lib/solver/loop/types';
import type { LogRecord } from './log/logRecord';
import type { Limits } from './models/toLoop';
import type { Outcome, OutcomeProblem, Problem, SideId } from './types';
import type { Values } from './value';

/** One side of a job: its values, and what they lead to. Solutions are found when first asked for. */
export interface Side {
  readonly id: SideId;
  readonly values: Values;
  /** Fields whose last text was refused. */
  readonly problems: readonly Problem[];
  readonly loop: Loop;
  readonly limits: Limits;
  /** What the job keeps of a log. */
  readonly log: LogRecord | null;
  /** The loop ready to be solved, with its curves; absent when its description contradicts itself. */
  readonly prepared: Outcome<PreparedLoop>;
  readonly steady: Readonly<Record<DutyId, Outcome<SteadySolution>>>;
  readonly request: Outcome<WarmUpRequest>;
  readonly warmUp: Outcome<WarmUpSolution>;
  /** Set when the loop as described contradicts itself: nothing below can be solved. */
  readonly problem?: OutcomeProblem;
}
