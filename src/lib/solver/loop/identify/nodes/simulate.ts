/** The loop of the sheets followed through the rows of a log. */
import { cellConductance } from '../../events/hoseCells';
import { requireDrive } from '../requireDrive';
import type { Prediction, Simulator } from '../prediction';
import type { Drive, NodeModel, Parameters } from '../types';
import { advanceChain, AT, CHAIN, STATES, type ChainRates } from './chain';
import { coresOf } from './conductances';

/** Least thermal mass of a hose, J/K: a few spoonfuls; a shorter run would only make the rates stiff. */
const LEAST_HOSE = 200;
/** Least of a part whose description leaves it none, J/K. */
const LEAST = 1;

/**
 * The nodes of the warm-up with what the log says of flow, air and charge. Metal of a core takes
 * G_air (T_air - T_metal) and gives G_liquid (T_metal - T_in); each liquid follows
 * M dT/dt = C (T_in - T) + heats; hoses are mixed parts, bay heat in the run between the cores.
 *
 * @throws as {@link requireDrive}
 * @source first law on each mass; ε-NTU after Kays & London; the equations of the warm-up
 */
export function nodeSimulator(model: NodeModel, drive: Drive): Simulator {
  requireDrive(drive, needsOf(model, drive));
  const rows = drive.t.length;
  const even = drive.between === 'linear';
  const cores = coresOf(model, drive);
  const { soak, shortCircuit: s } = model;
  const stated = model.charge.by === 'heat';
  const charging = stated ? drive.heat! : drive.chargeAirIn!;
  const { t, ambient } = drive;
  const bay = drive.bay!;
  const { engineConductance: G_e, engineTemperature: T_e } = soak;
  const { hoseConductance: G_h, reservoirConductance: G_r } = soak;
  const { reservoir, suction, delivery, transfer, arriving } = AT;
  const { Q, Qm, F, Fm, atCooler, atFront } = placesOf(model);

  return (p) => {
    const mass = massesOf(model, p);
    const { charge, front, liquid, chargeAir } = cores(p);
    const f = () => new Float64Array(STATES);
    const rates: ChainRates = {
      ...{ own: f(), before: f(), b: f(), c: f() },
      ...{ firstByMetal: 0, secondByMetal: 0, shortCircuit: 0 },
    };
    const { own, before, b, c } = rates;
    const out = emptyPrediction(rows);
    const x = startOf(model, p);
    x[Qm] = metalAtStart(
      [charge.air[0]!, stated ? 0 : charging[0]!, stated ? p.heatScale * charging[0]! : 0],
      [charge.liquid[0]!, x[atCooler]!],
    );
    x[Fm] = metalAtStart([front.air[0]!, ambient[0]!, 0], [front.liquid[0]!, x[atFront]!]);

    for (let k = 0; k < rows; k++) {
      out.reservoir[k] = x[reservoir]!;
      out.pump[k] = x[delivery]!;
      out.charge[k] = x[Q]!;
      out.frontIn[k] = x[atFront]!;
      out.front[k] = x[F]!;
      if (chargeAir) {
        const T = charging[k]!;
        const share = chargeAir[k]! > 0 ? charge.air[k]! / chargeAir[k]! : 0;
        out.chargeAirOut[k] = T - share * (T - x[Qm]!);
      }
      if (k === rows - 1) break;
      const h = t[k + 1]! - t[k]!;
      const next = even ? k + 1 : k;
      const C = 0.5 * (liquid[k]! + liquid[next]!);
      for (let i = 0; i < CHAIN; i++) {
        own[i] = -C / mass[i]!;
        before[i] = C / mass[i]!;
      }
      const bayRise = (bay[next]! - bay[k]!) / h;
      own[reservoir] = -((1 - s) * C + G_r) / mass[reservoir]!;
      before[reservoir] = ((1 - s) * C) / mass[reservoir]!;
      b[reservoir] = (G_r * bay[k]!) / mass[reservoir]!;
      c[reservoir] = (G_r * bayRise) / mass[reservoir]!;
      before[suction] = ((1 - s) * C) / mass[suction]!;
      rates.shortCircuit = (s * C) / mass[suction]!;
      b[delivery] = C > 0 ? p.pumpHeat / mass[delivery]! : 0;

      const Ga = 0.5 * (charge.air[k]! + charge.air[next]!);
      const Gl = 0.5 * (charge.liquid[k]! + charge.liquid[next]!);
      own[Q] = -(C + G_e) / mass[Q]!;
      before[Q] = (C - Gl) / mass[Q]!;
      const byCharge = Gl / mass[Q]!;
      b[Q] = (G_e * T_e + p.soakHeat) / mass[Q]!;
      own[Qm] = -(Ga + Gl) / mass[Qm]!;
      before[Qm] = Gl / mass[Qm]!;
      // Air and what it brings change together: their product goes evenly from row to row, not each alone.
      const [now, then] = stated
        ? [p.heatScale * charging[k]!, p.heatScale * charging[next]!]
        : [charge.air[k]! * charging[k]!, charge.air[next]! * charging[next]!];
      b[Qm] = now / mass[Qm]!;
      c[Qm] = (then - now) / (h * mass[Qm]!);

      const g = cellConductance({ C, G: G_h, N: 2 });
      for (let i = transfer; i <= arriving; i++) {
        own[i] = -(C + g) / mass[i]!;
        b[i] = (g * bay[k]!) / mass[i]!;
        c[i] = (g * bayRise) / mass[i]!;
      }
      const Gfa = 0.5 * (front.air[k]! + front.air[next]!);
      const Gfl = 0.5 * (front.liquid[k]! + front.liquid[next]!);
      before[F] = (C - Gfl) / mass[F]!;
      const byFront = Gfl / mass[F]!;
      rates.firstByMetal = model.frontFirst ? byFront : byCharge;
      rates.secondByMetal = model.frontFirst ? byCharge : byFront;
      own[Fm] = -(Gfa + Gfl) / mass[Fm]!;
      before[Fm] = Gfl / mass[Fm]!;
      const fresh = front.air[k]! * ambient[k]!;
      b[Fm] = fresh / mass[Fm]!;
      c[Fm] = (front.air[next]! * ambient[next]! - fresh) / (h * mass[Fm]!);
      if (!advanceChain(rates, h, x)) break;
    }
    return out;
  };
}

/** Where both cores stand in the chain, with their metal and what brings their liquid. */
function placesOf({ frontFirst }: Pick<NodeModel, 'frontFirst'>) {
  const first = { liquid: AT.first, metal: AT.firstMetal, before: AT.delivery } as const;
  const second = { liquid: AT.second, metal: AT.secondMetal, before: AT.arriving } as const;
  const [charge, front] = frontFirst ? [second, first] : [first, second];
  return {
    ...{ Q: charge.liquid, Qm: charge.metal, atCooler: charge.before },
    ...{ F: front.liquid, Fm: front.metal, atFront: front.before },
  };
}

function massesOf(model: NodeModel, p: Parameters): Float64Array {
  const { metalShare, hoses } = model;
  const { Q, Qm, F, Fm } = placesOf(model);
  const mass = new Float64Array(STATES);
  mass[AT.reservoir] = p.reservoirCapacity;
  mass[AT.suction] = Math.max(LEAST_HOSE, hoses.suctionShare * p.pumpCapacity);
  mass[AT.delivery] = Math.max(LEAST_HOSE, (1 - hoses.suctionShare) * p.pumpCapacity);
  mass[AT.transfer] = mass[AT.arriving] = Math.max(LEAST_HOSE, 0.5 * hoses.transfer);
  mass[AT.back] = Math.max(LEAST_HOSE, hoses.back);
  mass[Q] = Math.max(LEAST, (1 - metalShare.charge) * p.chargeCapacity);
  mass[Qm] = Math.max(LEAST, metalShare.charge * p.chargeCapacity);
  mass[F] = Math.max(LEAST, (1 - metalShare.front) * p.frontCapacity);
  mass[Fm] = Math.max(LEAST, metalShare.front * p.frontCapacity);
  return mass;
}

/** Each run of hose begins at the temperature of the part before it. */
function startOf({ frontFirst }: Pick<NodeModel, 'frontFirst'>, p: Parameters): Float64Array {
  const x = new Float64Array(STATES);
  const [first, second] = frontFirst
    ? [p.frontStart, p.chargeStart]
    : [p.chargeStart, p.frontStart];
  x.fill(p.reservoirStart, AT.reservoir, AT.first);
  x.fill(first, AT.first, AT.second);
  x.fill(second, AT.second, CHAIN);
  return x;
}

/** Where metal stands that has been between its two fluids for long, K. */
function metalAtStart(
  [Ga, T_air, heat]: readonly [number, number, number],
  [Gl, T_in]: readonly [number, number],
): number {
  return Ga + Gl > 0 ? (Ga * T_air + Gl * T_in + heat) / (Ga + Gl) : T_in;
}

function emptyPrediction(rows: number): Prediction {
  const nan = () => new Float64Array(rows).fill(NaN);
  return {
    charge: nan(),
    reservoir: nan(),
    pump: nan(),
    front: nan(),
    frontIn: nan(),
    chargeAirOut: nan(),
  };
}

function needsOf(model: NodeModel, drive: Drive): (keyof Drive)[] {
  const needs: (keyof Drive)[] = ['ambient', 'bay', 'frontAirRate', 'frontShape', 'frontFilm'];
  needs.push('frontPower', 'frontFilmPower', 'chargeFilm');
  if (model.charge.by === 'heat') needs.push('heat');
  else needs.push('chargeAirIn', 'chargeAirRate', 'chargeShape');
  if (drive.liquidRate) needs.push('liquidRate');
  return needs;
}
