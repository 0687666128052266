/** Plots of the feed: volts and flow against the wire, time to open against the current. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, Limit, SideName, Spot } from '$lib/kit';
import { deratedRating } from '$lib/solver/feed/breaker';
import { voltsAtLimit } from '$lib/solver/feed/circuitFormulas';
import { copperArea, gaugeName, wireArea } from '$lib/solver/feed/gauge';
import { TRIP_TIME_SHOWN, tripCurveEnd, tripPoints } from '$lib/solver/feed/tripCurves';
import { wireCurve } from '$lib/solver/hydraulics/feedInLoop';
import { spaced } from '$lib/solver/numerics/spaced';
import { studyOf, type Study } from './study';

/** Gauges drawn, and the span of areas they ask for, m². */
const GAUGES = [20, 18, 16, 14, 12, 10, 8] as const;
const SPAN = [0.4e-6, 9e-6] as const;
const POINTS = 44;
const LABEL = { found: 'as found', candidate: 'candidate' } as const;

interface Drawn {
  readonly name: SideName;
  readonly side: Side;
  readonly study: Study;
  /** Of its wire, m². */
  readonly area: number;
}

const drawn = (found: Side, candidate: Side | null): Drawn[] =>
  [
    { name: 'found' as SideName, side: found },
    { name: 'candidate' as SideName, side: candidate },
  ].flatMap(({ name, side }) => {
    if (!side) return [];
    const study = studyOf(side);
    return [{ name, side, study, area: copperArea(study.supply.circuit.wire.size) }];
  });

/** Thick wire beyond the span widens it; wire too thin for it is told in words. */
const areas = (sides: readonly Drawn[]) =>
  spaced(SPAN[0], Math.max(SPAN[1], ...sides.map(({ area }) => area)), POINTS);

const gauges: readonly Limit[] = GAUGES.map((awg) => ({
  axis: 'x',
  at: wireArea({ awg }),
  label: gaugeName(awg),
  level: 'info',
}));

function along(found: Side, candidate: Side | null) {
  const sides = drawn(found, candidate);
  return sides.flatMap((one) => {
    const { side, study } = one;
    if (!study.supplied.ok) return [];
    const flowShare = study.inLoop?.flowShare ?? (() => 1);
    const curve = wireCurve(side.loop, study.supply, study.liquid, areas(sides), flowShare);
    return [{ ...one, curve }];
  });
}

const AREA = { name: 'Copper of the wire (lines: AWG)', quantity: 'wireArea', zero: true } as const;

/** Volts at the pump against the wire, with the least allowed. */
export function voltsChart(found: Side, candidate: Side | null): Chart {
  const sides = along(found, candidate);
  const first = sides[0];
  return {
    x: AREA,
    y: { name: 'Volts at the pump', quantity: 'voltage' },
    curves: sides.flatMap(({ name, curve }): Curve[] =>
      curve.volts.length > 1
        ? [{ id: name, label: LABEL[name], side: name, points: curve.volts }]
        : [],
    ),
    spots: sides.flatMap(({ name, area, study: { running } }): Spot[] =>
      running && area >= SPAN[0]
        ? [{ label: LABEL[name], side: name, x: area, y: running.volts }]
        : [],
    ),
    limits: [
      ...gauges,
      ...(first?.study.supplied.ok
        ? [
            {
              axis: 'y',
              at: voltsAtLimit.value({
                V_s: first.study.supplied.value.source,
                U_max: first.side.values['feed.dropLimit']!.si!,
              }),
              label: 'least with the drop allowed',
              level: 'watch',
            } as const,
          ]
        : []),
    ],
  };
}

/** Flow against the wire, and what no loss at all would give. */
export function flowChart(found: Side, candidate: Side | null): Chart {
  const sides = along(found, candidate);
  const best = sides[0]?.study.inLoop?.flowAtSource;
  return {
    x: AREA,
    y: { name: 'Flow', quantity: 'volumeFlow' },
    curves: sides.flatMap(({ name, curve }): Curve[] =>
      curve.flow.length > 1
        ? [{ id: name, label: LABEL[name], side: name, points: curve.flow }]
        : [],
    ),
    spots: sides.flatMap(({ name, area, study: { running, inLoop } }): Spot[] =>
      running && inLoop && area >= SPAN[0]
        ? [{ label: LABEL[name], side: name, x: area, y: inLoop.flow }]
        : [],
    ),
    limits: [
      ...gauges,
      ...(best
        ? [{ axis: 'y', at: best, label: 'battery’s volts on the plug', level: 'info' } as const]
        : []),
    ],
  };
}

/** Time to open against current, where the breaker sits; null without a breaker. */
export function tripChart(found: Side, candidate: Side | null): Chart | null {
  const sides = drawn(found, candidate).flatMap((one) => {
    const { breaker } = one.study.supply;
    return breaker ? [{ ...one, breaker }] : [];
  });
  if (sides.length === 0) return null;
  const end = Math.max(
    ...sides.map(({ breaker, study }) => tripCurveEnd(breaker, study.running?.current ?? 0)),
  );
  const tag = (name: SideName) => (sides.length > 1 ? `, ${LABEL[name]}` : '');
  return {
    x: { name: 'Current', quantity: 'current', domain: [0, end] },
    y: { name: 'Time to open', quantity: 'time', domain: [0, TRIP_TIME_SHOWN] },
    curves: sides.flatMap(({ name, breaker }): Curve[] =>
      [
        { id: `${name}-cold`, label: `from cold${tag(name)}`, start: 0 },
        ...(breaker.thermal.reset === 'automatic'
          ? [
              {
                id: `${name}-warm`,
                label: `just closed again${tag(name)}`,
                start: breaker.thermal.resetState,
              },
            ]
          : []),
      ].flatMap(({ id, label, start }) => {
        const points = tripPoints(breaker, start, end);
        return points.length > 1 ? [{ id, label, side: name, points, thin: start > 0 }] : [];
      }),
    ),
    limits: sides.flatMap(({ name, breaker, study: { running } }): Limit[] => [
      {
        axis: 'x',
        at: deratedRating(breaker.thermal, breaker.ambient),
        label: `holds${tag(name)}`,
        level: 'watch',
      },
      ...(running
        ? [
            {
              axis: 'x',
              at: running.current,
              label: `the pump${tag(name)}`,
              level: 'info',
            } as const,
          ]
        : []),
    ]),
    spots: sides.flatMap(({ name, study: { running, behaviour } }): Spot[] =>
      running && behaviour && behaviour.kind !== 'holds' && behaviour.opensAfter <= TRIP_TIME_SHOWN
        ? [{ label: `opens${tag(name)}`, side: name, x: running.current, y: behaviour.opensAfter }]
        : [],
    ),
  };
}
