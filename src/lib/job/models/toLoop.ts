/** From values to the loop that the solver takes. */
import { ALUMINIUM_CP } from '$lib/solver/aluminium';
import type { GeometryCore } from '$lib/solver/cores/geometry/fromGeometry';
import type {
  AirDemand,
  AirPath,
  Arrangement,
  Core,
  Duty,
  DutyId,
  Hose,
  HoseId,
  LiquidOrder,
  Loop,
  Pump,
  RatedLoss,
  Segment,
} from '$lib/solver/loop/types';
import { withMeter } from '$lib/solver/instruments/meter/meterInLoop';
import type { Cell } from '../check';
import { measuredOrNull } from './coreMeasures';
import { coolantOf, ratingOf } from './rating';
import { toFeed } from './toFeed';
import { toMeter } from './toMeter';
import type { Values } from '../values';

/** The loop, with the flow meter's loss where one is fitted. */
export function toLoop(values: Values): Loop {
  const loop = describedLoop(values);
  const { fitted, run, loss } = toMeter(values);
  return fitted ? withMeter(loop, run, loss) : loop;
}

/** Build the loop. Values are complete (a default stands where nothing is given), so nothing can lack. */
function describedLoop(values: Values): Loop {
  const si = (path: string) => values[path]!.si!;
  const choice = (path: string) => values[path]!.choice!;
  const rows = (path: string) => values[path]!.rows!;

  const loss = (path: string, flow: string): RatedLoss => ({
    points: rows(path).map((row) => ({ flow: number(row[flow]), loss: number(row.loss) })),
    exponent: si(`${path}Exponent`),
  });

  const core = (at: 'chargeCooler' | 'frontExchanger'): Core => ({
    arrangement: choice(`${at}.arrangement`) as Arrangement,
    rating: ratingOf(values, at),
    airShare: si(`${at}.airShare`),
    airExponent: si(`${at}.airExponent`),
    liquidExponent: si(`${at}.liquidExponent`),
    liquidLoss: loss(`${at}.liquidLoss`, 'flow'),
    liquidVolume: si(`${at}.liquidVolume`),
    metalCapacity: si(`${at}.metal`) * ALUMINIUM_CP,
    cleanliness: si(`${at}.cleanliness`),
  });
  const charge = measuredOrNull(values, 'chargeCooler');
  const front = measuredOrNull(values, 'frontExchanger');

  const air = (at: string): AirDemand => {
    switch (choice(`${at}.by`)) {
      case 'heat':
        return { by: 'heat', heat: si(`${at}.heat`) };
      case 'speed-density':
        return {
          by: 'speed-density',
          displacement: si('engine.displacement'),
          rotation: si(`${at}.rotation`),
          volumetricEfficiency: si(`${at}.volumetricEfficiency`),
        };
      default:
        return {
          by: 'power',
          power: si(`${at}.power`),
          fuelUse: si(`${at}.fuelUse`),
          airFuelRatio: si(`${at}.airFuelRatio`),
        };
    }
  };

  const duty = (id: DutyId): Duty => {
    const at = `duty.${id}`;
    return {
      id,
      vehicleSpeed: si(`${at}.speed`),
      air: air(at),
      manifoldGauge: si(`${at}.manifold`),
      bypassRise: choice(`${at}.bypass`) === 'open' ? si(`${at}.bypassRise`) : null,
      recirculation: choice(`${at}.bypass`) === 'open' ? si(`${at}.recirculation`) : 0,
      compressorEfficiency: si(`${at}.compressorEfficiency`),
      intakeRise: si(`${at}.intakeRise`),
      bayRise: si(`${at}.bayRise`),
    };
  };

  const hose = (id: HoseId): Hose => ({
    bore: si(`hose.${id}.bore`),
    length: si(`hose.${id}.length`),
    roughness: si(`hose.${id}.roughness`),
    bends: si(`hose.${id}.bends`),
    bendK: si(`hose.${id}.bendK`),
    otherK: si(`hose.${id}.otherK`),
    fittingBore: si(`hose.${id}.fittingBore`),
  });

  return {
    liquidOrder: choice('loop.liquidOrder') as LiquidOrder,
    site: {
      ambientTemperature: si('site.ambient'),
      altitude: si('site.altitude'),
      relativeHumidity: si('site.humidity'),
    },
    coolant: coolantOf(values, 'coolant'),
    inletLoss: si('engine.inletLoss'),
    duties: { traffic: duty('traffic'), cruise: duty('cruise'), pull: duty('pull') },
    chargeCooler: {
      ...core('chargeCooler'),
      ...(charge && thermalOf(charge)),
      airLossRated: charge ? charge.air.pressureDrop : si('chargeCooler.airLossRated'),
    },
    frontExchanger: {
      ...core('frontExchanger'),
      ...(front && thermalOf(front)),
      width: si('frontExchanger.width'),
      height: si('frontExchanger.height'),
      airLoss: front
        ? { points: front.airLoss, exponent: si('frontExchanger.airLossExponent') }
        : loss('frontExchanger.airLoss', 'velocity'),
    },
    hoses: {
      suction: hose('suction'),
      delivery: hose('delivery'),
      transfer: hose('transfer'),
      back: hose('back'),
    },
    pump: {
      curve: rows('pump.curve').map((row) => ({ flow: number(row.flow), head: number(row.head) })),
      ratedVolts: si('pump.ratedVolts'),
      volts: si('pump.volts'),
      motor: choice('pump.motor') as Pump['motor'],
      cutoutVolts: si('pump.cutoutVolts'),
      arrangement: choice('pump.arrangement') as Pump['arrangement'],
      electricPower: si('pump.electricPower'),
      heatShare: si('pump.heatShare'),
      npshRequired: si('pump.npshRequired'),
      ...(choice('pump.npshBy') === 'points' && {
        npshCurve: rows('pump.npshCurve').map((row) => ({
          flow: number(row.flow),
          head: number(row.head),
        })),
      }),
      inletFaces: choice('pump.inletFaces') as Pump['inletFaces'],
      eyeDepth: si('pump.eyeDepth'),
      cavitation: choice('pump.cavitation') as Pump['cavitation'],
    },
    feed: choice('pump.voltsFrom') === 'feed' ? toFeed(values) : null,
    reservoir: {
      liquidVolume: si('reservoir.volume'),
      totalVolume: si('reservoir.totalVolume'),
      metalCapacity: si('reservoir.metal') * ALUMINIUM_CP,
      capGauge: choice('reservoir.vent') === 'vented' ? 0 : si('reservoir.cap'),
      ratedGauge: si('reservoir.ratedGauge'),
      levelAbovePump: si('reservoir.level'),
      shortCircuit: si('reservoir.shortCircuit'),
    },
    fans: {
      count: si('fans.count'),
      curve: rows('fans.curve').map((row) => ({
        flow: number(row.flow),
        pressure: number(row.pressure),
      })),
      ratedVolts: si('fans.ratedVolts'),
      volts: si('fans.volts'),
      diameter: si('fans.diameter'),
      drivenLoss: si('fans.drivenLoss'),
      coverage: si('fans.coverage'),
    },
    airPath: {
      ramRecovery: si('airPath.ramRecovery'),
      stackLoss: loss('airPath.stackLoss', 'velocity'),
      stackHeat: si('airPath.stackHeat'),
      stackShare: si('airPath.stackShare'),
      stackPlace: choice('airPath.stackPlace') as AirPath['stackPlace'],
      recirculation: si('airPath.recirculation'),
      recirculationFade: si('airPath.recirculationFade'),
    },
    soak: {
      engineConductance: si('soak.engineConductance'),
      engineTemperature: si('soak.engineTemperature'),
      hoseConductance: si('soak.hoseConductance'),
      reservoirConductance: si('soak.reservoirConductance'),
    },
  };
}

/** What measures say in place of a rating. */
const thermalOf = ({
  rating,
  airShare,
  airExponent,
  liquidExponent,
  liquidLoss,
}: GeometryCore) => ({
  rating,
  airShare,
  airExponent,
  liquidExponent,
  liquidLoss,
});

/** A cell that the table's check has found to be a number. */
const number = (cell: Cell | undefined) => cell as number;

/** The drive schedule. */
export function toSchedule(values: Values): Segment[] {
  return values.schedule!.rows!.map((row) => ({
    duty: row.duty as DutyId,
    duration: number(row.duration),
    ...(row.speed === null ? {} : { vehicleSpeed: number(row.speed) }),
    ...(row.heat === null ? {} : { heat: number(row.heat) }),
  }));
}

/** How the schedule starts. */
export type Start =
  | { readonly kind: 'cold' }
  | { readonly kind: 'cruise' }
  | { readonly kind: 'given'; readonly temperature: number };

export function toStart(values: Values): Start {
  const kind = values['start.kind']!.choice as Start['kind'];
  return kind === 'given' ? { kind, temperature: values['start.temperature']!.si! } : { kind };
}

/** Limits the findings are measured against, SI. */
export interface Limits {
  readonly charge: number;
  readonly reservoir: number;
  readonly recoveryBand: number;
}

export const toLimits = (values: Values): Limits => ({
  charge: values['limits.charge']!.si!,
  reservoir: values['limits.reservoir']!.si!,
  recoveryBand: values['limits.recoveryBand']!.si!,
});
