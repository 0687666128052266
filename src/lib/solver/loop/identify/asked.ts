/** What a fit is asked, and what it answers. */
import type { Note } from '../../errors';
import type { Estimates } from '../../fit/estimates';
import type { Separability } from '../../fit/separability';
import type { LeastSquaresFit, Loss } from '../../fit/types';
import type { Prediction } from './prediction';
import type { Noise } from './problem';
import type { ChannelName, Channels, Drive, LogModel, ParameterName, Parameters } from './types';

export interface IdentifyRequest {
  readonly model: LogModel;
  readonly drive: Drive;
  readonly channels: Channels;
  /** Known values, and where those sought start from. */
  readonly from: Parameters;
  readonly free: readonly ParameterName[];
  /** Standard deviation of each channel, K; a channel left out is estimated. */
  readonly noise?: Noise;
  /** In standard deviations of the noise. Left out: Huber's, from 2.5 on. */
  readonly loss?: Loss;
  readonly confidence?: number;
  /** Count variance by stretches of this length, s, where that is more: for a model that is not quite the loop. */
  readonly blocks?: number;
  /** Readings not to be used: outside the span selected, marked as outliers, held out. */
  readonly leaveOut?: (channel: ChannelName, row: number) => boolean;
  readonly cancelled?: () => boolean;
}

/** What is left of one channel. */
export interface ChannelResult {
  readonly channel: ChannelName;
  readonly noise: number;
  /** Predicted less read, K, at every row; NaN where nothing was read. */
  readonly residuals: Float64Array;
  /** Rows the fit used. */
  readonly rows: Int32Array;
  /** Root mean square over those, K. */
  readonly rms: number;
  /** Correlation of a residual with the next. */
  readonly nextCorrelation: number;
}

export interface Identified {
  readonly parameters: Parameters;
  readonly free: readonly ParameterName[];
  /** Deviations and intervals of those sought, widened where the residuals hang together. */
  readonly estimates: Estimates;
  /** By how much; 1 where they do not. */
  readonly widened: number;
  readonly separability: Separability;
  readonly prediction: Prediction;
  readonly channels: readonly ChannelResult[];
  readonly fit: LeastSquaresFit;
  readonly notes: readonly Note[];
}
