/** The sheets in the order of the job folder, by their cards alone: cheap to import anywhere. */
import { about as loopBalance } from './loop-balance/about';
import { about as pumpAndRestriction } from './pump-and-restriction/about';
import { about as fansAndFaceAirflow } from './fans-and-face-airflow/about';
import { about as exchangers } from './exchangers/about';
import { about as reservoir } from './reservoir/about';
import { about as suctionMargin } from './suction-margin/about';
import { about as warmUpAndRecovery } from './warm-up-and-recovery/about';
import { about as pumpFeed } from './pump-feed/about';
import { about as runaway } from './runaway/about';
import { about as diagnosis } from './diagnosis/about';
import { about as flowMeter } from './flow-meter/about';
import { about as probe } from './probe/about';
import { about as coreFromMeasures } from './core-from-measures/about';
import { about as log } from './log/about';
import { about as howSure } from './how-sure/about';
import { about as instruments } from './instruments/about';
import { about as upgrades } from './upgrades/about';
import { about as whatItTakes } from './what-it-takes/about';
import type { SheetAbout } from './types';

export const SHEETS: readonly SheetAbout[] = [
  loopBalance,
  pumpAndRestriction,
  fansAndFaceAirflow,
  exchangers,
  reservoir,
  warmUpAndRecovery,
  suctionMargin,
  pumpFeed,
  runaway,
  diagnosis,
  probe,
  flowMeter,
  coreFromMeasures,
  log,
  instruments,
  howSure,
  upgrades,
  whatItTakes,
];
