import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread, wrap } from '$lib/kit/plot/labels';
import { dotted, place, placeOnLine } from '$lib/kit/plot/place';

describe('labels in a column', () => {
  it('stay where they want to be while they have room', () => {
    const wishes = [50, 100, 20].map((at) => ({ at, height: 16 }));
    expect(spread(wishes, 0, 200)).toEqual([50, 100, 20]);
  });

  it('never overlap and never leave the column while it holds them all', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 350, noNaN: true }), { maxLength: 10 }),
        (ats) => {
          const wishes = ats.map((at) => ({ at, height: 20 }));
          const at = spread(wishes, 0, 300).toSorted((a, b) => a - b);
          for (const [i, middle] of at.entries()) {
            expect(middle).toBeGreaterThanOrEqual(10 - 1e-9);
            expect(middle).toBeLessThanOrEqual(290 + 1e-9);
            if (i) expect(middle - at[i - 1]!).toBeGreaterThanOrEqual(20 - 1e-9);
          }
        },
      ),
    );
  });

  it('break at spaces and lose no word', () => {
    const lines = wrap('loop with one inch hose', 80, 13);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(' ')).toBe('loop with one inch hose');
  });
});

describe('the label of a point', () => {
  const frame = { left: 0, top: 0, right: 400, bottom: 300 };
  const size = { width: 80, height: 30 };

  it('stands beside the point when nothing is in the way', () => {
    expect(place([200, 150], size, frame, [], [])).toMatchObject({ anchor: 'start', dy: 0 });
  });

  it('turns round at the edge', () => {
    expect(place([390, 150], size, frame, [], []).anchor).toBe('end');
  });

  it('covers no line where a free place exists', () => {
    const rising = dotted([
      [0, 300],
      [400, 0],
    ]);
    const falling = dotted([
      [0, 0],
      [400, 300],
    ]);
    const { box } = place(
      [200, 150],
      { width: 60, height: 30 },
      frame,
      [...rising, ...falling],
      [],
    );
    const covered = [...rising, ...falling].filter(
      ([x, y]) => x > box.left && x < box.right && y > box.top && y < box.bottom,
    );
    expect(covered).toEqual([]);
  });

  it('stays off another label', () => {
    const first = place([200, 150], size, frame, [], []).box;
    const second = place([203, 152], size, frame, [], [first]).box;
    const apart =
      second.left >= first.right ||
      second.right <= first.left ||
      second.top >= first.bottom ||
      second.bottom <= first.top;
    expect(apart).toBe(true);
  });
});

describe('the words on a level line', () => {
  const frame = { left: 0, top: 0, right: 400, bottom: 300 };
  const size = { width: 80, height: 16 };
  const curve = (...line: [number, number][]) => dotted(line);

  it('stand above its right end when nothing is in the way', () => {
    expect(placeOnLine(150, size, frame, [], [])).toMatchObject({ right: true, above: true });
  });

  it('keep off a curve that comes down to the line at its right end', () => {
    const down = curve([0, 20], [300, 20], [400, 148]);
    expect(placeOnLine(150, size, frame, down, [])).toMatchObject({ right: true, above: false });
    const through = curve([0, 20], [300, 100], [400, 200]);
    expect(placeOnLine(150, size, frame, through, [])).toMatchObject({ right: false, above: true });
  });

  it('keep off other words', () => {
    const other = { left: 380, right: 420, top: 140, bottom: 170 };
    expect(placeOnLine(150, size, frame, [], [other])).toMatchObject({ right: false, above: true });
  });

  it('never leave the frame while there is room in it', () => {
    const { box } = placeOnLine(290, size, frame, curve([0, 20], [400, 288]), []);
    expect(box.bottom).toBeLessThanOrEqual(300);
  });
});
