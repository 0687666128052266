/** The curves of fans and front exchanger as points, for plots, and the marks on them. */
import type { AirSide, Loop } from '../loop/types';
import { intersection } from '../hydraulics/intersection';
import { spaced } from '../numerics/spaced';
import { VEHICLE_SPEED_RANGE } from './checks';
import { airModel, type AirModel } from './face';
import { fanModel } from './fan';

/** Two values that belong together, SI. */
export type Sample = readonly [x: number, y: number];

/** Vehicle speed to which a sweep is worth drawing, m/s: 90 mph. */
export const FULL_SWEEP = 90 * 0.44704;

/** Points per curve: at a plot's width no corner shows. */
const POINTS = 46;

/** Area of the face behind the shroud, m². */
const shroudedArea = ({ frontExchanger, fans }: Loop) =>
  frontExchanger.width * frontExchanger.height * fans.coverage;

/**
 * Pressure of all fans against the air flow through the shroud, m³/s and Pa, to free delivery or to the
 * flow at this vehicle speed where that is more, or to `flowMax`; negative past free delivery. Empty
 * without fans.
 */
export function fanSetCurve(loop: Loop, vehicleSpeed: number, flowMax?: number): readonly Sample[] {
  if (loop.fans.count === 0) return [];
  const model = airModel(loop);
  const area = shroudedArea(loop);
  const end =
    flowMax ?? Math.max(fanSetPoint(loop, model.at(vehicleSpeed))[0], freeDeliveryOfAll(loop));
  return spaced(0, end, POINTS).map((q) => [q, model.fan(q / area)]);
}

/** How far above the fans' shut-off pressure the stack's curve is drawn, so that it leaves the crossing clearly. */
const REACH = 1.2;

/**
 * Pressure the core and the other cores ask of the fans behind the shroud: their loss less the
 * ram pressure at this vehicle speed. Where it is negative the wind alone would drive more. Drawn to a
 * fifth above the fans' shut-off pressure, or to `flowMax` where that comes first.
 */
export function askedOfFans(loop: Loop, vehicleSpeed: number, flowMax: number): readonly Sample[] {
  const model = airModel(loop);
  const area = shroudedArea(loop);
  const ram = model.ram(vehicleSpeed);
  const highest = ram + REACH * Math.max(0, model.fan(0));
  const end =
    model.resisting(flowMax / area) > highest
      ? area * intersection(() => highest, model.resisting, flowMax / area).flow
      : flowMax;
  return spaced(0, end, POINTS).map((flow) => [flow, model.resisting(flow / area) - ram]);
}

/** Where fans and face agree behind the shroud: air flow there, m³/s, and pressure of the fans, Pa. */
export function fanSetPoint(loop: Loop, { zones }: AirSide): Sample {
  const { faceVelocity, fanPressure } = zones[0]!;
  return [faceVelocity * shroudedArea(loop), fanPressure];
}

/** Air flow of all fans against no pressure at their speed, m³/s; 0 without fans or with them standing. */
export function freeDeliveryOfAll(loop: Loop): number {
  if (loop.fans.count === 0) return 0;
  return loop.fans.count * fanModel(loop.fans, airModel(loop).density).freeDelivery;
}

/** Mean face velocity against vehicle speed: fans as they are, the same fans standing, none there. */
export interface FaceSweep {
  readonly asIs: readonly Sample[];
  readonly standing: readonly Sample[];
  /** Shroud and fans taken off. */
  readonly without: readonly Sample[];
}

/** Sample {@link FaceSweep} from standstill to `speedMax`, m/s. */
export function faceSweep(loop: Loop, speedMax: number): FaceSweep {
  const speeds = spaced(0, speedMax, POINTS);
  const along = (model: AirModel): readonly Sample[] =>
    speeds.map((speed) => [speed, model.at(speed).meanFaceVelocity]);
  return {
    asIs: along(airModel(loop)),
    standing: along(airModel(withFans(loop, { volts: 0 }))),
    without: along(airModel(withFans(loop, { count: 0 }))),
  };
}

/** Face velocity of each zone against vehicle speed; one zone only where the shroud covers the face. */
export function zoneSweep(
  loop: Loop,
  speedMax: number,
): Readonly<Partial<Record<'shrouded' | 'open', readonly Sample[]>>> {
  const model = airModel(loop);
  const speeds = spaced(0, speedMax, POINTS);
  const sides = speeds.map((speed) => ({ speed, zones: model.at(speed).zones }));
  const zone = (i: number): readonly Sample[] =>
    sides.map(({ speed, zones }) => [speed, zones[i]!.faceVelocity]);
  return { shrouded: zone(0), ...(sides[0]!.zones.length > 1 && { open: zone(1) }) };
}

/** Face velocity behind the shroud on both paths, against vehicle speed; null where the face is not partly covered. */
export function pathSweep(
  loop: Loop,
  speedMax: number,
): Readonly<Record<'covered' | 'clear', readonly Sample[]>> | null {
  const model = airModel(loop);
  const sides = spaced(0, speedMax, POINTS).map((speed) => ({ speed, at: model.at(speed) }));
  if (sides[0]!.at.zones[0]!.parts === undefined) return null;
  const path = (i: 0 | 1): readonly Sample[] =>
    sides.map(({ speed, at }) => [speed, at.zones[0]!.parts![i].faceVelocity]);
  return { covered: path(0), clear: path(1) };
}

/** Mean face velocity with fans and shroud taken off, m/s. */
export const faceVelocityWithoutFans = (loop: Loop, vehicleSpeed: number): number =>
  airModel(withFans(loop, { count: 0 })).at(vehicleSpeed).meanFaceVelocity;

/** Mean face velocity with no other core in this air, m/s. */
export const faceVelocityWithoutOthers = (loop: Loop, vehicleSpeed: number): number =>
  airModel({ ...loop, airPath: { ...loop.airPath, stackShare: 0 } }).at(vehicleSpeed)
    .meanFaceVelocity;

/** Mean face velocity with the fans at their rated voltage, m/s. */
export const faceVelocityAtRatedVolts = (loop: Loop, vehicleSpeed: number): number =>
  airModel(withFans(loop, { volts: loop.fans.ratedVolts })).at(vehicleSpeed).meanFaceVelocity;

const withFans = (loop: Loop, change: Partial<Loop['fans']>): Loop => ({
  ...loop,
  fans: { ...loop.fans, ...change },
});

/** Where the fans cease to help. */
export interface FanHandover {
  /** Vehicle speed at which running fans neither lift nor hold back, m/s. */
  readonly speed: number;
  /** Face velocity behind the shroud there: that of free delivery, m/s. */
  readonly faceVelocity: number;
  /** Loss of core and the other cores there, Pa: the ram pressure that carries it alone. */
  readonly loss: number;
}

/**
 * Vehicle speed from which running fans are in the way: the ram pressure alone then drives what the
 * fans move against no pressure. Null where fans do not run, where no ram pressure reaches the stack,
 * or where that would be beyond {@link VEHICLE_SPEED_RANGE}.
 *
 * @formula v = sqrt(2 * dp / (k * rho))
 * @symbol dp - loss of core and stack at the fans' free delivery, Pa
 * @symbol k - share of the stagnation pressure left across the stack, 1
 * @symbol rho - density of the air, kg/m^3
 * @source the balance behind the shroud with a fan pressure of zero
 */
export function fanHandover(loop: Loop): FanHandover | null {
  const free = freeDeliveryOfAll(loop);
  const k = loop.airPath.ramRecovery;
  if (!(free > 0 && k > 0)) return null;
  const { resisting, density } = airModel(loop);
  const faceVelocity = free / shroudedArea(loop);
  const loss = resisting(faceVelocity);
  const speed = Math.sqrt((2 * loss) / (k * density));
  return speed <= VEHICLE_SPEED_RANGE[1] ? { speed, faceVelocity, loss } : null;
}

/** Total flow of all fans against core and stack with the vehicle standing, m³/s; 0 without fans. */
export function standingFlow(loop: Loop): number {
  if (loop.fans.count === 0) return 0;
  return fanSetPoint(loop, airModel(loop).at(0))[0];
}

/** {@link standingFlow} over what the fans move against no pressure; null where they move nothing. */
export function freeAirShare(loop: Loop): number | null {
  const free = freeDeliveryOfAll(loop);
  return free > 0 ? standingFlow(loop) / free : null;
}
