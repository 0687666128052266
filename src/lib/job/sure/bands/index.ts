/** Every source of bands, for the thread that works them out. */
import { FACE, FANS } from './air';
import { AMBIENT_DAYS } from './ambient';
import { BALANCE } from './balance';
import type { BandSource } from './bandSource';
import { DRIVE, EVENTS } from './drive';
import { EXCHANGERS } from './exchangers';
import { FEED } from './feed';
import { INVERSION } from './inversion';
import { MEASURES } from './measures';
import { HEADS, HEAD_SHARES, PUMP_CHOICES } from './pump';
import { RESERVOIR } from './reservoir';
import { RUNAWAY_BRANCH, RUNAWAY_HEATS } from './runaway';
import { SUCTION } from './suction';

export const BAND_SOURCES: readonly BandSource[] = [
  AMBIENT_DAYS,
  BALANCE,
  DRIVE,
  EVENTS,
  EXCHANGERS,
  FACE,
  FANS,
  FEED,
  HEADS,
  HEAD_SHARES,
  INVERSION,
  MEASURES,
  PUMP_CHOICES,
  RESERVOIR,
  RUNAWAY_BRANCH,
  RUNAWAY_HEATS,
  SUCTION,
];
