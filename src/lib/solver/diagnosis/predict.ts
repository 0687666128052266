/** What a loop with a fault in it would show on every channel. */
import { SolverError } from '../errors';
import { g } from '../hydraulics/affinity';
import { prepareLoop, type PreparedLoop } from '../loop/prepare';
import { HOTTEST_FRESH_AIR } from '../loop/front';
import { steadyIn } from '../loop/steady';
import type { Loop, SteadySolution } from '../loop/types';
import { DUTY_CHANNELS } from './channels';
import type {
  Baseline,
  Conditions,
  DutyChannel,
  Fault,
  OnceChannel,
  Predicted,
  SettledDuty,
  SideEffects,
} from './types';
import { SETTLED_DUTIES } from './types';

/**
 * Share of a centrifugal pump's amps that is left with its outlet shut, where the job's feed states
 * none (from memory, 50 to 70 %).
 */
export const SHUT_OFF_AMPS = 0.6;
/** A pump past its usual flow takes no more than this over its usual load. */
const MOST_LOAD = 1.3;

/** The job's loop under the conditions of the readings. */
export function underConditions(loop: Loop, { ambient, speed }: Conditions): Loop {
  const duties = { ...loop.duties };
  for (const duty of SETTLED_DUTIES) {
    const vehicleSpeed = speed[duty];
    if (vehicleSpeed !== undefined) duties[duty] = { ...duties[duty], vehicleSpeed };
  }
  const site = ambient === undefined ? loop.site : { ...loop.site, ambientTemperature: ambient };
  return { ...loop, duties, site };
}

export interface Predictor {
  readonly base: Baseline;
  /** Channels in a duty; NaN everywhere where the faulty loop cannot be solved. */
  at(fault: Fault, severity: number, duty: SettledDuty): Predicted;
  once(fault: Fault, severity: number): Readonly<Record<OnceChannel, number>>;
}

/**
 * Predict channels of a loop, fault by fault.
 *
 * Temperatures, flow, volts and pressure come from the steady state of the loop with the fault in it.
 * Amps follow the stated draw of the pump, its speed s and its flow:
 * I = I₀ (s/s₀)³ (U₀/U) (a + (1 − a) q), q = (V̇/s)/(V̇₀/s₀) but not above 1.3; index 0 is the loop as
 * described, a the share of the amps left at shut-off. Where the feed says one torque or a table the
 * middle two factors are left out, where it says one power the first of them.
 *
 * @throws {@link SolverError} where the loop as described cannot be solved
 * @source affinity laws; a from memory
 */
export function predictor(given: Loop): Predictor {
  const asGiven = prepareLoop(given);
  const { pump } = asGiven.hydraulics;
  const described = voltsHeld(given, asGiven);
  const prepared = described === given ? asGiven : prepareLoop(described);
  const amps = pump.volts > 0 ? pump.electricPower / pump.volts : 0;
  const base: Baseline = { loop: described, volts: pump.volts, amps };
  const stated = given.feed?.shutOffShare;
  const shutOff = stated !== undefined && stated < 1 ? stated : SHUT_OFF_AMPS;
  const law = given.feed?.draw.kind ?? 'pump-law';
  const healthy = new Map<SettledDuty, SteadySolution>();
  // Two duties of one fault share all that does not depend on the duty.
  let last: { loop: Loop; prepared: PreparedLoop } = { loop: described, prepared };

  const solvedAs = (ready: PreparedLoop, duty: SettledDuty) => {
    const own = ready.loop.duties[duty];
    return steadyIn(ready, own, own.vehicleSpeed);
  };
  /** The loop as described, solved once: an instrument that lies leaves it alone. */
  const asDescribed = (duty: SettledDuty) => {
    let solution = healthy.get(duty);
    if (!solution) healthy.set(duty, (solution = solvedAs(prepared, duty)));
    return solution;
  };
  const solved = (loop: Loop, duty: SettledDuty) => {
    if (loop === described) return { ready: prepared, s: asDescribed(duty) };
    if (loop !== last.loop) last = { loop, prepared: prepareLoop(loop) };
    return { ready: last.prepared, s: solvedAs(last.prepared, duty) };
  };
  const ampsAt = (flow: number, volts: number, speed: number, duty: SettledDuty) => {
    const s = pump.speedRatio > 0 ? speed / pump.speedRatio : 0;
    if (!(s > 0 && volts > 0)) return 0;
    const usual = asDescribed(duty).operating.flow;
    const load = usual > 0 ? Math.min(flow / (s * usual), MOST_LOAD) : 1;
    const electric =
      law === 'pump-law'
        ? s ** 3 * (base.volts / volts)
        : law === 'constant-power'
          ? base.volts / volts
          : 1;
    return amps * electric * (shutOff + (1 - shutOff) * load);
  };

  return {
    base,
    at(fault, severity, duty) {
      const effects = fault.side?.(severity, base) ?? {};
      const loop = fault.apply(base, severity, duty);
      try {
        const { ready, s } = solved(loop, duty);
        const { volts, speedRatio } = ready.hydraulics.pump;
        const { flow, head } = s.operating;
        const shown = {
          reservoir: s.temperatures.reservoir,
          frontIn: s.temperatures.frontIn,
          frontOut: s.temperatures.frontOut,
          flow,
          bucket: flow,
          volts,
          amps: ampsAt(flow, volts, speedRatio, duty),
          pumpRise: s.liquid.density * g * head,
          charge: s.chargeOut ?? NaN,
          // Heat of the stack stated for air that hardly moves has no end.
          faceAir: Math.min(s.front.airIn, HOTTEST_FRESH_AIR),
        };
        return { ...instruments(shown, effects), ambient: loop.site.ambientTemperature };
      } catch (thrown) {
        // A fault may drive a loop beyond what its laws cover; it is then not among the causes.
        if (thrown instanceof SolverError) return NOTHING;
        throw thrown;
      }
    },
    once: (fault, severity) => ({
      soak: 0,
      paper: described.fans.count > 0 && described.fans.volts > 0 ? 1 : 0,
      volume: 1 - described.reservoir.shortCircuit,
      ...fault.side?.(severity, base).once,
    }),
  };
}

/**
 * Where the volts on the plug follow the flow by way of the feed, solving both together for every fault
 * and severity takes seconds: they are held at those of the loop as described. The faults that act on
 * the supply set their own.
 */
function voltsHeld(loop: Loop, { hydraulics }: PreparedLoop): Loop {
  return hydraulics.fixedPump
    ? loop
    : { ...loop, feed: null, pump: { ...loop.pump, volts: hydraulics.pump.volts } };
}

function instruments(
  shown: Record<DutyChannel, number>,
  { bias = {}, factor = {}, fixed = {} }: SideEffects,
): Record<DutyChannel, number> {
  const read = { ...shown };
  for (const channel of Object.keys(DUTY_CHANNELS) as DutyChannel[]) {
    read[channel] =
      fixed[channel] ?? shown[channel] * (factor[channel] ?? 1) + (bias[channel] ?? 0);
  }
  return read;
}

const NOTHING: Predicted = {
  ...(Object.fromEntries(Object.keys(DUTY_CHANNELS).map((c) => [c, NaN])) as Record<
    DutyChannel,
    number
  >),
  ambient: NaN,
};
