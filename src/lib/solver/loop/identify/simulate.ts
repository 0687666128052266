/** The ring followed through the rows of a log. */
import { InvalidInputError } from '../../errors';
import { advance, type Coefficients } from './ring';
import { nodeSimulator } from './nodes/simulate';
import type { Prediction, Simulator } from './prediction';
import { requireDrive } from './requireDrive';
import { inletConductance } from './shares';
import type { Drive, LogModel, Node, Parameters, RingModel } from './types';

export type { Prediction, Simulator };

/** A function from parameters to what the log would read, in either model. @throws as {@link requireDrive} */
export const simulator = (model: LogModel, drive: Drive): Simulator =>
  'kind' in model ? nodeSimulator(model, drive) : ringSimulator(model, drive);

const MASS = {
  charge: 'chargeCapacity',
  reservoir: 'reservoirCapacity',
  pump: 'pumpCapacity',
  front: 'frontCapacity',
} as const satisfies Record<Node, keyof Parameters>;
const START = {
  charge: 'chargeStart',
  reservoir: 'reservoirStart',
  pump: 'pumpStart',
  front: 'frontStart',
} as const satisfies Record<Node, keyof Parameters>;

/**
 * Four masses in a ring. With M the mass of a node, C the liquid's
 * capacity rate and T_b the node before it:
 *
 *   M dT/dt = C (T_b - T) + heat of that node
 *
 * Heat at the charge cooler by {@link RingModel.charge}, at the pump `pumpHeat`, at the front exchanger by
 * {@link RingModel.front}. A row too fast to follow leaves NaN in what comes after it.
 *
 * @throws {@link InvalidInputError} where the drive lacks what the model needs or its time does not rise
 * @source first law on each mass; ε-NTU after Kays & London
 */
function ringSimulator(model: RingModel, drive: Drive): Simulator {
  requireDrive(drive, needsOf(model, drive));
  const { order } = model;
  if (new Set(order).size !== 4)
    throw new InvalidInputError('model.order', 'each of the four masses has one place in the ring');
  const rows = drive.t.length;
  const [charge, pump, front] = [
    order.indexOf('charge'),
    order.indexOf('pump'),
    order.indexOf('front'),
  ];
  const intoCharge = (charge + 3) % 4;
  const conductances = conductancesOf(model, drive);
  const stated = model.charge.by === 'heat';
  const even = drive.between === 'linear';

  return (p) => {
    const masses = order.map((node) => p[MASS[node]]);
    const x = Float64Array.from(order, (node) => p[START[node]]);
    const nodes = order.map(() => new Float64Array(rows).fill(NaN));
    const chargeAirOut = new Float64Array(rows).fill(NaN);
    const k4 = () => new Float64Array(4);
    const coefficients = { own: k4(), before: k4(), b: k4(), c: k4() } satisfies Coefficients;
    const { own, before, b, c } = coefficients;
    const heatIn = (k: number, G: number) =>
      stated ? p.heatScale * drive.heat![k]! : G * drive.chargeAirIn![k]!;

    for (let k = 0; k < rows; k++) {
      for (let i = 0; i < 4; i++) nodes[i]![k] = x[i]!;
      const next = even && k < rows - 1 ? k + 1 : k;
      const { C, air, intoLiquid, toAmbient } = conductances(p, k, next);
      if (!stated) {
        const T_air = drive.chargeAirIn![k]!;
        chargeAirOut[k] = air > 0 ? T_air - (intoLiquid / air) * (T_air - x[intoCharge]!) : T_air;
      }
      if (k === rows - 1) break;
      const h = drive.t[k + 1]! - drive.t[k]!;
      for (let i = 0; i < 4; i++) {
        own[i] = -C / masses[i]!;
        before[i] = C / masses[i]!;
        b[i] = 0;
        c[i] = 0;
      }
      if (!stated) before[charge] = (C - intoLiquid) / masses[charge]!;
      b[charge] = (heatIn(k, intoLiquid) + p.soakHeat) / masses[charge]!;
      c[charge] = (heatIn(next, intoLiquid) - heatIn(k, intoLiquid)) / (h * masses[charge]!);
      b[pump] = p.pumpHeat / masses[pump]!;
      if (model.front.by === 'outlet') own[front] = -(C + toAmbient) / masses[front]!;
      else before[front] = (C - toAmbient) / masses[front]!;
      b[front] = (toAmbient * drive.ambient[k]!) / masses[front]!;
      c[front] = (toAmbient * (drive.ambient[next]! - drive.ambient[k]!)) / (h * masses[front]!);
      if (!advance(coefficients, h, x)) break;
    }
    const of = (node: Node) => nodes[order.indexOf(node)]!;
    return {
      charge: of('charge'),
      reservoir: of('reservoir'),
      pump: of('pump'),
      front: of('front'),
      // Nothing lies between the two here.
      frontIn: of(order[(front + 3) % 4]!),
      chargeAirOut,
    };
  };
}

/** Capacity rates and conductances from row `k` to the next, W/K; the mean of both rows where they change evenly. */
function conductancesOf({ charge, front }: RingModel, drive: Drive) {
  const chargeOf = charge.by === 'UA' ? inletConductance(charge.arrangement) : null;
  const frontOf = front.by === 'UA' ? inletConductance(front.arrangement) : null;
  const mean = (a: Float64Array | undefined, k: number, next: number) =>
    a ? 0.5 * (a[k]! + a[next]!) : 0;
  return (p: Parameters, k: number, next: number) => {
    const C = drive.liquidRate ? p.flowScale * mean(drive.liquidRate, k, next) : p.capacityRate;
    const air = p.heatScale * mean(drive.chargeAirRate, k, next);
    const intoLiquid = chargeOf ? chargeOf(p.chargeUA, air, C) : p.chargeShare * air;
    const frontAir = mean(drive.frontAirRate, k, next);
    const inlet = frontOf ? frontOf(p.frontUA, frontAir, C) : p.frontShare * frontAir;
    return { C, air, intoLiquid, toAmbient: front.by === 'outlet' ? p.frontUA : inlet };
  };
}

function needsOf(model: RingModel, drive: Drive): (keyof Drive)[] {
  const needs: (keyof Drive)[] = ['ambient'];
  if (model.charge.by === 'heat') needs.push('heat');
  else needs.push('chargeAirIn', 'chargeAirRate');
  if (model.front.by !== 'outlet') needs.push('frontAirRate');
  if (drive.liquidRate) needs.push('liquidRate');
  return needs;
}
