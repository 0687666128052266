import type { Interval, Note } from '../../errors';

/** Measures and ratios in words; millimetres and degrees as the papers state them. */
const WORDS = {
  louverAngleDegrees: { name: 'the louver angle', unit: '°', per: 1 },
  louverPitch: { name: 'the louver pitch', unit: ' mm', per: 1e-3 },
  louverLength: { name: 'the length of a louver', unit: ' mm', per: 1e-3 },
  finPitch: { name: 'the fin pitch', unit: ' mm', per: 1e-3 },
  finHeight: { name: 'the fin height', unit: ' mm', per: 1e-3 },
  flowDepth: { name: 'the depth of the core', unit: ' mm', per: 1e-3 },
  tubePitch: { name: 'the pitch of the tubes', unit: ' mm', per: 1e-3 },
  hydraulicDiameter: { name: 'the hydraulic diameter of an air passage', unit: ' mm', per: 1e-3 },
  spacingOverHeight: { name: 'the gap between fins over their height', unit: '', per: 1 },
  thicknessOverStrip: { name: 'the fin thickness over the length of a strip', unit: '', per: 1 },
  thicknessOverSpacing: { name: 'the fin thickness over the gap between fins', unit: '', per: 1 },
  Re: { name: 'the Reynolds number of the air', unit: '', per: 1 },
} as const;

export type Ranged = keyof typeof WORDS;

function outsideWords(quantity: Ranged, value: number, [low, high]: Interval): string {
  const { name, unit, per } = WORDS[quantity];
  const show = (x: number) => `${Number((x / per).toPrecision(3))}${unit}`;
  return `${name} is ${show(value)}; the cores this law was fitted to have ${show(low)} to ${show(high)}`;
}

/**
 * What the reader must know when a correlation is used outside the data it was fitted to. The law
 * still gives a value there; beyond a factor of two of a bound it is a guess and says so.
 */
export function outsideData<K extends Ranged>(
  law: string,
  ranges: Readonly<Record<K, Interval>>,
  values: Readonly<Record<NoInfer<K>, number>>,
): Note[] {
  const notes: Note[] = [];
  for (const quantity in ranges) {
    const range = ranges[quantity];
    const value = values[quantity];
    if (value >= range[0] && value <= range[1]) continue;
    const far = value < range[0] / 2 || value > range[1] * 2;
    notes.push({
      code: far ? 'far-outside-data' : 'outside-data',
      message: `${law}: ${outsideWords(quantity, value, range)}${far ? ', so take the value as a guess' : ''}.`,
      quantity,
      value,
      range,
    });
  }
  return notes;
}
