/** How much of each thing a job file may hold: beyond it the file is something else. */
export const LONGEST_TEXT = 400;
export const LONGEST_NOTE = 20_000;
