/** Suction head the pump needs (NPSH3) at the flow through the loop. */
import { InvalidInputError, type Note } from '../errors';
import type { PumpModel } from '../hydraulics/pump';
import type { Pump } from '../loop/types';
import { pchip } from '../numerics/interpolate';

export interface RequiredModel {
  /** NPSH3 of the set at the flow through the loop, m. */
  at(flow: number): number;
  /** It never falls as the flow rises: then pump and loop meet once even where head is lost to it. */
  readonly rising: boolean;
  notesAt(flow: number): readonly Note[];
}

/**
 * Prepare the pump's need of suction head.
 *
 * From points: N_s(Q) = s² N(Q/s), one pump's share of the flow, by shape-preserving cubics
 * (Fritsch-Carlson); held before the first point; after the last straight on with the end slope, or
 * level where that falls. {@link RequiredModel.notesAt} tells when the flow lies there. In series the
 * first pump meets the suction side. An estimate stands for every flow and speed.
 *
 * @throws {@link InvalidInputError} `pump.npshCurve` for fewer than two points, flows out of order, a
 *   head that is negative; `pump.npshRequired` for a negative estimate
 * @source NPSH3 after ISO 9906:2012; affinity laws
 */
export function requiredModel(
  pump: Pump,
  { speedRatio: s, inParallel }: Pick<PumpModel, 'speedRatio' | 'inParallel'>,
): RequiredModel {
  if (!pump.npshCurve) return estimate(pump.npshRequired);
  const { value, rising, first, last } = throughPoints(pump.npshCurve);
  const similar = (flow: number) => (s > 0 ? flow / (inParallel * s) : 0);
  return {
    rising,
    at: (flow) => s * s * value(similar(flow)),
    notesAt(flow) {
      const Q = similar(flow);
      if (!(s > 0) || (Q >= first && Q <= last)) return [];
      return [
        {
          code: 'suction.beyond-points',
          message:
            Q > last
              ? 'the flow lies beyond the last point of the suction head required, which is continued straight'
              : 'the flow lies before the first point of the suction head required, whose value is held there',
          quantity: 'pump.npshCurve',
          value: Q,
          range: [first, last],
        },
      ];
    },
  };
}

function estimate(required: number): RequiredModel {
  if (!(required >= 0 && required < Infinity)) {
    throw new InvalidInputError(
      'pump.npshRequired',
      'the suction head required is negative',
      required,
    );
  }
  return { rising: true, at: () => required, notesAt: () => [] };
}

function throughPoints(points: NonNullable<Pump['npshCurve']>) {
  const refuse = (message: string, value?: number): never => {
    throw new InvalidInputError('pump.npshCurve', message, value);
  };
  if (points.length < 2) refuse('the curve needs at least two points of flow and head');
  points.forEach(({ flow, head }, i) => {
    if (!(flow >= 0 && flow < Infinity)) refuse('a flow on the curve is negative', flow);
    if (!(head >= 0 && head < Infinity)) refuse('a head on the curve is negative', head);
    if (i > 0 && !(flow > points[i - 1]!.flow)) {
      refuse('the points of the curve must stand in order of flow', flow);
    }
  });
  const x = points.map((p) => p.flow);
  const y = points.map((p) => p.head);
  const fit = pchip(x, y);
  const [first, last] = [x[0]!, x[x.length - 1]!];
  const endSlope = Math.max(0, fit.slope(last));
  const value = (Q: number) => {
    if (Q <= first) return y[0]!;
    return Q >= last ? y[y.length - 1]! + endSlope * (Q - last) : fit.value(Q);
  };
  return { value, first, last, rising: y.every((head, i) => i === 0 || head >= y[i - 1]!) };
}
