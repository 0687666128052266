/** What the reader must be told of the suction side at a flow. */
import type { Note } from '../errors';
import type { Loop } from '../loop/types';
import { inletPressure } from './inlet';
import { suctionMargin, type SuctionSide } from './npsh';

/** Share of the head below which a counted loss is told. */
const TOLD_BELOW = 0.999;

export function suctionNotes(
  { pump, reservoir }: Loop,
  side: SuctionSide,
  suction: { readonly available: number; readonly required: number; readonly headLeft: number },
): Note[] {
  const notes: Note[] = [];
  const counted = pump.cavitation === 'counted';
  const margin = suctionMargin(suction);
  if (margin < 0) {
    const message = counted
      ? 'the suction head is less than the pump needs: it cavitates'
      : 'the suction head is less than the pump needs: it cavitates, and the true flow is lower than shown';
    notes.push({ code: 'suction.short', message, quantity: 'npshAvailable', value: margin });
  }
  if (counted && suction.headLeft < TOLD_BELOW) {
    const message =
      'head and flow count what the suction head takes, by a stated law without source but for its 3 % point';
    const quantity = 'operating.headLeft';
    notes.push({ code: 'suction.head-lost', message, quantity, value: suction.headLeft });
  }
  if (belowZero(side)) {
    const message =
      'the suction hose would take more than all the pressure there is: this flow cannot be';
    notes.push({
      code: 'suction.below-zero',
      message,
      quantity: 'h_suction',
      value: side.h_suction,
    });
  }
  if (reservoir.capGauge > 0) {
    const message =
      "the suction head counts the cap's full pressure; a cold or freshly opened reservoir has none";
    const quantity = 'reservoir.capGauge';
    notes.push({ code: 'suction.cap-pressure', message, quantity, value: reservoir.capGauge });
  }
  return [...notes, ...ratingNotes(reservoir)];
}

/** A cap that opens above what the tank is made for. */
export function ratingNotes({ capGauge, ratedGauge }: Loop['reservoir']): Note[] {
  if (ratedGauge === undefined || !(capGauge > ratedGauge)) return [];
  return [
    {
      code: 'reservoir.cap-above-rating',
      message: 'the cap opens above the pressure the tank is made for',
      quantity: 'reservoir.capGauge',
      value: capGauge,
      range: [0, ratedGauge],
    },
  ];
}

function belowZero(side: SuctionSide): boolean {
  try {
    inletPressure(side);
    return false;
  } catch {
    return true;
  }
}
