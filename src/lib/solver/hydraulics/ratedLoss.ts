/**
 * A restriction known from rating points and carried to other flows and other fluids. Serves cores on
 * the liquid side (flow in m³/s) and on the air side (face velocity in m/s) alike.
 */
import { InvalidInputError, type Note } from '../errors';
import type { LossPoint, RatedLoss } from '../loop/types';
import { fitLinearQuadratic, type LinearQuadratic } from './lossFit';

/** Density and dynamic viscosity of what flows. */
export interface LossFluid {
  readonly rho: number;
  readonly mu: number;
}

/** The law of a restriction at its rated fluid, told by the losses at one flow. */
export type LossLaw =
  | {
      readonly form: 'power';
      readonly flowRated: number;
      readonly lossRated: number;
      readonly n: number;
    }
  | ({
      readonly form: 'linear-quadratic';
      /** The largest flow among the points. */
      readonly flowRated: number;
      /** The two parts of the loss there, Pa: a Q and b Q². */
      readonly linearRated: number;
      readonly quadraticRated: number;
    } & LinearQuadratic);

/** The loss for one fluid: a plain function and its inverse. */
export interface LossCurve {
  loss(flow: number): number;
  slope(flow: number): number;
  /** The flow at which `loss` is lost; infinite for a part without loss. */
  flow(loss: number): number;
}

export interface RatedLossModel {
  readonly law: LossLaw;
  readonly rated: LossFluid;
  /** Largest flow among the rating points. */
  readonly flowMax: number;
  /** What the fit has to tell. */
  readonly notes: readonly Note[];
  /** Prepared for one fluid, for use inside a root finder. */
  for(fluid: LossFluid): LossCurve;
  /** Pressure lost, Pa; `flow` at or above zero. */
  at(flow: number, fluid: LossFluid): number;
  /** Says so when `flow` is far above the rating points. */
  notesAt(flow: number): readonly Note[];
}

/** Above this many times the largest rated flow the loss is told as a guess. */
const FAR = 2;
/** A fit that misses a point by more than this share of the largest loss is told. */
const MISS = 0.1;

/**
 * Prepare a restriction.
 * One point: dp = dp_r (Q/Q_r)^n (ρ/ρ_r)^(n−1) (μ/μ_r)^(2−n).
 * More: dp = a Q (μ/μ_r) + b Q² (ρ/ρ_r).
 *
 * @param rated - density and viscosity of the fluid the points were taken with
 * @param path - of the points in the loop, for errors and notes
 * @throws {@link InvalidInputError} without points, or with points that are no rating
 * @source Common practice; both forms follow from a laminar part ∝ μ V and a turbulent part ∝ ρ V²
 */
export function ratedLoss(loss: RatedLoss, rated: LossFluid, path: string): RatedLossModel {
  checkPoints(loss, path);
  const { points } = loss;
  const flowMax = Math.max(...points.map((p) => p.flow));
  const notes: Note[] = [];
  const law =
    points.length === 1
      ? powerLaw(points[0]!, loss.exponent)
      : twoPart(points, flowMax, path, notes);

  const curve = (fluid: LossFluid): LossCurve => {
    const density = fluid.rho / rated.rho;
    const viscosity = fluid.mu / rated.mu;
    if (law.form === 'power') {
      const { n, flowRated } = law;
      const scale = law.lossRated * density ** (n - 1) * viscosity ** (2 - n);
      return powerCurve(scale, flowRated, n);
    }
    return twoPartCurve(law.a * viscosity, law.b * density);
  };

  return {
    law,
    rated,
    flowMax,
    notes,
    for: curve,
    at: (flow, fluid) => curve(fluid).loss(flow),
    notesAt(flow) {
      if (!(flow > FAR * flowMax)) return notes;
      const range = [0, FAR * flowMax] as const;
      const message = `the flow is more than ${FAR} times the largest flow this loss was rated at`;
      return [
        ...notes,
        { code: 'loss.far-from-rating', message, quantity: path, value: flow, range },
      ];
    },
  };
}

function checkPoints({ points, exponent }: RatedLoss, path: string): void {
  if (points.length === 0) {
    throw new InvalidInputError(
      `${path}.points`,
      'a loss needs at least one point of flow and pressure',
    );
  }
  for (const p of points) {
    if (!(p.flow > 0 && p.flow < Infinity)) {
      throw new InvalidInputError(
        `${path}.points`,
        'each rating point needs a flow above zero',
        p.flow,
      );
    }
    if (!(p.loss >= 0 && p.loss < Infinity)) {
      throw new InvalidInputError(`${path}.points`, 'a loss cannot be negative', p.loss);
    }
  }
  if (points.length === 1 && !(exponent >= 1 && exponent <= 2)) {
    throw new InvalidInputError(
      `${path}.exponent`,
      'the exponent runs from 1 (laminar) to 2 (fully turbulent)',
      exponent,
    );
  }
  if (points.length > 1 && points.every((p) => p.flow === points[0]!.flow)) {
    throw new InvalidInputError(
      `${path}.points`,
      'points at one and the same flow tell only one loss',
    );
  }
}

function powerLaw({ flow, loss }: LossPoint, n: number): LossLaw {
  return { form: 'power', lossRated: loss, flowRated: flow, n };
}

function twoPart(
  points: readonly LossPoint[],
  flowRated: number,
  path: string,
  notes: Note[],
): LossLaw {
  const fit = fitLinearQuadratic(points);
  if (fit.clamped !== null) {
    const message =
      fit.clamped === 'a'
        ? 'these points rise faster than flow squared; fitted with the squared part alone'
        : 'these points rise slower than flow; fitted with the linear part alone';
    notes.push({ code: 'loss.fit-clamped', message, quantity: path, value: fit.miss });
  }
  if (fit.miss > MISS) {
    const message =
      'the fitted loss misses a rating point by more than a tenth of the largest loss';
    notes.push({
      code: 'loss.poor-fit',
      message,
      quantity: path,
      value: fit.miss,
      range: [0, MISS],
    });
  }
  const linearRated = fit.a * flowRated;
  const quadraticRated = fit.b * flowRated ** 2;
  return { form: 'linear-quadratic', flowRated, linearRated, quadraticRated, ...fit };
}

function powerCurve(scale: number, flowRated: number, n: number): LossCurve {
  return {
    loss: (flow) => scale * Math.pow(flow / flowRated, n),
    slope: (flow) => ((n * scale) / flowRated) * Math.pow(flow / flowRated, n - 1),
    flow: (loss) => (loss === 0 ? 0 : flowRated * Math.pow(loss / scale, 1 / n)),
  };
}

function twoPartCurve(a: number, b: number): LossCurve {
  return {
    loss: (flow) => (a + b * flow) * flow,
    slope: (flow) => a + 2 * b * flow,
    // The form with the root below the line: no difference of near-equal numbers, b may be zero.
    flow: (loss) => (loss === 0 ? 0 : (2 * loss) / (a + Math.sqrt(a * a + 4 * b * loss))),
  };
}
