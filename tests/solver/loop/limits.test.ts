import { describe, expect, it } from 'vitest';
import { NEAR_LIMIT, stateAbove, stateBelow } from '$lib/solver/loop/limits';

describe('state against a limit', () => {
  it('is over past it, near just inside, ok further away', () => {
    expect(stateBelow(340, 339)).toBe('over');
    expect(stateBelow(339, 339)).toBe('near');
    expect(stateBelow(339 - NEAR_LIMIT.temperature, 339)).toBe('ok');
    expect(stateAbove(-0.01, 0, 'head')).toBe('over');
    expect(stateAbove(NEAR_LIMIT.head / 2, 0, 'head')).toBe('near');
    expect(stateAbove(3, 0, 'head')).toBe('ok');
  });

  it('takes a value that is no number for a limit passed', () => {
    expect(stateBelow(NaN, 300)).toBe('over');
  });
});
