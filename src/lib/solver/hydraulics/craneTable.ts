/**
 * Loss figures of Crane TP-410, Flow of Fluids Through Valves, Fittings and Pipe (appendix A).
 * From memory, except the rounded entrances at r/D 0.02 and 0.10, which agree with an open library.
 */

/** K = n f_T: the multiples n. */
export const CRANE_MULTIPLE = {
  'elbow-90-standard': 30,
  'elbow-45-standard': 16,
  'tee-through-run': 20,
  'tee-through-branch': 60,
  'return-bend': 50,
  'ball-valve': 3,
  'gate-valve': 8,
} as const;

/** 90° bends: (bend radius over bore, n). */
export const CRANE_BEND = [
  [1, 20],
  [1.5, 14],
  [2, 12],
  [3, 12],
  [4, 14],
  [6, 17],
  [8, 24],
  [10, 30],
  [12, 34],
  [14, 38],
  [16, 42],
  [20, 50],
] as const;

/** Entrances flush with the wall: (edge radius over bore, K). */
export const CRANE_ROUNDED_ENTRANCE = [
  [0, 0.5],
  [0.02, 0.28],
  [0.04, 0.24],
  [0.06, 0.15],
  [0.1, 0.09],
  [0.15, 0.04],
] as const;

/** An entrance from a pipe that stands into the tank. */
export const CRANE_INWARD_ENTRANCE = 0.78;
