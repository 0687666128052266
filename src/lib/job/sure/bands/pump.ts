/** Pump and restriction: heads over flow, flow over bore, and what each part takes. */
import { systemCurveWithin } from '$lib/solver/hydraulics/curves';
import { modelIn } from '$lib/solver/hydraulics/pumpInLoop';
import { runParts } from '$lib/solver/hydraulics/runParts';
import { runShares, worstRun } from '$lib/solver/hydraulics/shares';
import {
  BORE_SPAN,
  flowAgainstBore,
  flowByDash,
  pumpChoiceCurves,
  pumpChoices,
} from '$lib/solver/hydraulics/whatIf';
import type { HydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import type { PumpModel } from '$lib/solver/hydraulics/pump';
import type { SteadySolution } from '$lib/solver/loop/types';
import { spaced } from '$lib/solver/numerics/spaced';
import type { Side } from '../../evaluate';
import { solvedOf } from '../../shownDuty';
import { curveSet, type Curves } from './bandSource';

/** Places along a head curve, and bores tried. */
const PLACES = { flow: 31, bore: 13 } as const;

const liquidOf = ({ liquid }: SteadySolution) => ({ rho: liquid.density, mu: liquid.viscosity });

function runningIn(side: Side) {
  const solved = solvedOf(side);
  if (!solved) return null;
  const { ready, s } = solved;
  return { s, model: modelIn(ready.hydraulics, s.liquid), liquid: liquidOf(s) };
}

/** Flows from nothing to where the curve of the side as it stands ends. */
const flowsTo = (end: number) => spaced(0, end, PLACES.flow);

const loopAt = (model: HydraulicModel, liquid: ReturnType<typeof liquidOf>, end: number) =>
  flowsTo(end).map((flow) => [flow, model.systemHead(flow, liquid)] as const);

/** A weaker pump lifts nothing where the curve of the other still has a little. */
const liftAt = (pump: PumpModel, end: number) =>
  flowsTo(end).map((flow) => [flow, flow <= pump.runOut ? pump.head(flow) : 0] as const);

export const HEADS = curveSet({
  name: 'heads',
  frame(side) {
    const running = runningIn(side);
    if (!running) return null;
    const { model, liquid } = running;
    const pump = model.pump.speedRatio > 0 ? model.pump : model.pump.rated;
    const within = { flowMax: pump.runOut, shutOff: pump.shutOff };
    return {
      pump: pump.runOut,
      loop: systemCurveWithin(model, liquid, within).at(-1)![0],
    };
  },
  curves(side, frame): Curves {
    const running = runningIn(side);
    if (!running || !frame) return {};
    const { model, liquid } = running;
    return {
      pump: model.pump.speedRatio > 0 ? liftAt(model.pump, frame.pump) : [],
      loop: loopAt(model, liquid, frame.loop),
    };
  },
});

/** The same liquid with every hose at one bore, and with a second pump. */
export const PUMP_CHOICES = curveSet({
  name: 'pumpChoices',
  frame(side) {
    const running = runningIn(side);
    if (!running || !(running.model.pump.speedRatio > 0)) return null;
    const sets = pumpChoiceCurves(side.loop, running.liquid).filter((set) => set.points.length > 0);
    const flowMax = Math.max(...sets.map(({ points }) => points.at(-1)![0]));
    const shutOff = Math.max(...sets.map(({ points }) => points[0]![1]));
    return {
      ends: Object.fromEntries(
        sets.map(({ arrangement, points }) => [arrangement, points.at(-1)![0]]),
      ),
      loop: systemCurveWithin(running.model, running.liquid, { flowMax, shutOff }).at(-1)![0],
    };
  },
  curves(side, frame): Curves {
    const running = runningIn(side);
    if (!running || !frame) return {};
    const { model, liquid } = running;
    const bores = spaced(...BORE_SPAN, PLACES.bore);
    return {
      bore: flowAgainstBore(side.loop, liquid, bores, 'in-proportion'),
      kept: flowAgainstBore(side.loop, liquid, bores, 'kept'),
      loop: loopAt(model, liquid, frame.loop),
      ...Object.fromEntries(
        pumpChoiceCurves(side.loop, liquid).map(({ arrangement, points }) => [arrangement, points]),
      ),
      ...Object.fromEntries(
        pumpChoices(side.loop, liquid).map(({ arrangement, flow }) => [
          `flow ${arrangement}`,
          flow,
        ]),
      ),
      ...Object.fromEntries(
        flowByDash(side.loop, liquid).map(({ dash, convention, flow }) => [
          `dash ${dash}-${convention}`,
          flow,
        ]),
      ),
    };
  },
});

/** Where the head goes, part by part, and within the run that is worst as the side stands. */
export const HEAD_SHARES = curveSet({
  name: 'headShares',
  frame: (side) => {
    const s = solvedOf(side)?.s;
    return s && s.operating.flow > 0 ? worstRun(s.operating).part : null;
  },
  curves(side, worst): Curves {
    const s = solvedOf(side)?.s;
    if (!s || !worst || !(s.operating.flow > 0)) return {};
    const { velocity, friction } = runShares(s.operating).find(({ part }) => part === worst)!;
    const parts = runParts(side.loop.hoses[worst], { velocity: velocity!, friction });
    return {
      ...Object.fromEntries(s.operating.shares.map(({ part, head }) => [part, head])),
      ...Object.fromEntries(Object.entries(parts).map(([id, head]) => [`run ${id}`, head])),
    };
  },
});
