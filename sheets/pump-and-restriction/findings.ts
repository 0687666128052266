/** What the numbers of the liquid side mean, in plain words: the pump. */
import type { Side } from '$lib/job/evaluate';
import type { HydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import { flowAtVolts, flowByDash, pumpChoices } from '$lib/solver/hydraulics/whatIf';
import type { SteadySolution } from '$lib/solver/loop/types';
import { suctionLimitTemperature, ventedSuctionMargin } from '$lib/solver/suction/limit';
import { q, say, type Finding } from '../types';

/** Less than this share of rated speed and the feed is worth a meter (common practice, no source). */
const SLOW = 0.95;
const VERY_SLOW = 0.85;

/** No circulation, or no balance: told first. */
export function stateFinding(s: SteadySolution, { loop }: Side): Finding[] {
  if (s.status === 'no-flow') {
    const { volts, motor, cutoutVolts } = loop.pump;
    const why =
      motor === 'held-speed' && volts > 0
        ? say`The pump has ${q(volts, 'voltage')} on its plug and its controller wants ${q(cutoutVolts, 'voltage')}: it stands.`
        : say`The pump has ${q(volts, 'voltage')} on its plug: nothing flows.`;
    return [
      {
        code: 'no-flow',
        level: 'act',
        sentence: [
          ...why,
          ' The tank stays cool and tells nothing; only the intake air gets hot. Measure volts at the plug, running, before buying anything.',
        ],
      },
    ];
  }
  if (s.status === 'balanced') return [];
  const words =
    s.status === 'boils'
      ? 'In this duty the loop passes its boiling point before it settles; flow and heads shown are those at that limit, without the vapour that would then be in the lines.'
      : 'In this duty the liquid freezes before the loop settles; flow and heads shown are those at the freezing point.';
  return [{ code: s.status, level: 'act', sentence: [words] }];
}

/** What was bought against what flows. */
export function soldFlowFinding(model: HydraulicModel, s: SteadySolution): Finding {
  const { rated, inParallel } = model.pump;
  const count = inParallel > 1 ? 'each ' : '';
  return {
    code: 'sold-flow',
    level: 'info',
    sentence: say`The pump is rated ${count}at ${q(rated.runOut, 'volumeFlow')} with nothing connected. Through this loop it moves ${q(s.operating.flow, 'volumeFlow')} against ${q(s.operating.head, 'head')}.`,
  };
}

/** Volts lost on the way to a pump that follows its volts. */
export function voltsFinding({ loop }: Side, model: HydraulicModel, s: SteadySolution): Finding[] {
  const { pump } = loop;
  const { speedRatio, flow } = s.operating;
  if (pump.motor !== 'brushed' || !(speedRatio < SLOW)) return [];
  const full = flowAtVolts(loop, liquidOf(s), pump.ratedVolts);
  return [
    {
      code: 'volts-low',
      level: speedRatio < VERY_SLOW ? 'act' : 'watch',
      sentence: say`With ${q(model.pump.volts, 'voltage')} on its plug instead of ${q(pump.ratedVolts, 'voltage')} the pump turns at ${q(speedRatio, 'percent')} of its speed. At full volts this loop would flow ${q(full, 'volumeFlow')} instead of ${q(flow, 'volumeFlow')}: a thicker feed costs less than a pump.`,
    },
  ];
}

/** Beyond what the maker has stated, the head is a guess. */
export function curveFinding(s: SteadySolution): Finding[] {
  const note = s.operating.notes.find(({ code }) => code === 'pump.beyond-curve');
  if (!note) return [];
  return [
    {
      code: 'beyond-curve',
      level: 'watch',
      sentence: say`The pump works at ${q(s.operating.flow, 'volumeFlow')}, beyond the last point of its curve; the head there is its last slope carried on. Ask the maker for more of the curve, or count the flow with a bucket.`,
    },
  ];
}

/** The margin, what it rests on, and how hot the liquid must get before cavitation is worth suspecting. */
export function suctionFinding(
  { loop }: Side,
  model: HydraulicModel,
  s: SteadySolution,
): Finding[] {
  const { suction } = s.margins;
  const T = s.liquid.temperature;
  if (suction < 0) {
    return [
      {
        code: 'suction-short',
        level: 'act',
        sentence: say`The pump lacks ${q(-suction, 'head')} of suction head at ${q(T, 'temperature')}: it cavitates, ${loop.pump.cavitation === 'counted' ? 'and head and flow here count what that takes; other hoses and pumps are told in health' : 'and the true flow is below the one shown'}. Cool the tank or hold pressure in it and the noise must go; if it stays with a cold tank it is air, not cavitation.`,
      },
    ];
  }
  // At its boiling point the liquid has other troubles than the pump's inlet.
  if (s.status === 'boils') return [];
  const { capGauge } = loop.reservoir;
  const vented = ventedSuctionMargin(loop, liquidOf(s), T);
  if (vented < 0) {
    return [
      {
        code: 'suction-on-cap',
        level: 'watch',
        sentence: say`The ${q(suction, 'head')} of suction head to spare at ${q(T, 'temperature')} rest on a cap that holds ${q(capGauge, 'gaugePressure')}. With a weak cap, or after opening it, the pump would lack ${q(-vented, 'head')} and cavitate.`,
      },
    ];
  }
  const limit = suctionLimitTemperature(loop, model);
  return [
    {
      code: 'suction-holds',
      level: 'good',
      sentence: [
        ...say`At ${q(T, 'temperature')} there is ${q(suction, 'head')} of suction head to spare: this is not cavitation.`,
        ...(limit === null
          ? [' It holds over the whole range of this liquid.']
          : say` It would run short only from ${q(limit, 'temperature')} on.`),
        ...(capGauge > 0
          ? say` With no pressure under the cap it is still ${q(vented, 'head')}.`
          : []),
        ' Cavitation is blamed more often than it happens; air drawn in and lost volts sound and feel alike.',
      ],
    },
  ];
}

const liquidOf = (s: SteadySolution) => ({ rho: s.liquid.density, mu: s.liquid.viscosity });

/** A second pump, in numbers of this loop. */
export function secondPumpFinding({ loop }: Side, s: SteadySolution): Finding[] {
  const [one, series, parallel] = pumpChoices(loop, liquidOf(s));
  if (!one || !series?.gain || !parallel?.gain) return [];
  const better = series.gain > parallel.gain ? 'Series' : 'Parallel';
  return [
    {
      code: 'second-pump',
      level: 'info',
      sentence: say`A second pump does not double the flow. On this loop two in series give ${q(series.gain, 'percent')} more than one, two in parallel ${q(parallel.gain, 'percent')}, for twice the amperes. ${better} suits a loop of this restriction.`,
    },
  ];
}

/** One number, two hoses. */
export function dashFinding({ loop }: Side, s: SteadySolution): Finding {
  const rows = flowByDash(loop, liquidOf(s));
  const twelve = (convention: string) =>
    rows.find((row) => row.dash === 12 && row.convention === convention)!;
  const bore = twelve('hose-bore');
  const tube = twelve('tube-replaced');
  return {
    code: 'dash-size',
    level: 'info',
    sentence: say`A −12 hose is ${q(bore.bore, 'bore')} inside where the number counts the bore, and ${q(tube.bore, 'bore')} where it counts the tube replaced. All of one or all of the other, this loop would flow ${q(bore.flow, 'volumeFlow')} or ${q(tube.flow, 'volumeFlow')}. Measure the inside.`,
  };
}
