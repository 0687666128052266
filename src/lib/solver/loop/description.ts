/** A loop as it is described. SI: K, Pa absolute unless the name says gauge, m³/s, kg/s, W, W/K, J/K. */
import type { PumpSupply } from '../feed/pumpSupply';

export type CoolantKind = 'water' | 'ethylene-glycol' | 'propylene-glycol';

/** A liquid: kind and mass fraction of glycol (0 for water). */
export interface Coolant {
  readonly kind: CoolantKind;
  /** kg glycol per kg mixture, 0 to 0.6. */
  readonly massFraction: number;
}

export interface Site {
  readonly ambientTemperature: number;
  /** Geopotential altitude, m. */
  readonly altitude: number;
  /** 0 to 1. */
  readonly relativeHumidity: number;
}

/** How the engine makes its charge-air flow in one state, by name "duty". */
export type AirDemand =
  | {
      readonly by: 'power';
      readonly power: number;
      /** kg/J */ readonly fuelUse: number;
      readonly airFuelRatio: number;
    }
  | {
      readonly by: 'speed-density';
      readonly displacement: number;
      /** Revolutions per second. */
      readonly rotation: number;
      readonly volumetricEfficiency: number;
    }
  /** Heat into the loop stated outright; the air side is then not known. */
  | { readonly by: 'heat'; readonly heat: number };

/** One state of engine and vehicle: traffic, cruise, pull. */
export interface Duty {
  readonly id: DutyId;
  readonly vehicleSpeed: number;
  readonly air: AirDemand;
  /** Gauge pressure in the intake manifold; negative when throttled. */
  readonly manifoldGauge: number;
  /** When set, the bypass is open and this rise is what the compressor still works against, Pa. */
  readonly bypassRise: number | null;
  /** Share of the compressor's outlet air that goes round through the open bypass, 0 to 0.9. */
  readonly recirculation: number;
  readonly compressorEfficiency: number;
  /** Air into the compressor above ambient (underhood heating), K. */
  readonly intakeRise: number;
  /** Engine-bay air above ambient, K. */
  readonly bayRise: number;
}

export type DutyId = 'traffic' | 'cruise' | 'pull';

export type Arrangement =
  | 'counterflow'
  | 'parallel'
  | 'crossflow-both-unmixed'
  | 'crossflow-air-mixed'
  | 'crossflow-liquid-mixed';

/** One point (flow, loss) of a part's restriction. */
export interface LossPoint {
  readonly flow: number;
  readonly loss: number;
}

/**
 * A restriction known from rating points. One point: dp = dp_r (Q/Q_r)^exponent.
 * Two or more: dp = a Q + b Q² (least squares, a and b not negative).
 * Between fluids: linear part ∝ viscosity, quadratic ∝ density, power law ∝ rho^(n-1) mu^(2-n).
 */
export interface RatedLoss {
  readonly points: readonly LossPoint[];
  /** Used with one point only; 1 (laminar) to 2 (fully turbulent). */
  readonly exponent: number;
}

/** The two flows, inlet temperatures and heat of one rating, from which UA is backed out. */
export interface CoreRating {
  readonly heat: number;
  /** Air, kg/s. */
  readonly airMassFlow: number;
  readonly airInlet: number;
  /** Liquid, m³/s. */
  readonly liquidFlow: number;
  readonly liquidInlet: number;
  readonly coolant: Coolant;
}

/** A core as a conductance: 1/UA = 1/hA_air + 1/hA_liquid, split at the rating point. */
export interface Core {
  readonly arrangement: Arrangement;
  readonly rating: CoreRating;
  /** Share of 1/UA that lies on the air side at the rating point, 0.05 to 0.95. */
  readonly airShare: number;
  /** hA_air ∝ (air mass flow)^airExponent. */
  readonly airExponent: number;
  /** hA_liquid ∝ k (Re)^liquidExponent Pr^0.4. */
  readonly liquidExponent: number;
  readonly liquidLoss: RatedLoss;
  readonly liquidVolume: number;
  /** Heat capacity of the metal, J/K. */
  readonly metalCapacity: number;
  /** 0 to 1: share of UA that is left (fouling); 1 is clean. */
  readonly cleanliness: number;
}

export interface ChargeCooler extends Core {
  /** Charge-air pressure lost at the rated air flow, Pa; scales with flow squared. */
  readonly airLossRated: number;
}

export interface FrontExchanger extends Core {
  readonly width: number;
  readonly height: number;
  /** (face velocity m/s, Pa) points of the core's air side, at `airLossDensity`. */
  readonly airLoss: RatedLoss;
}

/** A run of hose: bore, length, sum of loss coefficients, its own narrowest fittings. */
export interface Hose {
  readonly bore: number;
  readonly length: number;
  readonly roughness: number;
  /** Number of 90° bends and the K of each, on the hose bore. */
  readonly bends: number;
  readonly bendK: number;
  /** Further loss coefficients (entrance, exit, couplings), on the hose bore. */
  readonly otherK: number;
  /** Bore of the end fittings; two of them neck the run (contraction and expansion). 0: none. */
  readonly fittingBore: number;
}

/** The four runs, in order of flow; which core is the first says {@link LiquidOrder}. */
export interface Hoses {
  /** Reservoir to pump. */
  readonly suction: Hose;
  /** Pump to the first core. */
  readonly delivery: Hose;
  /** First core to second core. */
  readonly transfer: Hose;
  /** Second core to reservoir. */
  readonly back: Hose;
}

export type HoseId = keyof Hoses;

export interface PumpPoint {
  readonly flow: number;
  readonly head: number;
}

export interface Pump {
  /** Head falls with flow; at least two points; SI (m³/s, m of the liquid pumped). */
  readonly curve: readonly PumpPoint[];
  readonly ratedVolts: number;
  /** At the pump's own terminals, running; not used where the loop's feed is described. */
  readonly volts: number;
  /** `brushed`: speed follows volts. `held-speed`: speed held down to `cutoutVolts`, then nothing. */
  readonly motor: 'brushed' | 'held-speed';
  readonly cutoutVolts: number;
  readonly arrangement: 'one' | 'two-in-series' | 'two-in-parallel';
  /** Electrical input of one pump at rated volts, W. */
  readonly electricPower: number;
  /** Share of the electrical input that ends as heat in the liquid, 0 to 1. */
  readonly heatShare: number;
  /** Net positive suction head the pump needs (NPSH3), m: an estimate for every flow. */
  readonly npshRequired: number;
  /** The same by points, one pump at rated speed; when given, it stands instead of the estimate. */
  readonly npshCurve?: readonly PumpPoint[];
  /** Where its inlet points; absent: level, the impeller's eye as high as the inlet. */
  readonly inletFaces?: 'level' | 'up' | 'down';
  /** From the inlet port to the impeller's eye along the inlet, m; absent: 0. */
  readonly eyeDepth?: number;
  /** Whether a short suction head takes head from the pump; absent: ignored, with a note. */
  readonly cavitation?: 'counted' | 'ignored';
}

export interface Reservoir {
  /** Liquid in it, m³. */
  readonly liquidVolume: number;
  /** Full geometric volume, m³; the difference is air space. */
  readonly totalVolume: number;
  readonly metalCapacity: number;
  /** Opening pressure of the cap, gauge; 0 is vented. */
  readonly capGauge: number;
  /** Highest pressure the tank is made for, gauge; absent: not stated. */
  readonly ratedGauge?: number;
  /** Liquid surface above the pump inlet, m (negative: below). */
  readonly levelAbovePump: number;
  /** Share of the return that goes straight to the outlet, 0 to 0.95. */
  readonly shortCircuit: number;
}

export interface FanPoint {
  readonly flow: number;
  readonly pressure: number;
}

export interface Fans {
  readonly count: number;
  /** One fan; pressure falls with flow; the last point is free delivery (pressure 0). */
  readonly curve: readonly FanPoint[];
  readonly ratedVolts: number;
  /** 0: switched off. */
  readonly volts: number;
  readonly diameter: number;
  /** Loss coefficient of the fan's swept ring when air is driven through it past free delivery, or when it stands still. */
  readonly drivenLoss: number;
  /** Share of the core's face behind shroud or swept discs, 0.05 to 1. */
  readonly coverage: number;
}

/** Everything the air meets besides the front exchanger's core and the fans. */
export interface AirPath {
  /** Share of the stagnation pressure of the vehicle's speed that is left across the stack. */
  readonly ramRecovery: number;
  /** Other cores in the path of this air (condenser), as loss points on the face they cover. */
  readonly stackLoss: RatedLoss;
  /** Heat they put into the air that passes the front exchanger too, W; all of it where they cover it. */
  readonly stackHeat: number;
  /** Share of the face they cover, 0 to 1; absent: all of it. */
  readonly stackShare?: number;
  /** Where they stand; absent: in front. */
  readonly stackPlace?: 'in-front' | 'behind';
  /** Share of hot outlet air that comes round again at standstill, 0 to 0.7. */
  readonly recirculation: number;
  /** Speed at which that share has faded to nothing, m/s. */
  readonly recirculationFade: number;
}

/** Heat that is not charge heat. */
export interface Soak {
  /** Engine to charge cooler, W/K, and the engine's temperature. */
  readonly engineConductance: number;
  readonly engineTemperature: number;
  /** Bay air to hoses (on the run between the cores), W/K. */
  readonly hoseConductance: number;
  /** Bay air to reservoir, W/K. */
  readonly reservoirConductance: number;
}

/** Which of the two cores the liquid passes first on its way from the pump. */
export type LiquidOrder = 'cooler-first' | 'front-first';

/** A whole loop. Order of flow: reservoir, pump, first core, second core, reservoir. */
export interface Loop {
  /** Absent: the charge cooler first, the front exchanger on the way back to the reservoir. */
  readonly liquidOrder?: LiquidOrder;
  readonly site: Site;
  readonly coolant: Coolant;
  /** Pressure lost before the compressor at full power, Pa. */
  readonly inletLoss: number;
  readonly duties: Readonly<Record<DutyId, Duty>>;
  readonly chargeCooler: ChargeCooler;
  readonly frontExchanger: FrontExchanger;
  readonly hoses: Hoses;
  readonly pump: Pump;
  /** How the pump is fed; its volts are then solved and those stated ignored. None: as stated. */
  readonly feed?: PumpSupply | null;
  readonly reservoir: Reservoir;
  readonly fans: Fans;
  readonly airPath: AirPath;
  readonly soak: Soak;
}
