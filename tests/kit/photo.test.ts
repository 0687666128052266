import { describe, expect, it } from 'vitest';
import { fitted } from '$lib/kit/photo';

describe('the size of a scaled photo', () => {
  it.each([
    [4000, 3000, [1600, 1200]],
    [3000, 4000, [1200, 1600]],
    [1600, 900, [1600, 900]],
    [640, 480, [640, 480]],
    [100_000, 3, [1600, 1]],
  ])('%d × %d becomes %j', (width, height, size) => expect(fitted(width, height)).toEqual(size));
});
