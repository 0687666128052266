/** Plots of the liquid side: pump against loop, flow against bore, a second pump. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, SideName, Spot } from '$lib/kit';
import { endOfCurve, pumpCurve, systemCurveWithin } from '$lib/solver/hydraulics/curves';
import { modelIn } from '$lib/solver/hydraulics/pumpInLoop';
import {
  BORE_SPAN,
  flowAgainstBore,
  pumpChoiceCurves,
  pumpChoices,
} from '$lib/solver/hydraulics/whatIf';
import type { HoseId, Loop, SteadySolution } from '$lib/solver/loop/types';
import { spaced } from '$lib/solver/numerics/spaced';
import { marks, type BothBands } from '../bands/marks';
import { settledOf } from '../wiring/duty';

const FLOW = { name: 'Flow', quantity: 'volumeFlow', zero: true } as const;
const HEAD = { name: 'Head', quantity: 'head', zero: true } as const;

/** The sides that can be drawn. */
function drawn(found: Side, candidate: Side | null) {
  return [
    { name: 'found' as SideName, side: found },
    { name: 'candidate' as SideName, side: candidate },
  ].flatMap(({ name, side }) => {
    const s = settledOf(side);
    return side?.prepared.ok && s
      ? [{ name, side, s, model: modelIn(side.prepared.value.hydraulics, s.liquid) }]
      : [];
  });
}

const liquidOf = (s: SteadySolution) => ({ rho: s.liquid.density, mu: s.liquid.viscosity });

/** Head the pump gives and head the loop asks; they cross at the flow. 95 of 100 loops within the bands. */
export function pumpChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const sides = drawn(found, candidate);
  const curves: Curve[] = sides.flatMap(({ name, s, model: { pump }, model }) => {
    const [flowMax, shutOff] =
      pump.speedRatio > 0 ? [pump.runOut, pump.shutOff] : [pump.rated.runOut, pump.rated.shutOff];
    return [
      { id: `${name}-pump`, label: 'pump', side: name, points: pumpCurve(pump, flowMax) },
      {
        id: `${name}-loop`,
        label: 'loop',
        side: name,
        points: systemCurveWithin(model, liquidOf(s), { flowMax, shutOff }),
      },
    ];
  });
  const first = sides[0]?.model.pump;
  const end = first ? endOfCurve(first) : 0;
  return {
    x: FLOW,
    y: HEAD,
    curves: curves.filter(({ points }) => points.length > 0),
    bands: [...marks(bands, 'pump', { id: 'pump' }), ...marks(bands, 'loop', { id: 'loop' })],
    spots: sides.flatMap(({ name, s }): Spot[] =>
      s.operating.flow > 0
        ? [
            {
              label: name === 'found' ? 'as found' : 'candidate',
              side: name,
              x: s.operating.flow,
              y: s.operating.head,
            },
          ]
        : [],
    ),
    ...(first &&
      end < first.runOut && {
        stretches: [
          {
            axis: 'x',
            from: end,
            to: first.runOut,
            label: 'beyond the points of the curve',
            kind: 'outside',
          },
        ],
      }),
  };
}

const RUNS: readonly HoseId[] = ['suction', 'delivery', 'transfer', 'back'];

/** The bore of all runs, where they share one. */
function oneBore({ hoses }: Loop): number | null {
  const { bore } = hoses.suction;
  return RUNS.every((id) => hoses[id].bore === bore) ? bore : null;
}

/** Flow of the loop with every run at one bore. */
export function boreChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const bores = spaced(...BORE_SPAN, 31);
  const sides = drawn(found, candidate);
  const necked = RUNS.some((id) => found.loop.hoses[id].fittingBore > 0);
  const kept = sides[0];
  const curves: Curve[] = sides.map(({ name, side, s }) => ({
    id: name,
    label: necked ? 'fittings to match' : 'every hose at this bore',
    side: name,
    points: flowAgainstBore(side.loop, liquidOf(s), bores, 'in-proportion'),
  }));
  if (kept && necked) {
    curves.push({
      id: 'kept',
      label: 'fittings as they are',
      tone: 'soft',
      thin: true,
      points: flowAgainstBore(kept.side.loop, liquidOf(kept.s), bores, 'kept'),
    });
  }
  const spots = sides.flatMap(({ name, side, s }): Spot[] => {
    const bore = oneBore(side.loop);
    return bore === null
      ? []
      : [
          {
            label: name === 'found' ? 'as found' : 'candidate',
            side: name,
            x: bore,
            y: s.operating.flow,
          },
        ];
  });
  return {
    x: { name: 'Bore of every hose', quantity: 'bore' },
    y: FLOW,
    curves,
    bands: [
      ...marks(bands, 'bore'),
      ...(kept && necked
        ? marks(bands, 'kept', { tone: 'soft', only: kept.name }).map((band) => ({
            ...band,
            of: 'kept',
          }))
        : []),
    ],
    spots,
    ...(kept &&
      oneBore(kept.side.loop) === null && {
        limits: [
          { axis: 'y', at: kept.s.operating.flow, label: 'as found, bores mixed', level: 'info' },
        ],
      }),
  };
}

const CHOICE_LABEL = {
  one: 'one pump',
  'two-in-series': 'two in series',
  'two-in-parallel': 'two in parallel',
} as const;

/** One pump, two in series, two in parallel on the loop as found. */
export function secondPumpChart(found: Side, [bands]: BothBands = []): Chart {
  const [here] = drawn(found, null);
  if (!here || !(here.model.pump.speedRatio > 0)) return { x: FLOW, y: HEAD };
  const { loop } = found;
  const liquid = liquidOf(here.s);
  // Behind one feed two pumps may not run where one does.
  const sets = pumpChoiceCurves(loop, liquid).filter(({ points }) => points.length > 0);
  const choices = pumpChoices(loop, liquid).filter(({ flow }) => flow > 0);
  const flowMax = Math.max(...sets.map(({ points }) => points.at(-1)![0]));
  const shutOff = Math.max(...sets.map(({ points }) => points[0]![1]));
  return {
    x: FLOW,
    y: HEAD,
    curves: [
      ...sets.map(({ arrangement, points }): Curve => ({
        id: arrangement,
        label: CHOICE_LABEL[arrangement],
        points,
        ...(arrangement !== loop.pump.arrangement && { tone: 'soft', thin: true }),
      })),
      {
        id: 'loop',
        label: 'loop',
        tone: 'ink',
        points: systemCurveWithin(here.model, liquid, { flowMax, shutOff }),
      },
    ],
    bands: [
      ...sets.map(({ arrangement }) => ({
        name: arrangement as string,
        ...(arrangement !== loop.pump.arrangement && { tone: 'soft' as const }),
      })),
      { name: 'loop', tone: 'ink' as const },
    ].flatMap(({ name, ...look }) =>
      marks([bands ?? null], name, look).map((band) => ({ ...band, of: name })),
    ),
    spots: choices.map(({ arrangement, flow, head }): Spot => ({
      label: CHOICE_LABEL[arrangement],
      x: flow,
      y: head,
      ...(arrangement !== loop.pump.arrangement && { tone: 'soft' }),
    })),
  };
}
