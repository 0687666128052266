import { describe, expect, it } from 'vitest';
import { extent, shownAxis } from '$lib/kit/plot/axis';
import { chartOptions, drawing, isCompact } from '$lib/kit/plot/build';
import type { Chart } from '$lib/kit/plot/chart';
import { along, readAt, spokenReading, stops } from '$lib/kit/plot/reading';
import { textWidth } from '$lib/kit/plot/labels';
import { SIDE_STYLE, TEXT_SIZE, heatColour } from '$lib/kit/plot/theme';

const chart: Chart = {
  x: { name: 'Flow', quantity: 'volumeFlow', zero: true },
  y: { name: 'Head', quantity: 'head' },
  curves: [
    {
      id: 'a',
      label: 'falling',
      points: [
        [0, 4],
        [0.001, 2],
      ],
    },
    {
      id: 'b',
      label: 'rising',
      side: 'candidate',
      points: [
        [0, 0],
        [0.0005, 3],
      ],
    },
  ],
  spots: [{ label: 'meet', x: 0.00048, y: 3 }],
  limits: [{ axis: 'y', at: 6, label: 'limit' }],
};

describe('axes', () => {
  it('carry name and unit', () => {
    expect(shownAxis(chart, 'x', 'US').label).toBe('Flow, gpm');
    expect(shownAxis(chart, 'y', 'SI').label).toBe('Head, m');
  });

  it('reach every mark, the limit too', () => {
    const [low, high] = shownAxis(chart, 'y', 'SI').domain;
    expect(low).toBe(0);
    expect(high).toBeGreaterThan(6);
  });

  it('have smaller letters where a long name would stick out of a narrow plot', () => {
    const name = 'Mass added, with its liquid, less what comes off';
    const long: Chart = { ...chart, x: { name, quantity: 'mass' } };
    const { label } = shownAxis(long, 'x', 'US');
    const lettersAt = (width: number): number => {
      const { marks } = chartOptions(long, 'US', { width, height: 240 });
      const own = (marks as { data?: unknown; fontSize?: number }[]).find(
        ({ data }) => Array.isArray(data) && data[0] === label,
      );
      return own!.fontSize!;
    };
    expect(lettersAt(900)).toBe(TEXT_SIZE);
    expect(lettersAt(310)).toBeLessThan(TEXT_SIZE);
    expect(textWidth(label, lettersAt(310))).toBeLessThanOrEqual(310);
  });

  it('turn long times into minutes', () => {
    const long: Chart = {
      x: { name: 'Time', quantity: 'time' },
      y: chart.y,
      curves: [
        {
          id: 't',
          label: 't',
          points: [
            [0, 0],
            [1200, 1],
          ],
        },
      ],
    };
    const axis = shownAxis(long, 'x', 'US');
    expect(axis.label).toBe('Time, min');
    expect(axis.to(600)).toBeCloseTo(10, 9);
  });

  it('are never empty', () => {
    expect(extent([], { name: 'x', quantity: 'ratio' })).toEqual([0, 1]);
    const [low, high] = extent([5], { name: 'x', quantity: 'ratio' });
    expect(low).toBeLessThan(5);
    expect(high).toBeGreaterThan(5);
  });
});

describe('reading', () => {
  it('goes straight between points and never beyond them', () => {
    expect(
      along(
        [
          [0, 0],
          [10, 20],
        ],
        2.5,
      ),
    ).toBe(5);
    expect(
      along(
        [
          [0, 0],
          [10, 20],
        ],
        10,
      ),
    ).toBe(20);
    expect(
      along(
        [
          [0, 0],
          [10, 20],
        ],
        10.01,
      ),
    ).toBeNull();
    expect(along([], 0)).toBeNull();
  });

  it('stops at points and spots, in order', () => {
    expect(stops(chart)).toEqual([0, 0.00048, 0.0005, 0.001]);
  });

  it('names what is there, leaves out what is not', () => {
    expect(readAt(chart, 0.0005, 'SI').items.map((i) => i.label)).toEqual(['falling', 'rising']);
    expect(readAt(chart, 0.001, 'SI').items.map((i) => i.label)).toEqual(['falling']);
    expect(spokenReading(chart, readAt(chart, 0.001, 'SI'))).toBe(
      'Flow 60.00\u00a0L/min: falling 2.000\u00a0m', // 0.001 m³/s is 60 L/min, exact
    );
  });

  it('says the ± of a curve that has a band; its two sides apart where they differ', () => {
    const banded = (low: number, high: number, of = 'a'): Chart => ({
      ...chart,
      bands: [{ of, side: 'found', points: [[0, low, high], [0.001, low, high]] }], // prettier-ignore
    });
    const said = (c: Chart) => readAt(c, 0.0005, 'SI').items[0]!.text;
    expect(said(banded(2.75, 3.25))).toBe('3.000\u00a0m ± 0.25');
    expect(said(banded(2.9, 3.4))).toBe('3.000\u00a0m +0.40 −0.10');
    // Of another curve, or beside the value: nothing that could be said of this one.
    expect(said(banded(2.75, 3.25, 'b'))).toBe('3.000\u00a0m');
    expect(said(banded(3.1, 3.4))).toBe('3.000\u00a0m');
  });
});

describe('drawing', () => {
  it.each([390, 900])('fits %i px, domain inside the frame', (width) => {
    const options = chartOptions(chart, 'US', { width, height: 300 });
    expect(options.width).toBe(width);
    expect(options.marginLeft! + options.marginRight!).toBeLessThan(width / 2);
    expect(options.marks!.length).toBeGreaterThan(8);
  });

  it('leaves words at curves away where there is no room', () => {
    expect(isCompact({ width: 390, height: 300 })).toBe(true);
    expect(chartOptions(chart, 'US', { width: 390, height: 300 }).marginRight).toBeLessThan(
      chartOptions(chart, 'US', { width: 900, height: 300 }).marginRight!,
    );
  });
});

it('the two sides differ in colour, line, width and marker', () => {
  for (const key of ['stroke', 'dash', 'width', 'symbol', 'fill'] as const) {
    expect(SIDE_STYLE.found[key]).not.toBe(SIDE_STYLE.candidate[key]);
  }
});

it('the ramp holds at its ends and mixes between its steps', () => {
  expect(heatColour(-1)).toBe('var(--heat-0)');
  expect(heatColour(2)).toBe('var(--heat-6)');
  expect(heatColour(0.5)).toBe('var(--heat-3)');
  expect(heatColour(0.25)).toBe('color-mix(in oklab, var(--heat-2) 50%, var(--heat-1))');
});

describe('labels of spots', () => {
  const size = { width: 700, height: 360 };
  const near = (count: number): Chart => ({
    ...chart,
    spots: Array.from({ length: count }, (_, i) => ({
      label: `a change with a long name ${i}`,
      x: 0.0004 + i * 1e-6,
      y: 3 + i * 0.01,
    })),
  });
  const texts = (of: Chart) =>
    (drawing(of, 'US', size).options.marks as { channels?: { text?: { value: unknown } } }[])
      .flatMap((mark) => mark.channels?.text?.value ?? [])
      .map(String);

  it('are words where there is room', () => {
    expect(drawing(chart, 'US', size).numbered).toBe(false);
    expect(texts(chart).some((text) => text.startsWith('meet\n'))).toBe(true);
  });

  it('are numbers where words would cover one another', () => {
    expect(drawing(near(9), 'US', size).numbered).toBe(true);
    expect(texts(near(9))).toEqual(expect.arrayContaining(['1', '9']));
    expect(texts(near(9)).some((text) => text.includes('long name'))).toBe(false);
  });
});
