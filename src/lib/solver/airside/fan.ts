/** The fans: pressure against flow of one of them, running, driven by the wind, or standing. */
import { InvalidInputError, type Note } from '../errors';
import { fallingCurve, type FallingCurve } from '../hydraulics/fallingCurve';
import type { Fans } from '../loop/types';

/** Air the curves of fans and the losses of cores are stated at, kg/m³ (fan makers' standard air). */
export const STANDARD_AIR_DENSITY = 1.2;

export interface FanModel {
  /** Pressure one fan adds at its flow, Pa; negative where the fan is in the way. */
  pressure(flowPerFan: number): number;
  readonly speedRatio: number;
  /** Flow of one fan against no pressure at this speed, m³/s. */
  readonly freeDelivery: number;
  /** Pressure without flow at this speed and density, Pa. */
  readonly shutOff: number;
  /** The curve of one fan at rated speed in standard air. */
  readonly rated: FallingCurve;
  /** Swept disc of one fan, m². */
  readonly sweptArea: number;
  /** Notes that hold at any flow. */
  readonly notes: readonly Note[];
  /** What must be told at this flow, {@link notes} included. */
  notesAt(flowPerFan: number): readonly Note[];
}

/**
 * Prepare the fans of a loop for air of a given density.
 *
 * Up to free delivery, by the fan laws: Δp(q) = s² (ρ/ρ₀) P(q/s), with P through the curve's points
 * by shape-preserving cubics and ρ₀ = {@link STANDARD_AIR_DENSITY}. A curve that ends above zero
 * pressure is carried straight on with its end slope to where it reaches zero, with a note.
 *
 * Past free delivery air is driven through the running fan, which then is a restriction:
 * Δp(q) = −ζ ½ ρ (q² − q_free²)/A². The law starts at zero where the curve ends, falls on from there
 * and, with the fan standing (s = 0, q_free = 0), is the loss of its blades: −ζ ½ ρ (q/A)².
 * A is the whole disc π/4 D²; the hub is not taken off, ζ belongs to that area.
 *
 * @param fans - `drivenLoss` is ζ, `diameter` is D
 * @param density - of the air, kg/m³
 * @throws {@link InvalidInputError} `fans.curve` for a curve that rises or is no curve; `fans.…` else
 * @source Fan laws, ISO 5801:2017; the law past free delivery is our statement, no source
 */
export function fanModel(fans: Fans, density: number): FanModel {
  checkFans(fans);
  const rated = fallingCurve(
    fans.curve.map((p) => ({ flow: p.flow, lift: p.pressure })),
    'fans.curve',
    'pressure',
  );
  const s = fans.volts / fans.ratedVolts;
  const sweptArea = (Math.PI / 4) * fans.diameter * fans.diameter;
  const freeDelivery = s * rated.runOut;
  const rise = s * s * (density / STANDARD_AIR_DENSITY);
  const driven = (0.5 * density * fans.drivenLoss) / (sweptArea * sweptArea);
  const notes = curveNotes(rated);

  return {
    rated,
    speedRatio: s,
    freeDelivery,
    sweptArea,
    shutOff: rise * rated.shutOff,
    notes,
    pressure(q) {
      // At q = s q_free both laws give zero; max() takes off what rounding leaves of the curve there.
      if (q < freeDelivery) return rise * Math.max(0, rated.value(q / s));
      return -driven * (q - freeDelivery) * (q + freeDelivery);
    },
    notesAt: (q) => [...notes, ...drivenNotes(fans, s, q, freeDelivery)],
  };
}

function checkFans(fans: Fans): void {
  const refuse = (field: keyof Fans, message: string) => {
    throw new InvalidInputError(`fans.${field}`, message, fans[field] as number);
  };
  if (!(fans.ratedVolts > 0 && fans.ratedVolts < Infinity)) {
    refuse('ratedVolts', 'the rated voltage must be above zero');
  }
  if (!(fans.volts >= 0 && fans.volts < Infinity)) {
    refuse('volts', 'the voltage cannot be negative');
  }
  if (!(fans.diameter > 0 && fans.diameter < Infinity)) {
    refuse('diameter', 'a fan needs a diameter above zero');
  }
  if (!(fans.drivenLoss >= 0 && fans.drivenLoss < Infinity)) {
    refuse('drivenLoss', 'the loss coefficient of a driven fan cannot be negative');
  }
}

function curveNotes(rated: FallingCurve): Note[] {
  const notes: Note[] = [];
  if (rated.lastLift > 0) {
    const message =
      'the fan curve ends above zero pressure; it is carried on straight with its end slope to free delivery';
    const range = [0, rated.lastFlow] as const;
    const value = rated.runOut;
    notes.push({ code: 'fans.curve-continued', message, quantity: 'fans.curve', value, range });
  }
  return notes;
}

function drivenNotes(fans: Fans, s: number, q: number, freeDelivery: number): Note[] {
  const quantity = 'fans.volts';
  const first = (fans.curve[0]?.flow ?? 0) * s;
  if (s === 0) {
    if (q === 0) return [];
    const message = 'the fan stands and the air driven through it loses pressure at its blades';
    return [{ code: 'fans.standing', message, quantity, value: q }];
  }
  const range = [first, freeDelivery] as const;
  // The last digits of the flow are no news.
  if (q > freeDelivery * (1 + 1e-9)) {
    const message =
      'the fan is in the way: more air is driven through it than it moves by itself, and it holds some back';
    return [{ code: 'fans.in-the-way', message, quantity, value: q, range }];
  }
  if (q < first) {
    const message =
      'the flow lies before the first point of the fan curve, whose pressure is held there';
    return [{ code: 'fans.before-curve', message, quantity: 'fans.curve', value: q, range }];
  }
  return [];
}
