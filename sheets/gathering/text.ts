/** The results of a job to be read in a terminal, in its own units: what `npm run solve -- --text` prints. */
import type { Job } from '$lib/job/types';
import { differenceOf, sentence, shown, spreadText } from '$lib/kit/format';
import type { UnitSystem } from '$lib/units';
import { SHEETS } from '../abouts';
import type { Finding, MarginState, Result } from '../types';
import type { Gathered, GatheredAside } from './gather';

const STATE: Readonly<Record<MarginState, string>> = {
  ok: '',
  near: '  [near its limit]',
  over: '  [past its limit]',
};
/** Worth a line there: what explains or confirms is read on the sheet. */
const TOLD: readonly Finding['level'][] = ['act', 'watch'];

/** Every side one after the other; each sheet's results, and what it warns of. */
export function reportText(
  job: Job,
  gathered: readonly Gathered[],
  notes: readonly string[],
  aside: readonly GatheredAside[],
): string {
  const { units, title, invented } = job.header;
  const of = (side: Gathered['side']) => gathered.filter((part) => part.side === side);
  const answer = of('asFound')
    .flatMap(({ findings }) => findings)
    .find(({ code }) => code === 'first');
  return [
    title.job || 'Job without a name',
    ...(invented ? [invented] : []),
    ...notes.map((note) => `Note: ${note}`),
    ...(answer ? ['', sentence(answer.sentence, units)] : []),
    ...sideLines('As found', of('asFound'), units),
    ...(job.candidate ? sideLines(`Candidate: ${job.candidate.name}`, of('candidate'), units) : []),
    ...aside.flatMap(({ name, parts }) => sideLines(`Put aside: ${name}`, parts, units)),
    '',
  ]
    .join('\n')
    .replaceAll(NO_BREAK, ' ');
}

/** Kept together on a page; a terminal searched for words is better off without. */
const NO_BREAK = '\u00a0';

function sideLines(head: string, parts: readonly Gathered[], units: UnitSystem): string[] {
  const sheets = SHEETS.flatMap(({ slug, number, title }) => {
    const part = parts.find(({ sheet }) => sheet === slug);
    if (!part || (part.results.length === 0 && part.failed === undefined)) return [];
    return [
      '',
      `${number} ${title}`,
      ...(part.failed === undefined ? [] : [`  could not be worked out: ${part.failed}`]),
      ...part.results.map((result) => `  ${result.name}: ${valueText(result, units)}`),
      ...part.findings
        .filter(({ level }) => TOLD.includes(level))
        .map((finding) => `  ! ${sentence(finding.sentence, units)}`),
    ];
  });
  return ['', head, '='.repeat(head.length), ...sheets];
}

function valueText(result: Result, units: UnitSystem): string {
  const { value, absent, quantity, plusMinus, state } = result;
  if (value === null) return absent ?? 'no value';
  const difference = result.differenceQuantity ?? differenceOf(quantity);
  const { text, unit } = shown(value, quantity, units);
  const spread =
    plusMinus === undefined ? '' : ` ± ${spreadText(plusMinus, difference, units, value)}`;
  return `${text}${spread}${unit && ` ${unit}`}${state ? STATE[state] : ''}`;
}
