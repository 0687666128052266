import { describe, expect, it } from 'vitest';
import { difference, sentence, spreadText, worded } from '$lib/kit/format';

describe('difference', () => {
  // 212 °F and 32 °F are the boil and ice points of water: 180 °F or 100 K apart, by definition of the scales.
  it('of two temperatures is one of degrees', () => {
    expect(difference(373.15, 273.15, 'temperature', 'US').text).toBe('−180.0');
    expect(difference(273.15, 373.15, 'temperature', 'SI')).toMatchObject({
      text: '+100.0',
      unit: 'K',
    });
  });

  it('that prints as nothing has no sign', () => {
    expect(difference(300, 300 + 1e-9, 'temperature', 'SI')).toMatchObject({ zero: true });
    expect(difference(300 + 1e-9, 300, 'temperature', 'SI').text).not.toMatch(/[−+]/);
  });

  it('claims no more decimals than its two values', () => {
    const { text } = difference(340, 314.8148, 'temperature', 'US');
    expect(text.split('.')[1]).toHaveLength(1);
  });
});

describe('words', () => {
  it('keeps a number with its unit', () => {
    expect(worded(0.3048, 'head', 'US')).toBe('1.000\u00a0ft'); // 1 ft = 0.3048 m, exact
    expect(sentence(['It is ', { value: 0.3048, quantity: 'head' }, '.'], 'US')).toBe(
      'It is 1.00\u00a0ft.',
    );
    expect(sentence('plain', 'SI')).toBe('plain');
  });

  it('gives an uncertainty two digits', () => {
    expect(spreadText(0.12345, 'voltage', 'SI')).toBe('0.12');
  });
});
