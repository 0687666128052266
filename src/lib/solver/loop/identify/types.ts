/** Words of finding a loop from its log: what drove it, what was read, what is sought. SI throughout. */
import type { Quantity } from '../../quantity';
import type { Arrangement, Soak } from '../types';

/** The four masses the liquid passes in a {@link RingModel}, each well mixed. */
export type Node = 'charge' | 'reservoir' | 'pump' | 'front';

/** In which order it passes them; the last leads to the first. */
export type Order = readonly [Node, Node, Node, Node];

/** As the loop of the sheets is plumbed. */
export const PLUMBED: Order = ['reservoir', 'pump', 'charge', 'front'];

export interface ParameterFacts {
  readonly name: string;
  readonly tex: string;
  readonly quantity: Quantity;
  /** A fit does not leave these, SI. */
  readonly range: readonly [low: number, high: number];
}

const capacity = { quantity: 'heatCapacity', range: [100, 1e7] } as const;
const start = { quantity: 'temperature', range: [200, 500] } as const;

/** Everything the model holds; each may be known or sought. */
export const PARAMETERS = {
  frontUA: {
    name: 'UA of the front exchanger',
    tex: 'UA_f',
    quantity: 'conductance',
    range: [1, 1e5],
  },
  frontShare: {
    name: 'Effectiveness of the front exchanger',
    tex: '\\varepsilon_f',
    quantity: 'ratio',
    range: [1e-4, 1],
  },
  chargeUA: {
    name: 'UA of the charge cooler',
    tex: 'UA_c',
    quantity: 'conductance',
    range: [1, 1e5],
  },
  chargeShare: {
    name: 'Effectiveness of the charge cooler',
    tex: '\\varepsilon_c',
    quantity: 'ratio',
    range: [1e-4, 1],
  },
  capacityRate: {
    name: 'Capacity rate of the liquid',
    tex: 'C',
    quantity: 'conductance',
    range: [10, 5e4],
  },
  flowScale: {
    name: 'True flow over logged flow',
    tex: 'k_V',
    quantity: 'ratio',
    range: [0.05, 20],
  },
  heatScale: { name: 'True heat load over stated', tex: 'k_Q', quantity: 'ratio', range: [0, 20] },
  pumpHeat: { name: 'Heat from the pump', tex: 'Q_p', quantity: 'heat', range: [0, 1e4] },
  soakHeat: {
    name: 'Soak into the charge cooler',
    tex: 'Q_s',
    quantity: 'heat',
    range: [-1e4, 1e5],
  },
  chargeCapacity: { name: 'Thermal mass of the charge cooler', tex: 'M_c', ...capacity },
  reservoirCapacity: { name: 'Thermal mass of the reservoir', tex: 'M_t', ...capacity },
  pumpCapacity: { name: 'Thermal mass of pump and hoses', tex: 'M_h', ...capacity },
  frontCapacity: { name: 'Thermal mass of the front exchanger', tex: 'M_f', ...capacity },
  chargeStart: { name: 'Charge cooler at the start', tex: 'T_{c,0}', ...start },
  reservoirStart: { name: 'Reservoir at the start', tex: 'T_{t,0}', ...start },
  pumpStart: { name: 'Pump and hoses at the start', tex: 'T_{h,0}', ...start },
  frontStart: { name: 'Front exchanger at the start', tex: 'T_{f,0}', ...start },
} as const satisfies Record<string, ParameterFacts>;

export type ParameterName = keyof typeof PARAMETERS;
export type Parameters = Readonly<Record<ParameterName, number>>;

/** How the heat comes in at the charge cooler. */
export type ChargeForm =
  /** Heat stated row by row, times `heatScale`. */
  | { readonly by: 'heat' }
  /** `chargeShare` of what the air could give, C_air (T_air - T_liquid,in), times `heatScale` on C_air. */
  | { readonly by: 'effectiveness' }
  /** The same share from `chargeUA` by ε-NTU. */
  | { readonly by: 'UA'; readonly arrangement: Arrangement };

/** How it goes out at the front exchanger. */
export type FrontForm =
  /** `frontUA` times the liquid's outlet above ambient. */
  | { readonly by: 'outlet' }
  /** `frontShare` of what the smaller stream could take, by the liquid's inlet. */
  | { readonly by: 'effectiveness' }
  /** The same share from `frontUA` by ε-NTU. */
  | { readonly by: 'UA'; readonly arrangement: Arrangement };

export interface RingModel {
  readonly order: Order;
  readonly charge: ChargeForm;
  readonly front: FrontForm;
}

/**
 * The loop of the sheets as the warm-up follows it: reservoir, liquid and metal of each core, hoses
 * between them; soak where it goes in. Both conductances follow their flows: of what the description
 * gives row by row they are one share throughout.
 */
export interface NodeModel {
  readonly kind: 'nodes';
  readonly charge:
    { readonly by: 'heat' } | { readonly by: 'UA'; readonly arrangement: Arrangement };
  readonly front: { readonly arrangement: Arrangement };
  readonly soak: Soak;
  /** Whether the liquid passes the front exchanger before the charge cooler. */
  readonly frontFirst: boolean;
  /** Share of the returning liquid that goes straight to the reservoir's outlet. */
  readonly shortCircuit: number;
  /** Share of a core's thermal mass that is metal. */
  readonly metalShare: { readonly charge: number; readonly front: number };
  /**
   * Liquid in the run between the cores and in that back to the reservoir, J/K; that before the first
   * core is `pumpCapacity`, a share of it before the pump.
   */
  readonly hoses: {
    readonly transfer: number;
    readonly back: number;
    readonly suctionShare: number;
  };
  /** The parameters `chargeUA` and `frontUA` hold where the shapes of {@link Drive} are 1. */
  readonly described: { readonly chargeUA: number; readonly frontUA: number };
}

export type LogModel = RingModel | NodeModel;

/** What drove the loop, row by row. A row's values hold until the next, or change evenly towards it. */
export interface Drive {
  /** Rising, s. */
  readonly t: Float64Array;
  readonly between: 'held' | 'linear';
  readonly ambient: Float64Array;
  /** Stated heat into the charge cooler, W. */
  readonly heat?: Float64Array;
  /** Charge air before the cooler, K, and its capacity rate, W/K. */
  readonly chargeAirIn?: Float64Array;
  readonly chargeAirRate?: Float64Array;
  /** Capacity rate of the air through the front exchanger, W/K; with `effectiveness`: of the smaller stream. */
  readonly frontAirRate?: Float64Array;
  /** Capacity rate of the liquid by the logged flow, W/K; else the parameter `capacityRate` holds throughout. */
  readonly liquidRate?: Float64Array;
  /** Only a {@link NodeModel} asks for the rest. Air of the engine bay, K. */
  readonly bay?: Float64Array;
  /** Described UA of each core at the row's flows, over that at the flows the parameters stand for. */
  readonly chargeShape?: Float64Array;
  readonly frontShape?: Float64Array;
  /** Described hA of each core's air side; of the charge cooler's liquid side where heat is stated, W/K. */
  readonly chargeFilm?: Float64Array;
  readonly frontFilm?: Float64Array;
  /**
   * Power with which the front exchanger's UA and film at the row follow `frontUA`: 1 for one air over the
   * whole face, off 1 where zones have airs of their own.
   */
  readonly frontPower?: Float64Array;
  readonly frontFilmPower?: Float64Array;
}

/** What may have been logged: the liquid leaving each mass, into the front exchanger, and the charge air after the cooler. */
export type ChannelName = Node | 'frontIn' | 'chargeAirOut';

export type Channels = Readonly<Partial<Record<ChannelName, Float64Array>>>;
