/** The pure half of every sheet: what the command line prints and the tests walk. No screen. */
import { content as loopBalance } from './loop-balance/content';
import { content as pumpAndRestriction } from './pump-and-restriction/content';
import { content as fansAndFaceAirflow } from './fans-and-face-airflow/content';
import { content as exchangers } from './exchangers/content';
import { content as pumpFeed } from './pump-feed/content';
import { content as runaway } from './runaway/content';
import { content as reservoir } from './reservoir/content';
import { content as suctionMargin } from './suction-margin/content';
import { content as warmUpAndRecovery } from './warm-up-and-recovery/content';
import { content as diagnosis } from './diagnosis/content';
import { content as flowMeter } from './flow-meter/content';
import { content as probe } from './probe/content';
import { content as coreFromMeasures } from './core-from-measures/content';
import { content as log } from './log/content';
import { content as howSure } from './how-sure/content';
import { content as instruments } from './instruments/content';
import { content as upgrades } from './upgrades/content';
import { content as whatItTakes } from './what-it-takes/content';
import type { ContentOf } from './types';

/** By slug, in the order of the job folder. */
export const CONTENTS: Readonly<Record<string, ContentOf>> = {
  'loop-balance': loopBalance,
  'pump-and-restriction': pumpAndRestriction,
  'fans-and-face-airflow': fansAndFaceAirflow,
  exchangers,
  reservoir,
  'warm-up-and-recovery': warmUpAndRecovery,
  'suction-margin': suctionMargin,
  'pump-feed': pumpFeed,
  runaway,
  diagnosis,
  probe,
  'flow-meter': flowMeter,
  'core-from-measures': coreFromMeasures,
  log,
  instruments,
  'how-sure': howSure,
  upgrades,
  'what-it-takes': whatItTakes,
};
