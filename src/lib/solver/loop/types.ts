/**
 * What a loop is, what a solution of it is. SI throughout: K, Pa absolute unless the name says gauge,
 * m³/s, kg/s, W, W/K, J/K. Plain frozen data, no classes: it crosses to a worker as it is.
 */
import type { Note } from '../errors';
import type { PumpSupply } from '../feed/supply';

// ---------------------------------------------------------------- the loop as described

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

/** The four runs, named from where the liquid leaves to where it goes. */
export interface Hoses {
  /** Reservoir to pump. */
  readonly suction: Hose;
  /** Pump to charge cooler. */
  readonly delivery: Hose;
  /** Charge cooler to front exchanger. */
  readonly transfer: Hose;
  /** Front exchanger to reservoir. */
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
  /** Bay air to hoses (on the transfer run), W/K. */
  readonly hoseConductance: number;
  /** Bay air to reservoir, W/K. */
  readonly reservoirConductance: number;
}

/** A whole loop. Order of flow: reservoir, pump, charge cooler, front exchanger, reservoir. */
export interface Loop {
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

// ---------------------------------------------------------------- the solution

/** The charge-air side before the cooler. Null fields of the solution mean "heat stated, air not known". */
export interface ChargeState {
  readonly ambientPressure: number;
  readonly massFlow: number;
  readonly pressureRatio: number;
  readonly compressorInlet: number;
  readonly compressorOutlet: number;
  readonly airCp: number;
  /** W/K */
  readonly capacityRate: number;
  readonly manifoldPressure: number;
  /** Pressure lost before the compressor at this flow, Pa. */
  readonly inletLoss: number;
  readonly coolerAirLoss: number;
  /** Dew point of the moisture at cooler pressure, K. */
  readonly dewPoint: number;
}

/** How much of the pump's head each part takes at the operating point. */
export interface HeadShare {
  readonly part: HoseId | 'chargeCooler' | 'frontExchanger';
  readonly pressureDrop: number;
  readonly head: number;
  /** Liquid velocity in the hose and its Reynolds number; null for cores. */
  readonly velocity: number | null;
  readonly reynolds: number | null;
  /** Darcy friction factor; null for cores. */
  readonly friction: number | null;
}

export interface OperatingPoint {
  readonly flow: number;
  readonly head: number;
  readonly speedRatio: number;
  /** d(head)/d(flow) of pump set and of system, s/m². */
  readonly pumpSlope: number;
  readonly systemSlope: number;
  readonly shares: readonly HeadShare[];
  readonly npshAvailable: number;
  /** Suction head the pump needs (NPSH3) at this flow and speed, m. */
  readonly npshRequired: number;
  /** Share of the pump's head that the suction head leaves; in `head` only where cavitation is counted. */
  readonly headLeft: number;
  readonly notes: readonly Note[];
}

/** One part of the front exchanger's face: behind the shroud, or open to ram air only. */
export interface FaceZone {
  readonly zone: 'shrouded' | 'open';
  /** Share of the face. */
  readonly share: number;
  readonly faceVelocity: number;
  readonly airMassFlow: number;
  /** Lost in the core and in other cores; in a face partly covered, on the covered path. */
  readonly coreLoss: number;
  readonly stackLoss: number;
  /** Where other cores cover only a share: the two paths, covered and clear; velocity and flow of the zone are then those of both. */
  readonly parts?: readonly [covered: FacePart, clear: FacePart];
  /** Positive: the fan lifts. Negative: the fan is in the way. Zero in the open zone. */
  readonly fanPressure: number;
  /** Flow through one fan, m³/s; null in the open zone. */
  readonly fanFlow: number | null;
}

/** One of two paths through a zone of which other cores cover a share. */
export interface FacePart {
  readonly covered: boolean;
  /** Share of the whole face. */
  readonly share: number;
  readonly faceVelocity: number;
  readonly airMassFlow: number;
  readonly coreLoss: number;
  readonly stackLoss: number;
  /** Rise of its air above ambient by the other cores, K. */
  readonly rise: number;
}

export interface AirSide {
  readonly ramPressure: number;
  readonly density: number;
  readonly zones: readonly FaceZone[];
  readonly totalMassFlow: number;
  readonly totalVolumeFlow: number;
  /** Mean face velocity over the whole face. */
  readonly meanFaceVelocity: number;
  /** Recirculated share at this speed. */
  readonly recirculation: number;
  /** Rise of the air by other cores, over the whole face, K. */
  readonly stackRise: number;
  readonly fanSpeedRatio: number;
  readonly notes: readonly Note[];
}

/** One core at the solution. */
export interface CoreState {
  readonly UA: number;
  readonly hA_air: number;
  readonly hA_liquid: number;
  readonly C_air: number;
  readonly C_liquid: number;
  readonly NTU: number;
  readonly Cr: number;
  readonly effectiveness: number;
  readonly airIn: number;
  readonly airOut: number;
  readonly liquidIn: number;
  readonly liquidOut: number;
  /** Into the liquid, W (charge cooler) or out of it (front exchanger). */
  readonly heat: number;
  readonly notes: readonly Note[];
}

/** The front exchanger with its zones; `UA` … `effectiveness` there are those of each zone. */
export interface FrontState extends Omit<CoreState, 'NTU' | 'Cr' | 'effectiveness'> {
  readonly zones: readonly (Pick<
    CoreState,
    'UA' | 'C_air' | 'C_liquid' | 'NTU' | 'Cr' | 'effectiveness' | 'heat'
  > & {
    readonly share: number;
  })[];
  /** Heat per kelvin between liquid inlet and ambient: G = heat / (liquidIn - ambient), W/K. */
  readonly conductanceToAmbient: number;
  /** Heat / (C_liquid (liquidIn - airIn)): the share of the possible drop that the liquid makes. */
  readonly liquidEffectiveness: number;
}

/** Properties used for the whole loop, at the reservoir-outlet temperature. */
export interface LiquidState {
  readonly temperature: number;
  readonly density: number;
  readonly specificHeat: number;
  readonly viscosity: number;
  readonly conductivity: number;
  readonly vapourPressure: number;
}

/** Every heat of the loop; positive into the liquid. Sums to zero at balance. */
export interface HeatLedger {
  readonly charge: number;
  readonly engineSoak: number;
  readonly hoseSoak: number;
  readonly reservoirSoak: number;
  readonly pump: number;
  readonly frontExchanger: number;
}

/** Temperatures by place, K, in order of flow. */
export interface LoopTemperatures {
  readonly reservoir: number; // mean of the tank
  readonly pumpIn: number; // leaving the tank
  readonly chargeCoolerIn: number;
  readonly chargeCoolerOut: number;
  readonly frontIn: number;
  readonly frontOut: number; // = arriving at the tank
}

export interface Margins {
  /** NPSH available less required, m. */
  readonly suction: number;
  /** Boiling point at the hottest place less its temperature, K. */
  readonly boiling: number;
  /** Reservoir-outlet temperature less freezing point, K. */
  readonly freezing: number;
  readonly boilingPoint: number;
  readonly freezingPoint: number;
}

/**
 * Where the loop settles.
 * `balanced`: a temperature was found with relative energy residual below 1e-9.
 * `boils` / `freezes`: heat still flows in (out) at the boiling (freezing) point, so no liquid balance exists;
 *   the state given is the one at that limit and `residual` is the heat left over, W. Also `boils`: the heats
 *   balance, but the hottest liquid is above the boiling point (`margins.boiling` below zero).
 * `no-flow`: the pump moves nothing; each part sits at its own temperature and the charge is not cooled.
 */
export interface SteadySolution {
  readonly status: 'balanced' | 'boils' | 'freezes' | 'no-flow';
  readonly duty: DutyId;
  readonly charge: ChargeState | null;
  /** Charge air after the cooler, K; null when heat was stated outright. */
  readonly chargeOut: number | null;
  readonly liquid: LiquidState;
  readonly temperatures: LoopTemperatures;
  readonly operating: OperatingPoint;
  readonly air: AirSide;
  readonly chargeCooler: CoreState | null;
  readonly front: FrontState;
  readonly ledger: HeatLedger;
  /** Sum of the ledger, W, and over the larger of heat in and out. */
  readonly residual: number;
  readonly relativeResidual: number;
  readonly margins: Margins;
  readonly notes: readonly Note[];
}

// ---------------------------------------------------------------- warm-up

/** One segment of a drive schedule. */
export interface Segment {
  readonly duty: DutyId;
  readonly duration: number;
  /** Overrides the duty's vehicle speed. */
  readonly vehicleSpeed?: number;
  /** Overrides the charge heat, W. */
  readonly heat?: number;
}

/** States of the transient, K: liquid node of each core holds the liquid leaving it. */
export interface TransientState {
  readonly reservoir: number;
  readonly chargeLiquid: number;
  readonly chargeMetal: number;
  readonly frontLiquid: number;
  readonly frontMetal: number;
}

export interface WarmUpRequest {
  readonly schedule: readonly Segment[];
  readonly start: TransientState;
  /** Limit on the charge temperature for "time to limit", K. */
  readonly chargeLimit: number;
  /** Recovered when the reservoir is within this of its value before the hardest segment, K. */
  readonly recoveryBand: number;
  readonly rtol?: number;
  /** Evenly spaced points of the history, besides both sides of every edge; 600 unless told. */
  readonly points?: number;
}

/** Capacity of heat by part, J/K. */
export interface ThermalMass {
  readonly part:
    | 'reservoirLiquid'
    | 'reservoirMetal'
    | 'chargeLiquid'
    | 'chargeMetal'
    | 'frontLiquid'
    | 'frontMetal'
    | 'hoses';
  readonly capacity: number;
  readonly liquidVolume: number;
}

/** Parallel arrays over time, equal length. NaN in `chargeOut` where heat was stated outright. */
export interface WarmUpHistory {
  readonly t: Float64Array;
  readonly reservoir: Float64Array;
  readonly chargeLiquid: Float64Array;
  readonly chargeMetal: Float64Array;
  readonly frontLiquid: Float64Array;
  readonly frontMetal: Float64Array;
  readonly chargeOut: Float64Array;
  readonly heatIn: Float64Array;
  readonly heatOut: Float64Array;
  readonly flow: Float64Array;
}

/** The segment a schedule is judged by. */
export interface HardestSegment {
  /** Its place in the schedule, from 0. */
  readonly index: number;
  readonly from: number;
  readonly to: number;
  /** Reservoir as it began, and the highest until the segment after it ends, K. */
  readonly before: number;
  readonly peak: number;
}

export interface WarmUpSolution {
  /**
   * `completed`, or `boils` (`freezes`) when the hottest liquid reached the boiling point (the liquid
   * leaving the reservoir its freezing point) at `endTime`.
   */
  readonly status: 'completed' | 'boils' | 'freezes';
  readonly endTime: number;
  readonly history: WarmUpHistory;
  readonly segmentStarts: readonly number[];
  readonly end: TransientState;
  readonly peakCharge: { readonly t: number; readonly value: number } | null;
  readonly peakReservoir: { readonly t: number; readonly value: number };
  /** First time the charge passes the limit; null: never in this schedule. */
  readonly timeToLimit: number | null;
  /** The segment with the most heat per second; null where no time passed. */
  readonly hardest: HardestSegment | null;
  /** From the end of the hardest segment until the reservoir is back; null: not in this schedule. */
  readonly recoveryTime: number | null;
  /** Heat gathered over the run, J: all but the front exchanger's, and the front exchanger's. */
  readonly heatIn: number;
  readonly heatOut: number;
  readonly thermalMass: readonly ThermalMass[];
  /** Heat in less heat out less heat stored, over heat in: how well the integration closed. */
  readonly energyError: number;
  readonly steps: number;
  readonly rejected: number;
  readonly notes: readonly Note[];
}
