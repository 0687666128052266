import { describe, expect, it } from 'vitest';
import { slotLine, slotMarkup } from '$lib/kit/slots';
import { spoken, typeset } from '$lib/kit/typeset';
import type { Evaluated } from '$lib/kit/types';

const product = (a: number): Evaluated => ({
  formula: {
    id: 'test.product',
    expr: 'a * b',
    gives: { tex: 'c', quantity: 'ratio', name: 'product' },
    terms: {
      a: { tex: 'a', quantity: 'ratio', name: 'first' },
      b: { tex: 'b', quantity: 'head', name: 'second' },
    },
    source: { cite: 'none', standing: 'definition' },
    tex: () => 'c = a \\cdot b',
    texWith: (x, show) => `${show(x.a!, 'ratio')} \\cdot ${show(x.b!, 'head')}`,
  },
  x: { a, b: 2 },
  value: a * 2,
});

describe('numbers put in', () => {
  it('share a shape while only digits change', () => {
    const one = slotLine(product(1.5), 'SI');
    const two = slotLine(product(2.5), 'SI');
    expect(two.shape).toBe(one.shape);
    expect(two.digits).toEqual(['2.500', '2.000']);
  });

  it('change shape with a sign, a power of ten or another unit', () => {
    const { shape } = slotLine(product(1.5), 'SI');
    expect(slotLine(product(-1.5), 'SI').shape).not.toBe(shape);
    expect(slotLine(product(1.5e9), 'SI').shape).not.toBe(shape);
    expect(slotLine(product(1.5), 'US').shape).not.toBe(shape);
  });

  it('stand as one text in their slots', () => {
    const markup = slotMarkup(slotLine(product(1.5e9), 'SI'));
    expect(markup).toMatch(/data-slot="0"><span class="mord">1\.500</);
    expect(markup).toMatch(/data-slot="1"><span class="mord">2\.000</);
    expect(markup).not.toContain('katex-error');
  });
});

it('a formula is read with its symbols replaced, its numbers kept', () => {
  const words = spoken('(p_t - 1e5) / (rho * g)', (s) => ({ p_t: 'tank', rho: 'density' })[s]);
  expect(words).toBe('(tank - 1e5) ÷ (density × g)');
});

it('typesets once and keeps the markup', () => {
  expect(typeset('x_1', true)).toBe(typeset('x_1', true));
  expect(typeset('x_1', true)).toContain('<math');
  expect(typeset('x_1', false)).not.toContain('<math');
});
