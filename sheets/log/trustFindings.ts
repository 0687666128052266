/** How far a fit is to be trusted: what it has not seen, what it leaves, what the log cannot tell. */
import { clock } from '$lib/job/log/logEdits';
import type { LogFit, LogTrial } from '$lib/job/log/logRecord';
import { q, say, type Finding } from '../types';
import { inSentence, listed, parameterName } from './words';

/** Unseen over seen, and over noise: up to here the fit foretells (common practice, no source). */
export const FORETELLS = 1.5;
/** Intervals widened by more than this tell of a model that is not the loop. */
const WIDENED = 2;
/** What is left of a channel over its noise: more is no noise (common practice, no source). */
const UNEXPLAINED = 2;

const worstTrial = (heldOut: LogFit['heldOut']): LogTrial | null =>
  heldOut.reduce<LogTrial | null>((a, b) => (a === null || b.overSeen > a.overSeen ? b : a), null);

/**
 * By how much the fit misses what it should explain: the worst channel left over, in its own noise, or
 * the worst stretch foretold, over what was fitted; null where neither is out of the ordinary.
 */
export function misses({ channels, heldOut }: LogFit): number | null {
  const left = Math.max(0, ...channels.map(({ rms, noise }) => (noise > 0 ? rms / noise : 0)));
  const unseen = worstTrial(heldOut)?.overSeen ?? 0;
  if (left <= UNEXPLAINED && unseen <= FORETELLS) return null;
  return Math.max(left, unseen);
}

export function trustFindings({ heldOut, widened, notes }: LogFit): Finding[] {
  const found: Finding[] = [];
  const worst = worstTrial(heldOut);
  if (worst) {
    const good = worst.overSeen <= FORETELLS;
    const bad = heldOut.filter(({ overSeen }) => overSeen > FORETELLS).length;
    const n = heldOut.length;
    found.push({
      code: 'held-out',
      level: good ? 'good' : 'watch',
      sentence: good
        ? say`${n === 1 ? 'The stretch' : `Each of the ${n} stretches`} left out comes out as well as what was fitted: errors at most ${q(worst.overSeen, 'ratio')} times as large.`
        : say`Of ${String(n)} ${n === 1 ? 'stretch' : 'stretches'} left out and foretold ${String(bad)} ${bad === 1 ? 'comes' : 'come'} out worse than what was fitted, the worst from ${clock(worst.from)} to ${clock(worst.to)}: errors ${q(worst.overSeen, 'ratio')} times as large. Something drove the loop there that the fit has not seen; do not carry it over to such driving.`,
    });
  } else
    found.push({
      code: 'not-held-out',
      level: 'info',
      sentence: say`No stretch was left out, so nothing tells yet whether the fit foretells what it has not seen.`,
    });
  if (widened > WIDENED)
    found.push({
      code: 'widened',
      level: 'watch',
      sentence: say`What the fit leaves is not noise alone, and the ± were widened up to ${q(widened, 'ratio')} times for it: a quick change that hoses and probes smear, or heat that neither log nor description holds.`,
    });
  for (const message of notes.filter((note) => !note.startsWith('What the model leaves')))
    found.push({ code: 'fit-note', level: 'watch', sentence: say`${message}` });
  return found;
}

export function weakFindings({ weak, proposals }: LogFit): Finding[] {
  if (weak.length === 0) return [];
  const names = weak.map(({ parameters }) =>
    listed(parameters.map((name) => inSentence(parameterName(name)))),
  );
  const best = proposals[0];
  const one = weak.every(({ parameters }) => parameters.length === 1);
  return [
    {
      code: 'weak',
      level: 'watch',
      sentence: say`This log ${one ? 'does not tell' : 'cannot tell apart'}: ${names.join('; ')}.${best ? ` What would: ${best.says}` : ''}`,
    },
  ];
}
