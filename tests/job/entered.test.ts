import { describe, expect, it } from 'vitest';
import { enteredOf, littleEntered } from '$lib/job/entered';
import { emptyJob } from '$lib/job/types';
import { demoJob, edited } from '../sheets/jobs';

describe('how much of the vehicle is entered', () => {
  it('an empty job says that nothing is, one with a few inputs how many', () => {
    expect(littleEntered(emptyJob())).toMatch(/^Nothing of this vehicle/);
    const few = edited(emptyJob(), { 'pump.volts': '12 V', 'view.duty': 'pull' });
    expect(enteredOf(few)).toBe(1);
    expect(littleEntered(few)).toMatch(/^Only 1 input of this loop is entered/);
  });
  it('the demonstration is told well enough', () => {
    expect(enteredOf(demoJob())).toBeGreaterThan(20);
    expect(littleEntered(demoJob())).toBeNull();
  });
});
