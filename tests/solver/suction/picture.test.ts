import { describe, expect, it } from 'vitest';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { suctionPicture } from '$lib/solver/suction/picture';
import { exampleLoop } from '../loop/example';

const capped = {
  ...exampleLoop,
  reservoir: { ...exampleLoop.reservoir, capGauge: 90e3 },
};

describe('what the plots of the suction side are drawn from', () => {
  it('has a path along the temperatures of its map, and one without the cap below it', () => {
    const { map, path, ventedPath } = suctionPicture(prepareLoop(capped));
    expect(path.length).toBeGreaterThanOrEqual(map.temperatures.length);
    const closed = new Map(path.map(({ temperature, margin }) => [temperature, margin]));
    expect(ventedPath.length).toBeGreaterThan(1);
    for (const { temperature, margin } of ventedPath) {
      // A cap that holds only adds pressure, so the margin without it is never larger.
      expect(margin).toBeLessThanOrEqual(closed.get(temperature)! + 1e-9);
    }
  });
  it('crosses to another thread: plain data, nothing lost', () => {
    const picture = suctionPicture(prepareLoop(capped));
    expect(structuredClone(picture)).toEqual(picture);
  });
});
