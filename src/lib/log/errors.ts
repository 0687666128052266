/** What can be wrong with a log, in words for whoever opened it. Nothing that was there before is touched. */

export type LogProblem =
  | 'too-large'
  | 'binary'
  | 'empty'
  | 'no-header'
  | 'no-table'
  | 'one-row'
  | 'no-numbers'
  | 'too-many-columns'
  | 'too-many-rows'
  | 'open-quote'
  | 'no-time'
  | 'time-backwards'
  | 'cancelled';

export interface LogFacts {
  /** Row of the file, from 1. */
  readonly row?: number;
  readonly column?: string;
  readonly value?: number | string;
  readonly limit?: number;
}

export class LogError extends Error {
  readonly code: LogProblem;
  readonly facts: LogFacts;
  constructor(code: LogProblem, message: string, facts: LogFacts = {}) {
    super(message);
    this.name = 'LogError';
    this.code = code;
    this.facts = facts;
  }
}

/** Something to be told beside a log that was read. */
export interface LogNote {
  readonly code: string;
  readonly message: string;
  readonly column?: string;
  readonly row?: number;
  readonly count?: number;
}
