/** What a model says the log would read. */
import type { ChannelName, Parameters } from './types';

/** Every channel at every row, K. */
export type Prediction = Readonly<Record<ChannelName, Float64Array>>;

export type Simulator = (p: Parameters) => Prediction;
