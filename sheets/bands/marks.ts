/** Bands as marks of a chart and as whiskers of its bars, and the sentence that says what they are. */
import type { Bands } from '$lib/job/sure/bands/bandSource';
import type { Band, SideName } from '$lib/kit';

/** Bands of both sides, as found first; null where a side has none. */
export type BothBands = readonly (Bands | null)[];

const NAMES = ['found', 'candidate'] as const;

interface Look {
  readonly tone?: Band['tone'];
  /** Ids of the curves are `found-…` and `candidate-…`; without it the side alone. */
  readonly id?: string;
  /** Where one side alone has the curve. */
  readonly only?: SideName;
}

/** The curve `name` of each side as a band, in the ink of that curve. */
export function marks(both: BothBands, name: string, { tone, id, only }: Look = {}): Band[] {
  return NAMES.flatMap((side, i) => {
    const points = both[i]?.of[name] ?? [];
    if (points.length < 2 || (only && only !== side)) return [];
    return [
      {
        side,
        of: id ? `${side}-${id}` : side,
        points: points.map(([x, low, high]) => [x, low, high] as const),
        ...(tone && { tone }),
      },
    ];
  });
}

/** Low and high end of a single value. */
export type Ends = readonly [low: number, high: number];

function endsOf(bands: Bands | null | undefined, name: string): Ends | undefined {
  const only = bands?.of[name]?.[0];
  return only && [only[1], only[2]];
}

/** Rows of a bar chart with the ends of each bar's value: `nameOf` says which value a row is. */
export const whiskered = <R extends { readonly id: string; readonly candidate?: number }>(
  rows: readonly R[],
  both: BothBands,
  nameOf: (id: string) => string = (id) => id,
) =>
  rows.map((row) => {
    const [found, candidate] = both.map((bands) => endsOf(bands, nameOf(row.id)));
    return {
      ...row,
      ...(found && { foundEnds: found }),
      ...(candidate && row.candidate !== undefined && { candidateEnds: candidate }),
    };
  });

/** What the bands are, then which curves have none and why; nothing where there are no bands at all. */
export const besides = (said: string, why: string): string => said && `${said} ${why}`;

/** More loops left out than this are told. */
const FEW = 3;

/** Says what the bands of these curves are, with a space before; nothing where there are none. */
export type Says = (...names: string[]) => string;

export const saying =
  (both: BothBands, what: 'Bands' | 'Whiskers'): Says =>
  (...names) => {
    const drawn = both.flatMap((bands) =>
      bands === null
        ? []
        : names
            .filter((name) => (bands.of[name] ?? []).length > 0)
            .map((name) => ({ without: bands.without[name]!, of: bands.drawn })),
    );
    if (drawn.length === 0) return '';
    const worst = drawn.reduce((a, b) => (b.without / b.of > a.without / a.of ? b : a));
    const left =
      worst.without > FEW
        ? ` Left out: ${worst.without} of ${worst.of} loops drawn, which have no such curve.`
        : '';
    return ` ${what} hold 95 of 100 loops that the ± of the inputs allow, at each place by itself.${left}`;
  };
