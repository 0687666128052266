export { FIELD_GROUPS, FIELDS, fieldAt, fieldGroup } from './fields';
export type {
  ChoiceField,
  Column,
  FieldGroup,
  FieldSpec,
  GroupId,
  QuantityField,
  TableField,
  TextField,
} from './fields';
export { evaluate, type Evaluated, type Side } from './evaluate';
export { readJob, writeJob, type ReadResult } from './file/file';
export { browserJobState, getJob, JobState, setJob, type Notice } from './state.svelte';
export type { JobCard } from './file/storage';
export {
  emptyJob,
  type Entry,
  type Job,
  type Outcome,
  type OutcomeProblem,
  type Paper,
  type Problem,
  type SideId,
  type Typed,
} from './types';
export type { Value, Values } from './values';
