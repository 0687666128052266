/** Plots of the suction side: margin against temperature, and its map over flow. */
import type { Side } from '$lib/job/evaluate';
import {
  shown,
  spreadText,
  type Band,
  type Chart,
  type Curve,
  type SideName,
  type Tone,
  type UnitSystem,
} from '$lib/kit';
import { marginBand, marginContour, marginLevels } from '$lib/solver/suction/map';
import { marks, type BothBands } from '../bands/marks';
import { studyOf, type Study } from './study';

const SIDE_LABEL = { found: 'as found', candidate: 'candidate' } as const;
const LIQUID = { name: 'Liquid leaving the reservoir', quantity: 'temperature' } as const;

/** Margin of each side along its own path, with the cap on and off. */
export function marginChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const sides = [
    { name: 'found' as SideName, study: studyOf(found) },
    { name: 'candidate' as SideName, study: studyOf(candidate) },
  ].flatMap(({ name, study }) => (study?.flows ? [{ name, study }] : []));
  return {
    x: LIQUID,
    y: { name: 'Suction head to spare', quantity: 'head', zero: true },
    curves: sides.flatMap(({ name, study }): Curve[] => [
      {
        id: name,
        label: study.vented ? 'cap holding' : 'open to the air',
        side: name,
        // The two sides lie close; their points say which is which.
        quiet: name === 'candidate',
        points: study.picture.path.map(({ temperature, margin }) => [temperature, margin]),
      },
      ...(study.picture.ventedPath.length > 1 && name === 'found'
        ? [
            {
              id: `${name}-vented`,
              label: 'cap off',
              tone: 'soft' as Tone,
              thin: true,
              points: study.picture.ventedPath.map(
                ({ temperature, margin }) => [temperature, margin] as const,
              ),
            },
          ]
        : []),
    ]),
    bands: [
      ...marks(bands, 'margin'),
      ...marks(bands, 'vented', { id: 'vented', tone: 'soft', only: 'found' }),
    ],
    limits: [{ axis: 'y', at: 0, label: '3 % of the head gone' }],
    spots: sides.map(({ name, study: { s } }) => ({
      label: SIDE_LABEL[name],
      side: name,
      x: s.liquid.temperature,
      y: s.margins.suction,
    })),
  };
}

/** Steps between lines of equal margin, m: ten feet, three metres. */
const LEVEL_STEP: Readonly<Record<UnitSystem, number>> = { US: 3.048, SI: 3 };
/** Levels drawn below nothing to spare: further down nothing flows anyway. */
const BELOW = 1;
const TONES: readonly Tone[] = ['heat-4', 'heat-3', 'heat-2', 'heat-1', 'heat-0'];
const SHORT: Tone = 'heat-6';

/** A level is a round number: two digits say it. */
const short = (level: number, system: UnitSystem) =>
  `${spreadText(level, 'head', system)} ${shown(level, 'head', system).unit}`;

/** Margin over flow and temperature as bands and lines, the loop's own path and where it settles. */
export function mapChart(
  side: Side,
  name: SideName,
  system: UnitSystem,
  bands: BothBands = [],
): Chart {
  const x = { name: 'Flow', quantity: 'volumeFlow', zero: true } as const;
  const study = studyOf(side);
  if (!study?.flows) return { x, y: LIQUID };
  const { s } = study;
  const { map, path } = study.picture;
  const levels = marginLevels(map, LEVEL_STEP[system], BELOW);
  const [coldest, hottest] = [map.temperatures[0]!, map.temperatures.at(-1)!];
  return {
    x: { ...x, domain: [0, map.flows.at(-1)!] },
    y: { ...LIQUID, domain: [coldest, hottest] },
    bands: [...bandsOf(study, levels), ...marks(bands, 'nothing', { tone: 'act', only: name })],
    curves: [
      ...levels.flatMap((level): Curve[] => {
        const points = marginContour(map, level);
        if (points.length < 2) return [];
        return [
          {
            id: `level-${level}`,
            label: level === 0 ? 'nothing to spare' : `${short(level, system)} to spare`,
            tone: level === 0 ? 'act' : 'soft',
            thin: level !== 0,
            points,
          },
        ];
      }),
      {
        id: 'path',
        label: 'this loop, warming',
        side: name,
        points: path.map(({ flow, temperature }) => [flow, temperature]),
        quiet: true,
      },
    ],
    spots: [
      {
        label: SIDE_LABEL[name],
        side: name,
        x: s.operating.flow,
        y: s.liquid.temperature,
      },
    ],
  };
}

/** From the coldest up: the more to spare, the colder the tone; one for all that is short. */
function bandsOf({ picture: { map } }: Study, levels: readonly number[]): Band[] {
  const bounds = [-Infinity, 0, ...levels.filter((level) => level > 0), Infinity];
  return bounds.slice(1).map((upper, i) => ({
    tone: i === 0 ? SHORT : TONES[Math.min(i, TONES.length) - 1]!,
    points: marginBand(map, [bounds[i]!, upper]),
  }));
}
