/** Which values of the loop's description make it do what a log showed. */
import { coreModel } from '../../cores/conductance';
import { pumpAffinity } from '../../hydraulics/affinity';
import { brent } from '../../numerics/root';
import { frontExchange } from '../front';
import { prepareLoop, type PreparedLoop } from '../prepare';
import type { Core, PumpPoint } from '../types';
import { uaOfInlet } from './exchange';

/** Where a core's measured conductance goes: less than entered is dirt, more is a better rating. */
export type CoreKnob =
  | { readonly by: 'cleanliness'; readonly value: number }
  | { readonly by: 'heat'; readonly value: number };

/** Least share of a conductance that a description takes. */
const LEAST_LEFT = 0.05;
/** So many times the rated heat entered are tried. */
const MOST_HEAT = 3;

type At = 'frontExchanger' | 'chargeCooler';

/** The loop with one core changed; what does not depend on it is kept. */
export function withCore(prepared: PreparedLoop, at: At, change: Partial<Core>): PreparedLoop {
  const core = { ...prepared.loop[at], ...change };
  const loop = { ...prepared.loop, [at]: core };
  const model = coreModel(core, at);
  return at === 'frontExchanger'
    ? { ...prepared, loop, frontCore: model }
    : { ...prepared, loop, chargeCore: model };
}

/**
 * The knob of `at` at which `conductanceOf` gives `target`, W/K.
 * @returns null where neither dirt nor a better rating gets there
 */
function knob(
  prepared: PreparedLoop,
  at: At,
  target: number,
  conductanceOf: (changed: PreparedLoop) => number,
): CoreKnob | null {
  const { rating } = prepared.loop[at];
  const clean = (cleanliness: number) =>
    conductanceOf(withCore(prepared, at, { cleanliness })) - target;
  const whole = clean(1);
  if (whole >= 0) {
    const least = clean(LEAST_LEFT);
    if (least > 0) return null;
    const { x } = brent(clean, LEAST_LEFT, 1, { fa: least, fb: whole, xtol: 1e-9 });
    return { by: 'cleanliness', value: x };
  }
  const better = (heat: number) =>
    conductanceOf(withCore(prepared, at, { cleanliness: 1, rating: { ...rating, heat } })) - target;
  // A rating has an end that no surface passes; it is neared in small steps.
  let low = rating.heat;
  for (let heat = 1.02 * low; heat < MOST_HEAT * rating.heat; heat *= 1.02) {
    let over: number;
    try {
      over = better(heat);
    } catch {
      return null;
    }
    if (over >= 0) return { by: 'heat', value: brent(better, low, heat, { xtol: 1e-6 * low }).x };
    low = heat;
  }
  return null;
}

/** Front exchanger by its UA as one conductance to ambient, as a fit speaks of it. */
export function frontKnob(
  prepared: PreparedLoop,
  UA: number,
  at: {
    readonly speed: number;
    readonly flow: number;
    readonly liquidTemperature: number;
    /** Capacity rate of the air through the whole face, W/K. */
    readonly airRate: number;
  },
): CoreKnob | null {
  const air = prepared.airAt(at.speed);
  const liquid = prepared.liquidAt(at.liquidTemperature);
  const streams = {
    arrangement: prepared.loop.frontExchanger.arrangement,
    air: at.airRate,
    liquid: liquid.rho * liquid.cp * at.flow,
  };
  return knob(prepared, 'frontExchanger', UA, (changed) =>
    uaOfInlet(frontExchange(changed, air, at.flow, liquid).conductance, streams),
  );
}

/** Charge cooler by its UA at the log's mean flows. */
export function chargeKnob(
  prepared: PreparedLoop,
  UA: number,
  at: {
    readonly airMassFlow: number;
    readonly flow: number;
    readonly liquidTemperature: number;
  },
): CoreKnob | null {
  const liquid = prepared.liquidAt(at.liquidTemperature);
  const { airMassFlow, flow: liquidFlow } = at;
  return knob(
    prepared,
    'chargeCooler',
    UA,
    ({ chargeCore }) => chargeCore.at({ airMassFlow, liquidFlow, liquid }).UA,
  );
}

/** Liquid that takes part in the reservoir, m³, from its thermal mass; null where the mass leaves none. */
export function volumeKnob(
  { loop }: PreparedLoop,
  mass: { readonly measured: number; readonly entered: number },
  perFlow: number,
): number | null {
  const volume = loop.reservoir.liquidVolume + (mass.measured - mass.entered) / perFlow;
  return volume > 0 && volume <= loop.reservoir.totalVolume ? volume : null;
}

/** Slowest and fastest a pump is taken to run, of what was entered. */
const SPEEDS = [0.1, 2] as const;

export interface PumpKnob {
  /** Speed over the speed the curve was entered for. */
  readonly speedRatio: number;
  readonly curve: readonly PumpPoint[];
}

/** The pump's curve moved along the affinity laws until the loop flows as measured; null where it cannot. */
export function pumpKnob(
  prepared: PreparedLoop,
  flow: number,
  liquidTemperature: number,
): PumpKnob | null {
  const { loop } = prepared;
  const curveAt = (speedRatio: number): PumpPoint[] =>
    loop.pump.curve.map((point) => {
      const { Q, H } = pumpAffinity({ Q: point.flow, H: point.head, P: 0 }, speedRatio);
      return { flow: Q, head: H };
    });
  const surplus = (s: number) =>
    prepareLoop({ ...loop, pump: { ...loop.pump, curve: curveAt(s) } }).flowAt(liquidTemperature)
      .flow - flow;
  const [fa, fb] = [surplus(SPEEDS[0]), surplus(SPEEDS[1])];
  if (!(fa < 0 && fb > 0)) return null;
  const { x } = brent(surplus, ...SPEEDS, { fa, fb, xtol: 1e-5 });
  return { speedRatio: x, curve: curveAt(x) };
}

/** An engine this little hotter than the liquid tells no conductance, K. */
const LEAST_DIFFERENCE = 5;

/**
 * Conductance from the engine into the charge cooler that brings `extra` W more than the one described,
 * with the liquid at `T`, K.
 * @returns W/K; null where the engine is not hotter than the liquid, or more is lost than described
 */
export function soakKnob({ loop }: PreparedLoop, extra: number, T: number): number | null {
  const { engineConductance, engineTemperature } = loop.soak;
  if (!(engineTemperature - T > LEAST_DIFFERENCE)) return null;
  const conductance = engineConductance + extra / (engineTemperature - T);
  return conductance >= 0 ? conductance : null;
}
