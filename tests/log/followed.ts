/** A loop followed through a drive, row by row, as instruments without noise would read it. */
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId, Segment, TransientState } from '$lib/solver/loop/types';
import { simulate } from '$lib/solver/loop/events/simulate';
import type { EventHistory } from '$lib/solver/loop/events/types';

export interface Row {
  readonly t: number;
  readonly duty: DutyId;
  readonly chargeAirIn: number;
  readonly chargeAirFlow: number;
  readonly reservoir: number;
  readonly chargeOut: number;
  readonly chargeLiquid: number;
  readonly frontIn: number;
  readonly frontOut: number;
  readonly flow: number;
}

export interface Followed {
  readonly rows: readonly Row[];
  readonly end: TransientState;
}

/** Hoses as rows of cells: well nearer to a plug than the one mixed part that a fit makes of each. */
const HOSE_CELLS = 4;

/**
 * @param rate - rows a second; the integrator stops at each, so that nothing lies between its points. A
 *   change of duty falls in the middle between two rows, as far from either as it can be
 */
export function followed(
  prepared: PreparedLoop,
  schedule: readonly Segment[],
  { start, rate }: { readonly start: TransientState; readonly rate: number },
): Followed {
  const halves = schedule.flatMap((segment) =>
    Array.from({ length: 2 * Math.round(segment.duration * rate) }, () => ({
      ...segment,
      duration: 0.5 / rate,
    })),
  );
  const { history, end } = simulate(prepared, {
    schedule: halves,
    start,
    hoseDelay: { cells: HOSE_CELLS },
  });
  let at = 0;
  const rows = halves.flatMap(({ duty }, i): Row[] => {
    if (i % 2 === 0) return [];
    const now = (0.5 * i) / rate;
    while (at + 1 < history.t.length && history.t[at + 1]! <= now + 1e-9) at++;
    const air = prepared.chargeAt(prepared.loop.duties[duty])!;
    const { compressorOutlet: chargeAirIn, massFlow: chargeAirFlow } = air;
    return [{ t: (i - 1) / (2 * rate), duty, chargeAirIn, chargeAirFlow, ...read(history, at) }];
  });
  return { rows, end };
}

const read = (history: EventHistory, i: number) => ({
  reservoir: history.reservoir[i]!,
  chargeOut: history.chargeOut[i]!,
  chargeLiquid: history.chargeLiquid[i]!,
  frontIn: history.frontIn[i]!,
  frontOut: history.frontLiquid[i]!,
  flow: history.flow[i]!,
});
