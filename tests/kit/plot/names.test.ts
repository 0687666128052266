/** A chart whose upright axis names its places. */
import { describe, expect, it } from 'vitest';
import { shownAxis } from '$lib/kit/plot/axis';
import { chartOptions } from '$lib/kit/plot/build';
import type { Chart } from '$lib/kit/plot/chart';
import { readAt, spokenReading } from '$lib/kit/plot/reading';

const chart: Chart = {
  x: { name: 'Cost', quantity: 'money' },
  y: {
    name: '',
    quantity: 'count',
    names: ['As found', 'A larger exchanger, sealed to the grille'],
  },
  dots: [
    { label: 'As found', points: [[0, 1]] },
    { label: 'Exchanger', points: [[500, 2]] },
  ],
};

describe('named places', () => {
  it('stand in order from the top, half a place beyond both ends', () => {
    expect(shownAxis(chart, 'y', 'US').domain).toEqual([2.5, 0.5]);
  });
  it('get room beside the axis, and no more than a good third of the width', () => {
    for (const width of [340, 520, 1000]) {
      const { marginLeft } = chartOptions(chart, 'US', { width, height: 280 });
      expect(marginLeft!).toBeGreaterThan(58);
      expect(marginLeft!).toBeLessThan(width * 0.36 + 60);
    }
  });
  it('are read by name, not by number', () => {
    const reading = readAt(chart, 500, 'US');
    expect(reading.items).toEqual([{ label: 'Exchanger', text: '', side: 'found', y: 2 }]);
    expect(spokenReading(chart, reading)).toBe('Cost $500: Exchanger');
  });
});
