/** What can be read on a loop: names, how well it is usually read, how far the model is trusted. */
import type { Interval } from '../errors';
import type { Quantity } from '../quantity';
import type { Channel, DutyChannel, OnceChannel } from './types';

export interface ChannelFacts {
  readonly name: string;
  readonly tex: string;
  readonly quantity: Quantity;
  /** ± of a usual instrument, SI, and as a share of the reading; the larger counts. Two standard deviations. */
  readonly plusMinus: number;
  readonly plusMinusShare: number;
  /** Own error of the model there: SI, and as a share of the value predicted. One standard deviation. */
  readonly model: number;
  readonly modelShare: number;
  /** Whether a night's ambient and the size of the cores move it. */
  readonly thermal: boolean;
  /** What could be read at all, SI; a reading of unknown cause is taken as equally likely within. */
  readonly span: Interval;
  /** Minutes it costs, hands on (common practice, no source). */
  readonly minutes: number;
  /** How it is taken, as an instruction. */
  readonly how: string;
}

const temperature = {
  quantity: 'temperature',
  plusMinus: 1.7, // 3 °F
  plusMinusShare: 0,
  model: 0.5,
  modelShare: 0,
  thermal: true,
  span: [270, 400],
} as const;

/** Instruments and minutes are common practice, no source; the model's errors are our own statement. */
export const DUTY_CHANNELS: Readonly<Record<DutyChannel, ChannelFacts>> = {
  reservoir: {
    ...temperature,
    name: 'Reservoir',
    tex: 'T_t',
    minutes: 2,
    how: 'Hand-held thermometer in the tank, or its logged probe.',
  },
  frontIn: {
    ...temperature,
    name: 'Liquid into the front exchanger',
    tex: 'T_{f,in}',
    minutes: 5,
    how: 'Contact probe on the metal inlet, wrapped.',
  },
  frontOut: {
    ...temperature,
    name: 'Liquid out of the front exchanger',
    tex: 'T_{f,out}',
    minutes: 5,
    how: 'Contact probe on the metal outlet, wrapped.',
  },
  flow: {
    name: 'Flow by its meter',
    tex: '\\dot V',
    quantity: 'volumeFlow',
    plusMinus: 6e-6,
    plusMinusShare: 0.08,
    model: 3e-6,
    modelShare: 0.06,
    thermal: false,
    span: [0, 1.5e-3],
    minutes: 6,
    how: 'Flow meter, mean over half a minute.',
  },
  bucket: {
    name: 'Flow by bucket and watch',
    tex: '\\dot V_b',
    quantity: 'volumeFlow',
    plusMinus: 6e-6,
    plusMinusShare: 0.06,
    model: 3e-6,
    modelShare: 0.06,
    thermal: false,
    span: [0, 1.5e-3],
    minutes: 20,
    how: 'Return hose into a measured bucket, pump running, watch in hand.',
  },
  volts: {
    name: 'Volts at the pump’s plug',
    tex: 'U',
    quantity: 'voltage',
    plusMinus: 0.1,
    plusMinusShare: 0,
    model: 0.12,
    modelShare: 0,
    thermal: false,
    span: [0, 16],
    minutes: 4,
    how: 'Meter on the plug’s two pins, pump running, hot.',
  },
  amps: {
    name: 'Amps of the pump',
    tex: 'I',
    quantity: 'current',
    plusMinus: 0.2,
    plusMinusShare: 0.04,
    model: 0.1,
    modelShare: 0.07,
    thermal: false,
    span: [0, 40],
    minutes: 4,
    how: 'Clamp on the feed, zeroed beside it.',
  },
  pumpRise: {
    name: 'Pressure across the pump',
    tex: '\\Delta p_p',
    quantity: 'pressureDrop',
    plusMinus: 1500,
    plusMinusShare: 0.03,
    model: 500,
    modelShare: 0.07,
    thermal: false,
    span: [0, 2.5e5],
    minutes: 15,
    how: 'Gauge on a tee at the outlet, less what the tank holds.',
  },
  charge: {
    ...temperature,
    name: 'Charge air to the engine',
    tex: 'T_3',
    model: 1,
    span: [270, 480],
    minutes: 1,
    how: 'Intake temperature from the engine’s own data.',
  },
  faceAir: {
    ...temperature,
    name: 'Air at the core’s face',
    tex: 'T_{face}',
    model: 1,
    minutes: 8,
    how: 'Thin probe a finger ahead of the fins, shaded, at several places.',
  },
};

export const ONCE_CHANNELS: Readonly<Record<OnceChannel, ChannelFacts>> = {
  soak: {
    name: 'Widest disagreement of the probes after a night',
    tex: '\\Delta T_{soak}',
    quantity: 'temperatureDifference',
    plusMinus: 1.1, // 2 °F
    plusMinusShare: 0,
    model: 0.3,
    modelShare: 0,
    thermal: false,
    span: [0, 40],
    minutes: 3,
    how: 'Key on, engine cold after a night: all temperatures must agree.',
  },
  paper: {
    name: 'Paper held to the grille',
    tex: 's',
    quantity: 'ratio',
    plusMinus: 0.5,
    plusMinusShare: 0,
    model: 0.1,
    modelShare: 0,
    thermal: false,
    span: [-1.5, 1.5],
    minutes: 2,
    how: 'Fans on, standing: the sheet is held (1), drops (0) or is blown off (−1).',
  },
  volume: {
    name: 'Share of the tank that takes part',
    tex: 'x_V',
    quantity: 'percent',
    plusMinus: 0.2,
    plusMinusShare: 0,
    model: 0.05,
    modelShare: 0,
    thermal: false,
    span: [0, 1.2],
    minutes: 30,
    how: 'Time a warm-up: heat over rise gives the volume that took part.',
  },
};

export const CHANNELS: Readonly<Record<Channel, ChannelFacts>> = {
  ...DUTY_CHANNELS,
  ...ONCE_CHANNELS,
};

/** Minutes more that a reading takes on the road than beside the vehicle (common practice). */
export const ROAD_MINUTES = 12;

/** The usual ± of a channel at a reading, SI, two standard deviations. */
export const usualPlusMinus = (channel: Channel, value: number): number => {
  const { plusMinus, plusMinusShare } = CHANNELS[channel];
  return Math.max(plusMinus, plusMinusShare * Math.abs(value));
};
