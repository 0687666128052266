import { describe, expect, it } from 'vitest';
import { faultGrid } from '$lib/solver/diagnosis/grid';
import { FAULTS, faultOf } from '$lib/solver/diagnosis/faults';
import { nextMeasurements } from '$lib/solver/diagnosis/nextMeasurement';
import { predictor } from '$lib/solver/diagnosis/predict';
import { diagnose, rank, UNKNOWN_WEIGHT, type Diagnosis } from '$lib/solver/diagnosis/rank';
import type { Reading } from '$lib/solver/diagnosis/types';
import { seededRandom } from '$lib/solver/numerics/random';
import { exampleLoop } from '../loop/example';
import { CONDITIONS, drawnSeverity, readingsOf, shownBy, somePlaces } from './simulate';

const grid = faultGrid(exampleLoop, CONDITIONS);
const predict = predictor(exampleLoop);
const described = shownBy(predict, faultOf('as-described'), NaN).duty;
const total = (d: Diagnosis) => d.causes.reduce((sum, c) => sum + c.probability, 0);
const chanceOf = (d: Diagnosis, id: string | null) =>
  d.causes.find((c) => (c.fault?.id ?? null) === id)!.probability;
const reading = (
  channel: Reading['channel'],
  value: number,
  sigma: number,
  place: Reading['place'] = 'cruise',
): Reading => ({ channel, place, value, sigma });

describe('ranking of causes', { timeout: 30_000 }, () => {
  it('gives the weights back where nothing is measured', () => {
    const d = rank(grid, [], CONDITIONS);
    const sum = FAULTS.reduce((s, f) => s + f.weight, UNKNOWN_WEIGHT);
    for (const c of d.causes) {
      expect(c.probability).toBeCloseTo((c.fault?.weight ?? UNKNOWN_WEIGHT) / sum, 10);
    }
  });

  it('sums to one, whatever is read', () => {
    const random = seededRandom(3);
    for (let i = 0; i < 40; i++) {
      const fault = FAULTS[i % FAULTS.length]!;
      const shown = shownBy(predict, fault, drawnSeverity(fault, random));
      const d = rank(grid, readingsOf(shown, somePlaces(0.4, random), random), CONDITIONS);
      expect(total(d)).toBeCloseTo(1, 10);
      expect(d.causes.every((c) => c.probability >= 0)).toBe(true);
    }
  });

  it('is not narrowed less, on average, by sharper instruments', () => {
    // Entropy of the causes: the same draws, read with instruments of a quarter of the error.
    const entropy = (d: Diagnosis) =>
      -d.causes.reduce(
        (s, c) => s + (c.probability > 0 ? c.probability * Math.log(c.probability) : 0),
        0,
      );
    const mean = (sharper: number) => {
      const random = seededRandom(11);
      const drawn = FAULTS.flatMap((fault) =>
        Array.from({ length: 5 }, () => {
          const shown = shownBy(predict, fault, drawnSeverity(fault, random));
          const places = somePlaces(0.4, random);
          return entropy(
            rank(grid, readingsOf(shown, places, random, CONDITIONS, sharper), CONDITIONS),
          );
        }),
      );
      return drawn.reduce((s, e) => s + e, 0) / drawn.length;
    };
    expect(mean(4)).toBeLessThan(mean(1));
  });

  it('raises "none of these" where readings contradict each other', () => {
    // A front exchanger whose liquid leaves far hotter than it came, while all else is well.
    const { reservoir, frontIn, flow, volts } = described.cruise;
    const d = rank(
      grid,
      [
        reading('reservoir', reservoir - 25, 0.8),
        reading('frontIn', frontIn, 0.8),
        reading('frontOut', frontIn + 40, 0.8),
        reading('flow', 1.9 * flow, 1e-6),
        reading('bucket', 0.6 * flow, 1e-6),
        reading('volts', volts, 0.05),
      ],
      CONDITIONS,
    );
    expect(d.contradicts).toBe(true);
    expect(chanceOf(d, null)).toBeGreaterThan(0.5);
    expect(total(d)).toBeCloseTo(1, 10);
  });

  it('keeps "none of these" small where the loop is well', () => {
    const { reservoir, charge, flow, volts } = described.cruise;
    const d = diagnose(
      exampleLoop,
      [
        reading('reservoir', reservoir, 0.8),
        reading('charge', charge, 0.8),
        reading('flow', flow, 2e-5),
        reading('volts', volts, 0.05),
      ],
      CONDITIONS,
    );
    expect(d.causes[0]!.fault?.id).toBe('as-described');
    expect(chanceOf(d, null)).toBeLessThan(0.01);
  });

  it('estimates how bad it is, within three of its own sigmas', () => {
    const lost = 0.3;
    const s = predict.at(faultOf('supply-drop'), lost, 'cruise');
    const d = rank(
      grid,
      [
        reading('volts', s.volts, 0.05),
        reading('amps', s.amps, 0.1),
        reading('flow', s.flow, 1e-5),
      ],
      CONDITIONS,
    );
    const { fault, severity } = d.causes[0]!;
    expect(fault?.id).toBe('supply-drop');
    expect(Math.abs(severity!.mean - lost)).toBeLessThan(3 * severity!.sigma);
    expect(severity!.sigma).toBeLessThan(0.05);
  });

  it('leaves out a reading that no cause predicts', () => {
    const heat = { by: 'heat', heat: 400 } as const;
    const { duties } = exampleLoop;
    const stated = {
      ...exampleLoop,
      duties: { ...duties, cruise: { ...duties.cruise, air: heat } },
    };
    const d = diagnose(stated, [reading('charge', 330, 1), reading('volts', 13, 0.05)], CONDITIONS);
    expect(d.unused.map((r) => r.channel)).toEqual(['charge']);
    expect(total(d)).toBeCloseTo(1, 10);
  });
});

describe('what the readings cannot tell', () => {
  it('a blocked hose from a blocked core, by flow and amps alone', () => {
    const s = predict.at(faultOf('hose-collapsed'), 0.45, 'cruise');
    const d = rank(
      grid,
      [
        reading('volts', s.volts, 0.05),
        reading('flow', s.flow, 0.04 * s.flow),
        reading('amps', s.amps, 0.1),
      ],
      CONDITIONS,
    );
    const named = d.pairs.map(([a, b]) => [a.fault!.id, b.fault!.id].sort().join());
    expect(named).toContain('core-blocked-inside,hose-collapsed');
  });
});

describe('the next measurement', () => {
  it('tells lost volts from a blocked hose by the volts, first of all', () => {
    // Low flow alone: the trade's next step is a meter at the pump's plug (common practice).
    const s = predict.at(faultOf('supply-drop'), 0.4, 'traffic');
    const d = rank(grid, [reading('flow', s.flow, 0.04 * s.flow, 'traffic')], CONDITIONS);
    const next = nextMeasurements(d, CONDITIONS);
    const place = (channel: string) => next.findIndex((n) => n.channel === channel);
    expect(place('volts')).toBeLessThan(3);
    expect(next.every((n) => n.information >= 0 && Number.isFinite(n.perMinute))).toBe(true);
    expect(next.some((n) => n.channel === 'flow' && n.place === 'traffic')).toBe(false);
    for (let i = 1; i < next.length; i++) {
      expect(next[i]!.perMinute).toBeLessThanOrEqual(next[i - 1]!.perMinute);
    }
  });

  it('never promises more than there is to know', () => {
    const d = rank(grid, [reading('reservoir', described.cruise.reservoir + 6, 0.8)], CONDITIONS);
    const p = d.causes.filter((c) => c.fault).map((c) => c.probability);
    const sum = p.reduce((s, x) => s + x, 0);
    const entropy = -p.reduce((s, x) => s + (x > 0 ? (x / sum) * Math.log(x / sum) : 0), 0);
    for (const n of nextMeasurements(d, CONDITIONS)) {
      expect(n.information).toBeLessThanOrEqual(entropy + 1e-6);
    }
  });
});
