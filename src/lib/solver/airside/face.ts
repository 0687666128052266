/** The air side of the front exchanger: what drives air through it, what holds it back, how fast it goes. */
import type { Note } from '../errors';
import { airCp } from '../air/air';
import { intersection } from '../hydraulics/intersection';
import type { LossCurve, RatedLossModel } from '../hydraulics/ratedLoss';
import type { AirSide, FaceZone, Loop } from '../loop/types';
import { checkAirSide, checkSpeed } from './checks';
import { fanModel, type FanModel } from './fan';
import { airLosses } from './losses';
import { coveredShare, overlap, riseByOthers, stackHeatOnFace } from './overlap';

/** Less than this drives nothing, Pa: far below any draught, above the smallest numbers there are. */
const STILL = 1e-12;

/** The air side of a loop, prepared: the pressures of the balance as functions of face velocity. */
export interface AirModel {
  /** The balance at a vehicle speed, m/s. */
  at(vehicleSpeed: number): AirSide;
  /** Air density at the site, kg/m³. */
  readonly density: number;
  /** Pressure lost in core and stack at a face velocity, Pa. */
  resisting(faceVelocity: number): number;
  /** Pressure of the fans behind the shroud at a face velocity there, Pa. */
  fan(faceVelocity: number): number;
  /** Share of the stagnation pressure that is left across the stack, Pa. */
  ram(vehicleSpeed: number): number;
}

/**
 * Face velocity, air flow and what comes with them at a vehicle speed.
 *
 * Two zones of the face, each with one velocity: behind shroud or swept discs (share = coverage) the
 * balance is ram + fan = core + stack; the open rest has ram = core + stack. Each balance is a falling
 * function of the velocity, bracketed, so its root is always found; without anything that drives, the
 * velocity is zero. Fans share the shrouded flow evenly.
 *
 * Other cores that cover only a share of the face divide each zone into two paths under one pressure
 * difference ({@link overlap}), in the same share behind the shroud and outside it; their heat goes
 * into the air of the covered paths, the same rise in both.
 *
 * Density is that of ambient air at the site's pressure, also inside core and fan. Core and stack are
 * rated in standard air (1.2 kg/m³); the linear part goes with viscosity, the quadratic with density.
 * Recirculation fades in a straight line from its standstill value to nothing at `recirculationFade`.
 *
 * @symbol ram - recovery · ½ ρ v², Pa
 * @throws {@link InvalidInputError} `fans.diameter` when the fans do not fit the shrouded face; other
 *   fields when they cannot be
 * @throws {@link OutOfRangeError} for a vehicle speed below zero
 * @source Momentum balance on the face; fan laws ISO 5801:2017; fading of recirculation: no source
 */
export function airSide(loop: Loop, vehicleSpeed: number): AirSide {
  return airModel(loop).at(vehicleSpeed);
}

/** Prepare {@link airSide} for many speeds, or for plots of its balance. */
export function airModel(loop: Loop): AirModel {
  checkAirSide(loop);
  const { site, frontExchanger, fans, airPath } = loop;
  const T = site.ambientTemperature;
  const { core, stack, air } = airLosses(loop);
  const density = air.rho;
  const coreCurve = core.for(air);
  const stackCurve = stack?.for(air) ?? NO_LOSS;
  const fan = fans.count > 0 ? fanModel(fans, density) : null;
  const face = frontExchanger.width * frontExchanger.height;

  const ram = (speed: number) => airPath.ramRecovery * 0.5 * density * speed * speed;
  const covered = stack ? coveredShare(airPath) : 1;
  const paths = covered < 1 ? overlap(coreCurve, stackCurve, covered) : null;
  const resisting = paths?.loss ?? ((v: number) => coreCurve.loss(v) + stackCurve.loss(v));
  const fanFlow = (v: number) => (v * face * fans.coverage) / fans.count;
  const fanPressure = (v: number) => fan?.pressure(fanFlow(v)) ?? 0;

  /**
   * Velocity at which `driving` meets core and stack, where the face is partly covered that on the
   * covered path; the pressure never exceeds `strongest`.
   */
  const balanced = (driving: (v: number) => number, strongest: number) => {
    if (!(strongest > STILL)) return 0;
    // A hair beyond the velocity that the core alone would allow, so that rounding cannot hide the root.
    const fastest = coreCurve.flow(strongest) * (1 + 1e-9);
    return paths
      ? intersection((v) => driving(paths.mean(v)), paths.pressure, fastest).flow
      : intersection(driving, resisting, fastest).flow;
  };

  const pathAt = (share: number, v: number) => ({
    share,
    faceVelocity: v,
    airMassFlow: density * v * face * share,
  });

  /** `v` as {@link balanced} gives it. */
  const zoneAt = (zone: FaceZone['zone'], share: number, v: number): FaceZone => {
    const mean = paths ? paths.mean(v) : v;
    return {
      zone,
      ...pathAt(share, mean),
      coreLoss: coreCurve.loss(v),
      stackLoss: stackCurve.loss(v),
      fanPressure: zone === 'shrouded' ? fanPressure(mean) : 0,
      fanFlow: zone === 'shrouded' && fan ? fanFlow(mean) : null,
      ...(paths && { parts: partsAt(share, v, paths.clear(v)) }),
    };
  };

  const partsAt = (share: number, v: number, clear: number): NonNullable<FaceZone['parts']> => [
    {
      covered: true,
      ...pathAt(share * covered, v),
      coreLoss: coreCurve.loss(v),
      stackLoss: stackCurve.loss(v),
      rise: 0,
    },
    {
      covered: false,
      ...pathAt(share * (1 - covered), clear),
      coreLoss: coreCurve.loss(clear),
      stackLoss: 0,
      rise: 0,
    },
  ];

  /** The heat of other cores put into the air that passes them. */
  const warmed = (zones: readonly FaceZone[], recirculation: number): readonly FaceZone[] => {
    if (!paths) return zones;
    const behind = zones.reduce((sum, { parts }) => sum + parts![0].airMassFlow, 0);
    const rise = riseByOthers(airPath, behind * airCp(T), recirculation);
    return zones.map((zone) => {
      const [first, clear] = zone.parts!;
      return { ...zone, parts: [{ ...first, rise }, clear] };
    });
  };

  return {
    density,
    resisting,
    fan: fanPressure,
    ram,
    at(vehicleSpeed) {
      checkSpeed(vehicleSpeed);
      const p = ram(vehicleSpeed);
      const behind = balanced((v) => p + fanPressure(v), p + (fan?.shutOff ?? 0));
      const zones = [zoneAt('shrouded', fans.coverage, behind)];
      if (fans.coverage < 1) {
        zones.push(
          zoneAt(
            'open',
            1 - fans.coverage,
            balanced(() => p, p),
          ),
        );
      }
      const totalMassFlow = zones.reduce((sum, z) => sum + z.airMassFlow, 0);
      const recirculation = recirculated(loop, vehicleSpeed);
      const meanFaceVelocity = zones.reduce((sum, z) => sum + z.faceVelocity * z.share, 0);
      return {
        ramPressure: p,
        density,
        zones: warmed(zones, recirculation),
        totalMassFlow,
        totalVolumeFlow: meanFaceVelocity * face,
        meanFaceVelocity,
        recirculation,
        stackRise: riseByOthers(airPath, totalMassFlow * airCp(T), recirculation),
        fanSpeedRatio: fan?.speedRatio ?? 0,
        notes: notesOf({ loop, fan, core, stack, zones, totalMassFlow }),
      };
    },
  };
}

const NO_LOSS: LossCurve = { loss: () => 0, slope: () => 0, flow: () => Infinity };

/** Share of hot outlet air that comes round again at this speed. */
function recirculated({ airPath }: Loop, speed: number): number {
  const { recirculation, recirculationFade } = airPath;
  if (speed >= recirculationFade) return speed > 0 ? 0 : recirculation;
  return recirculation * (1 - speed / recirculationFade);
}

function notesOf(state: {
  loop: Loop;
  fan: FanModel | null;
  core: RatedLossModel;
  stack: RatedLossModel | null;
  zones: readonly FaceZone[];
  totalMassFlow: number;
}): Note[] {
  const { loop, fan, core, stack, zones, totalMassFlow } = state;
  const notes: Note[] = [];
  const fanFlow = zones[0]!.fanFlow;
  if (fan && fanFlow !== null) notes.push(...fan.notesAt(fanFlow));
  const fastest = (path: 0 | 1) =>
    Math.max(...zones.map((z) => (z.parts?.[path] ?? z).faceVelocity));
  notes.push(...core.notesAt(fastest(1)), ...(stack?.notesAt(fastest(0)) ?? []));
  if (totalMassFlow === 0) {
    const heated = stackHeatOnFace(loop.airPath) > 0;
    const message = heated
      ? 'no air moves through the front exchanger; the heat of the other cores has nowhere to go and is left out'
      : 'no air moves through the front exchanger';
    notes.push({ code: 'air.still', message, quantity: 'air.totalMassFlow', value: 0 });
  }
  return notes;
}
