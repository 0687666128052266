/** Small changes of a loop from which the faults are put together. */
import type { Core, Hose, HoseId, Loop, RatedLoss } from '../loop/types';

/** The pump at these volts, whatever feeds it. */
export const atVolts = (loop: Loop, volts: number): Loop => ({
  ...loop,
  feed: null,
  pump: { ...loop.pump, volts },
});

/** The pump lifting `share` of its head. */
export const headScaled = (loop: Loop, share: number): Loop => ({
  ...loop,
  pump: {
    ...loop.pump,
    curve: loop.pump.curve.map(({ flow, head }) => ({ flow, head: share * head })),
  },
});

/** A loss whose free passage is `open` of what it was: the same loss at that much less flow. */
const narrowed = (loss: RatedLoss, open: number): RatedLoss => ({
  ...loss,
  points: loss.points.map((p) => ({ flow: p.flow * open, loss: p.loss })),
});

/**
 * A core with the share `open` of its tubes left: liquid goes faster through them, and what is left
 * carries heat by the core's own exponent.
 */
export const tubesLeft = <C extends Core>(core: C, open: number): C => ({
  ...core,
  liquidLoss: narrowed(core.liquidLoss, open),
  cleanliness: core.cleanliness * open ** (1 - core.liquidExponent),
});

/** A front exchanger with the share `open` of its face left to the air. */
export const faceLeft = (loop: Loop, open: number): Loop => {
  const core = loop.frontExchanger;
  return {
    ...loop,
    frontExchanger: {
      ...core,
      airLoss: narrowed(core.airLoss, open),
      cleanliness: core.cleanliness * open ** (1 - core.airExponent),
    },
  };
};

/** Of the clean core only the share `left` of its conductance. */
export const conductanceLeft = <C extends Core>(core: C, left: number): C => ({
  ...core,
  cleanliness: core.cleanliness * left,
});

/** One run of hose with its bore, fittings included, squeezed to `share`. */
export const squeezed = (loop: Loop, id: HoseId, share: number): Loop => {
  const hose: Hose = loop.hoses[id];
  return {
    ...loop,
    hoses: {
      ...loop.hoses,
      [id]: { ...hose, bore: hose.bore * share, fittingBore: hose.fittingBore * share },
    },
  };
};
