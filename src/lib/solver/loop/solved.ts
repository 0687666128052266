/** What the balance of a loop consists of. SI, as in the description. */
import type { Note } from '../errors';
import type { DutyId, HoseId } from './description';

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

/** Temperatures by place, K; in order of flow where the charge cooler is the first core. */
export interface LoopTemperatures {
  readonly reservoir: number; // mean of the tank
  readonly pumpIn: number; // leaving the tank
  readonly chargeCoolerIn: number;
  readonly chargeCoolerOut: number;
  readonly frontIn: number;
  readonly frontOut: number;
  readonly returning: number; // arriving at the tank, from the second core
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
