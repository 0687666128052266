/** Formulas of what the fans make of their catalogue flow: standing, and as the vehicle gathers speed. */
import { defineFormula, type NamedFunction, type Term } from '../formula';
import { SOURCES } from '../sources';
import { STANDARD_AIR_DENSITY, type FanModel } from './fan';
import { RHO, SHARE } from './terms';

/** Air that all fans move against no pressure at their speed. */
export const freeDelivery = defineFormula({
  id: 'airside.free-delivery',
  expr: 'n * s * q_r',
  gives: { tex: '\\dot V_0', quantity: 'airFlow', name: 'free delivery of all fans' },
  terms: {
    n: { tex: 'n', quantity: 'count', name: 'number of fans' },
    s: { tex: 's', quantity: 'ratio', name: 'fan speed over rated speed' },
    q_r: { tex: 'q_r', quantity: 'airFlow', name: 'free air of one fan at rated speed' },
  },
  source: SOURCES.fanLaws,
});

/** How much of their free delivery the fans pull through the core. */
export const freeAirShare = defineFormula({
  id: 'airside.free-air-share',
  expr: 'V / V_0',
  gives: { tex: '\\sigma', quantity: 'percent', name: 'share of free air' },
  terms: {
    V: { tex: '\\dot V', quantity: 'airFlow', name: 'air flow through the fans' },
    V_0: { tex: '\\dot V_0', quantity: 'airFlow', name: 'free delivery of all fans' },
  },
  source: SOURCES.definition,
});

/** Swept disc of one fan. */
export const sweptDisc = defineFormula({
  id: 'airside.swept-disc',
  expr: 'pi / 4 * d^2',
  gives: { tex: 'A_d', quantity: 'area', name: 'swept disc of one fan' },
  terms: { d: { tex: 'd', quantity: 'dimension', name: 'diameter of the swept ring' } },
  source: SOURCES.definition,
});

/** Loss of core and stack at a face velocity, for the lines that repeat it elsewhere than at the balance. */
const lossAt = (loss: (faceVelocity: number) => number): NamedFunction => ({
  tex: 'R',
  says: 'pressure lost in the core and in the other cores at the face velocity in brackets: their lines repeated at that velocity; on a face partly covered, the mean over both paths',
  takes: ['faceVelocity'],
  gives: 'airPressure',
  call: loss,
});

const FREE: Term = { tex: '\\dot V_0', quantity: 'airFlow', name: 'free delivery of all fans' };
const FACE_AREA: Term = { tex: 'A', quantity: 'area', name: 'face of the core' };
const COVERED: Term = { ...SHARE, name: 'share of the face behind the shroud' };

/** Vehicle speed from which the wind alone drives what the fans move freely. One formula per loop. */
export const handoverSpeed = (loss: (faceVelocity: number) => number) =>
  defineFormula({
    id: 'airside.handover-speed',
    expr: 'sqrt(2 * R(V_0 / (A * x)) / (k * rho))',
    gives: { tex: 'v_0', quantity: 'speed', name: 'speed from which the fans are in the way' },
    terms: {
      V_0: FREE,
      A: FACE_AREA,
      x: COVERED,
      k: { tex: 'k', quantity: 'percent', name: 'share of the stagnation pressure left' },
      rho: RHO,
    },
    functions: { R: lossAt(loss) },
    source: SOURCES.definition,
  });

/** Pressure asked of the fans by a flow through the shroud, the vehicle standing. One formula per loop. */
export const askedStanding = (loss: (faceVelocity: number) => number) =>
  defineFormula({
    id: 'airside.asked-standing',
    expr: 'R(V / (A * x))',
    gives: { tex: '\\Delta p', quantity: 'airPressure', name: 'pressure lost' },
    terms: {
      V: { tex: '\\dot V', quantity: 'airFlow', name: 'air flow through the fans' },
      A: FACE_AREA,
      x: COVERED,
    },
    functions: { R: lossAt(loss) },
    source: SOURCES.definition,
  });

/** Pressure of all fans at their total flow. One formula per fan, as it reads that fan's curve. */
export const standingFanPressure = (fan: Pick<FanModel, 'rated'>) =>
  defineFormula({
    id: 'airside.standing-fan-pressure',
    expr: 's^2 * rho / rho_0 * P_1(V / (n * s))',
    gives: { tex: '\\Delta p_{fan}', quantity: 'airPressure', name: 'pressure of the fans' },
    terms: {
      s: { tex: 's', quantity: 'ratio', name: 'fan speed over rated speed' },
      rho: RHO,
      rho_0: {
        tex: '\\rho_0',
        quantity: 'density',
        name: 'density of standard air',
        fixed: STANDARD_AIR_DENSITY,
      },
      V: { tex: '\\dot V', quantity: 'airFlow', name: 'air flow through the fans' },
      n: { tex: 'n', quantity: 'count', name: 'number of fans' },
    },
    functions: {
      P_1: {
        tex: 'P_1',
        says: 'pressure of one fan at rated speed in standard air, read from its curve at the flow in brackets',
        takes: ['airFlow'],
        gives: 'airPressure',
        call: (flow) => fan.rated.value(flow),
      },
    },
    source: SOURCES.fanLaws,
  });
