/** Each heat that enters the liquid, as rows of a bar chart. */
import type { SteadySolution } from '$lib/solver/loop/types';

const ROWS = [
  ['charge', 'Charge air'],
  ['engineSoak', 'Engine, through the charge cooler'],
  ['hoseSoak', 'Engine bay, through the hoses'],
  ['reservoirSoak', 'Engine bay, through the reservoir'],
  ['pump', 'Pump'],
] as const;

export const HEAT_IDS = ROWS.map(([id]) => id);

/** A bar has no left side: a heat that leaves the liquid is drawn by its size and says so. */
const worded = (label: string, heat: number) => (heat < 0 ? `${label} (leaves the liquid)` : label);

export const heatRows = (found: SteadySolution, candidate: SteadySolution | null) =>
  ROWS.map(([id, label]) => ({
    id,
    label: worded(label, found.ledger[id]),
    found: Math.abs(found.ledger[id]),
    ...(candidate && { candidate: Math.abs(candidate.ledger[id]) }),
  }));

/** Every heat enters on both sides: then the bars add up to what the front exchanger gives off. */
export const addsUp = (...sides: (SteadySolution | null)[]): boolean =>
  sides.every((s) => !s || ROWS.every(([id]) => s.ledger[id] >= 0));
