/** Reading a log: text to columns, columns to channels, a rising time, marks, thinning, events. No screen. */
export { LogError, type LogFacts, type LogNote, type LogProblem } from './errors';
export { LIMITS } from './limits';
export {
  LogReader,
  PIECE,
  readLog,
  type Log,
  type LogColumn,
  type LogReaderOptions,
} from './reader';
export { readFile, readPieces, type ReadOptions } from './readStream';
export { inSI, LOG_CHANNELS, type ChannelFacts, type LogChannel } from './channels';
export { guessChannels, type Guess } from './guess';
export { logScale, quantitiesOf, type LoggedQuantity } from './units';
export { timeAxis, type TimeAxis, type TimeBreak } from './timeAxis';
export { MARK, markReadings, type MarkOptions, type Marks } from './marks';
export { firstAt, plotRows } from './downSample';
export { evenTimes, filled, meanAt } from './resample';
export { findEvents, type EventKind, type EventRule, type LogEvent } from './events';
export { groupEvents, type EventGroup } from './groups';
