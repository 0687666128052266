/** What this loop would flow if one thing were changed, the liquid being as warm as it is. */
import type { Loop, Pump } from '../loop/types';
import type { Source } from '../sources';
import { dashBore, type DashConvention } from './dash';
import type { FlowingLiquid } from './hose';
import { hydraulicModel } from './operatingPoint';
import { pumpCurve, type HeadSample } from './curves';

/** What becomes of the end fittings when a hose gets another bore. */
export type FittingRule =
  /** They neck the new hose in the same ratio. */
  | 'in-proportion'
  /** The old ones stay on. */
  | 'kept';

/** The loop with every run of hose at one bore. A run without fittings stays without. */
export function withBore(loop: Loop, bore: number, fittings: FittingRule): Loop {
  const run = (hose: Loop['hoses']['suction']) => ({
    ...hose,
    bore,
    fittingBore: fittings === 'kept' ? hose.fittingBore : (hose.fittingBore / hose.bore) * bore,
  });
  const { suction, delivery, transfer, back } = loop.hoses;
  return {
    ...loop,
    hoses: {
      suction: run(suction),
      delivery: run(delivery),
      transfer: run(transfer),
      back: run(back),
    },
  };
}

/**
 * Flow with every run at one bore, for each of `bores`.
 * @returns pairs of bore (m) and flow (m³/s)
 * @throws {@link InvalidInputError} for a bore that is no bore
 */
export function flowAgainstBore(
  loop: Loop,
  liquid: FlowingLiquid,
  bores: readonly number[],
  fittings: FittingRule,
): readonly (readonly [bore: number, flow: number])[] {
  return bores.map((bore) => [bore, hydraulicModel(withBore(loop, bore, fittings)).flowAt(liquid)]);
}

/** One dash size by one convention, and the flow with every run at the bore it stands for. */
export interface DashFlow {
  readonly dash: number;
  readonly convention: DashConvention;
  readonly bore: number;
  readonly flow: number;
  readonly source: Source;
}

/** Bores worth sweeping in these loops, m. */
export const BORE_SPAN = [0.009, 0.032] as const;

/** Dash sizes that are met in these loops. */
export const USUAL_DASHES = [8, 10, 12, 16] as const;

/** Both bores that each usual dash size may stand for, with the flow they give. */
export function flowByDash(loop: Loop, liquid: FlowingLiquid): readonly DashFlow[] {
  const conventions = ['hose-bore', 'tube-replaced'] as const;
  return USUAL_DASHES.flatMap((dash) =>
    conventions.map((convention) => {
      const { bore, source } = dashBore(dash, convention);
      const flow = hydraulicModel(withBore(loop, bore, 'in-proportion')).flowAt(liquid);
      return { dash, convention, bore, flow, source };
    }),
  );
}

/** The loop with one pump, with two in series, with two in parallel. */
export interface PumpChoice {
  readonly arrangement: Pump['arrangement'];
  /** Behind one feed two pumps are slower than one: they draw more through it. */
  readonly speedRatio: number;
  readonly flow: number;
  readonly head: number;
  /** Flow over that of one pump, less one; null when one pump moves nothing. */
  readonly gain: number | null;
}

/**
 * Flow with one and with two of this pump.
 *
 * @formula gain = Q / Q_one - 1
 * @symbol Q - flow of the arrangement, m^3/s
 * @symbol Q_one - flow of one pump, m^3/s
 */
export function pumpChoices(loop: Loop, liquid: FlowingLiquid): readonly PumpChoice[] {
  const arranged = (arrangement: Pump['arrangement']) => {
    const model = hydraulicModel({ ...loop, pump: { ...loop.pump, arrangement } });
    const { pump, flow } = model.settled(liquid);
    return { arrangement, speedRatio: pump.speedRatio, flow, head: pump.head(flow) };
  };
  const one = arranged('one');
  return [one, arranged('two-in-series'), arranged('two-in-parallel')].map((choice) => ({
    ...choice,
    gain: one.flow > 0 ? choice.flow / one.flow - 1 : null,
  }));
}

/** The pump curve of each arrangement down to where it lifts nothing, in the order of {@link pumpChoices}. */
export function pumpChoiceCurves(
  loop: Loop,
  liquid: FlowingLiquid,
): readonly {
  readonly arrangement: Pump['arrangement'];
  readonly points: readonly HeadSample[];
}[] {
  return (['one', 'two-in-series', 'two-in-parallel'] as const).map((arrangement) => {
    const { pump } = hydraulicModel({ ...loop, pump: { ...loop.pump, arrangement } }).settled(
      liquid,
    );
    return { arrangement, points: pumpCurve(pump, pump.runOut) };
  });
}

/** Flow with these volts held on the pump's plug, whatever its feed, m³/s. */
export function flowAtVolts(loop: Loop, liquid: FlowingLiquid, volts: number): number {
  return hydraulicModel({ ...loop, feed: null, pump: { ...loop.pump, volts } }).flowAt(liquid);
}
