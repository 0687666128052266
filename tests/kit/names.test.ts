/** What a label says under a heading that has said a part of it. */
import { describe, expect, it } from 'vitest';
import { shortLabel } from '../../src/lib/kit/names';

describe('a label under its heading', () => {
  it.each([
    ['Reservoir to pump: bore', 'Hose, reservoir to pump', 'Bore'],
    ['Reservoir to pump: bends of 90°', 'Hose, reservoir to pump', 'Bends of 90°'],
    ['Reservoir to pump: bore', 'Hose, pump to charge cooler', 'Reservoir to pump: bore'],
    ['A dash size means', 'Hose, reservoir to pump', 'A dash size means'],
    ['Voltage at the pump', 'Pump', 'Voltage at the pump'],
  ])('“%s” under “%s” is “%s”', (label, heading, short) => {
    expect(shortLabel(label, heading)).toBe(short);
  });
});
