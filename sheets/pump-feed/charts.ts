/** Plots of the feed: volts and flow against the wire, time to open against the current. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, Limit, SideName, Spot } from '$lib/kit';
import { deratedRating } from '$lib/solver/feed/breaker';
import { voltsAtLimit } from '$lib/solver/feed/circuitFormulas';
import { copperArea, gaugeName, wireArea } from '$lib/solver/feed/gauge';
import { opensAlike, TRIP_TIME_SHOWN, tripCurveEnd, tripPoints } from '$lib/solver/feed/tripCurves';
import { areasToDraw, THINNEST_DRAWN } from '$lib/solver/feed/wireFor';
import { wireCurve } from '$lib/solver/hydraulics/feedInLoop';
import { marks, type BothBands } from '../bands/marks';
import { studyOf, type Study } from './study';

/** Gauges marked: as many as a narrow page can name. */
const GAUGES = [18, 14, 12, 10, 8] as const;
/** Height of the pump's line in the plot of the breaker, s. */
const DEMAND_HEIGHT = { found: 150, candidate: 110 } as const;
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
    const wires = areasToDraw(sides.map(({ area }) => area));
    const curve = wireCurve(side.loop.pump, study.supply, study.inLoop, wires);
    return [{ ...one, curve }];
  });
}

const AREA = { name: 'Copper of the wire (lines: AWG)', quantity: 'wireArea', zero: true } as const;

/** Volts at the pump against the wire, with the least allowed. */
export function voltsChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
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
    bands: marks(bands, 'volts'),
    spots: sides.flatMap(({ name, area, study: { running } }): Spot[] =>
      running && area >= THINNEST_DRAWN
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
              label: 'least allowed',
              level: 'watch',
            } as const,
          ]
        : []),
    ],
  };
}

/** Flow against the wire, and what no loss at all would give. */
export function flowChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const sides = along(found, candidate);
  return {
    x: AREA,
    y: { name: 'Flow', quantity: 'volumeFlow' },
    curves: sides.flatMap(({ name, curve }): Curve[] =>
      curve.flow.length > 1
        ? [{ id: name, label: LABEL[name], side: name, points: curve.flow }]
        : [],
    ),
    bands: marks(bands, 'flow'),
    spots: sides.flatMap(({ name, area, study: { running, inLoop } }): Spot[] =>
      running && inLoop && area >= THINNEST_DRAWN
        ? [{ label: LABEL[name], side: name, x: area, y: inLoop.flow }]
        : [],
    ),
    limits: [
      ...gauges,
      ...sides.flatMap(({ name, study: { inLoop } }): Limit[] =>
        inLoop
          ? [
              {
                axis: 'y',
                at: inLoop.flowAtSource,
                label: `no loss in the feed${sides.length > 1 ? `, ${LABEL[name]}` : ''}`,
                level: 'info',
              },
            ]
          : [],
      ),
    ],
  };
}

/** Time to open against current, where the breaker sits; null without a breaker. */
export function tripChart(
  found: Side,
  candidate: Side | null,
  bands: BothBands = [],
): Chart | null {
  const sides = drawn(found, candidate).flatMap((one) => {
    const { breaker } = one.study.supply;
    return breaker ? [{ ...one, breaker }] : [];
  });
  if (sides.length === 0) return null;
  const end = Math.max(
    ...sides.map(({ breaker, study }) => tripCurveEnd(breaker, study.running?.current ?? 0)),
  );
  const [one, other] = sides;
  const alike = one && other ? opensAlike(one.breaker, other.breaker) : false;
  const curved = alike ? sides.slice(0, 1) : sides;
  const tag = (name: SideName) => (curved.length > 1 ? `, ${LABEL[name]}` : '');
  const opening = curved.flatMap(({ name, breaker }): Curve[] => {
    const { reset, resetState } = breaker.thermal;
    const starts = [
      { id: `${name}-cold`, label: `from cold${tag(name)}`, start: 0 },
      ...(reset === 'automatic'
        ? [{ id: `${name}-warm`, label: `closed again${tag(name)}`, start: resetState }]
        : []),
    ];
    return starts.flatMap(({ id, label, start }) => {
      const points = tripPoints(breaker, start, end);
      return points.length > 1 ? [{ id, label, side: name, points, thin: start > 0 }] : [];
    });
  });
  /** Upright, as tall as keeps their labels apart. */
  const demand = sides.flatMap(({ name, study: { running } }): Curve[] =>
    running
      ? [
          {
            id: `${name}-pump`,
            label: sides.length > 1 ? `pump, ${LABEL[name]}` : 'pump',
            side: name,
            points: [
              [running.current, 0],
              [running.current, DEMAND_HEIGHT[name]],
            ],
          },
        ]
      : [],
  );
  return {
    x: { name: 'Current', quantity: 'current', domain: [0, end] },
    y: { name: 'Time to open', quantity: 'time', domain: [0, TRIP_TIME_SHOWN] },
    curves: [...opening, ...demand],
    bands: curved.flatMap(({ name }) => [
      ...marks(bands, 'cold', { id: 'cold', only: name }),
      ...marks(bands, 'warm', { id: 'warm', only: name }),
    ]),
    stretches: curved.slice(0, 1).map(({ breaker, name }) => ({
      axis: 'x',
      from: 0,
      to: deratedRating(breaker.thermal, breaker.ambient),
      label: `holds${tag(name)}`,
      kind: 'span',
    })),
    spots: sides.flatMap(({ name, study: { running, behaviour } }): Spot[] =>
      running && behaviour && behaviour.kind !== 'holds' && behaviour.opensAfter <= TRIP_TIME_SHOWN
        ? [{ label: 'opens', side: name, x: running.current, y: behaviour.opensAfter }]
        : [],
    ),
  };
}
