/** Readings that no divider with this probe gives: an open or a shorted input, a reader that stands still. */
import type { Alike, InputEnd, Verdict } from '$lib/solver/instruments/probe/verdict';
import { q, say, type Finding, type Sentence } from '../types';
import type { Study } from './study';

const END: Readonly<Record<InputEnd, string>> = {
  open: 'an open input: a plug that is off, a broken lead, a pin that does not touch. Ohm the probe through its plug, and wiggle the lead',
  short:
    'a shorted input: a chafed lead, water in the plug, two pins that touch. Unplug the probe; if the reading stays, it is the lead',
};
const SIDE: Readonly<Record<InputEnd, string>> = { open: 'cold', short: 'hot' };

const AND_ELSE =
  '. If the lead is sound, look whether the probe was in the bath and whether the reader is set to this probe. Then read both baths again.';

/** Said where a reading stands at an end of what the reader can show. */
function atTableEnd({ tableEnds }: Verdict, end: InputEnd): Sentence {
  return tableEnds.includes(end)
    ? say` It is the ${SIDE[end]} end of the reader’s table, where a reader stops.`
    : [];
}

/** Both baths the same way, or one alone; each the other's way is baths mixed up. */
export function endFinding({ job, verdict }: Study): Finding | null {
  const [ice, boil] = verdict!.ends;
  const end = ice ?? boil;
  if (!end || (ice && boil && ice !== boil)) return null;
  const shown = ice ? job.ice!.shown : job.boil!.shown;
  const between = shown > job.ice!.T && shown < job.boil!.T;
  return {
    code: `input-${end}`,
    level: 'act',
    sentence: [
      ...say`${q(shown, 'temperature')} ${ice ? 'in ice' : 'at the boil'} is far from anything a bias can do to this probe.`,
      ...atTableEnd(verdict!, end),
      between
        ? ` Lying between the baths, it may be a probe that was not in this one; if it was, it looks like ${END[end]}${AND_ELSE}`
        : ` It looks like ${END[end]}${AND_ELSE}`,
    ],
  };
}

/** Both baths read the same: no network, and no fault of one part, makes a probe blind to them. */
export function alikeFinding({ job }: Study, verdict: Verdict, alike: Alike): Finding {
  const [ice, boil] = [job.ice!.shown, job.boil!.shown];
  const both = say`The reader shows nearly the same in both baths, ${q(ice, 'temperature')} in ice and ${q(boil, 'temperature')} at the boil.`;
  if (alike === 'stuck') {
    return {
      code: 'input-stuck',
      level: 'act',
      sentence: [
        ...both,
        ' Either the probe was not moved between the baths, or the reader is stuck or frozen, or it reads another probe. Unplug the probe: a reading that stays is the reader’s own. Then read both baths again.',
      ],
    };
  }
  return {
    code: `input-${alike}`,
    level: 'act',
    sentence: [
      ...both,
      ...atTableEnd(verdict, alike),
      ` So far to the ${SIDE[alike]} side of both it looks like ${END[alike]}${AND_ELSE}`,
    ],
  };
}
