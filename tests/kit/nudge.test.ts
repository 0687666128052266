import { describe, expect, it } from 'vitest';
import { nudge } from '$lib/kit/nudge';

// Our own convention: one step in the last digit typed, everything else kept.
describe('nudge', () => {
  it.each([
    ['1.25 in', 1, '1.26 in'],
    ['93C', 1, '94C'],
    ['0.99', 1, '1.00'],
    ['10 gpm', -10, '0 gpm'],
    ['-0.2 m', 1, '-0.1 m'],
    ['0,75 in', -1, '0,74 in'],
    ['−1', 1, '0'],
  ])('%s by %i is %s', (text, steps, expected) => {
    expect(nudge(text, steps)).toBe(expected);
  });

  it.each(['-20 AN', '3/4 in', '1-1/4 in', 'abc', '', '8 AN dash'])('leaves %j alone', (text) => {
    expect(nudge(text, 1)).toBeNull();
  });
});
