/** Lines of what could be done alone: what it brings where no other line says it, and how sure that is. */
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import { costsPerDegree, rangeOf } from '$lib/job/upgrades/spreads';
import { judged } from '$lib/job/upgrades/assess';
import { formulaLine, type Line } from '$lib/solver/formula';
import * as plan from '$lib/solver/plan/formulas';
import { chanceFormula } from '$lib/solver/uncertainty/formulas';
import type { Option } from './options';
import { JUDGED } from './words';

export const optionLines = (options: readonly Option[], study: UpgradeStudy): Line[] =>
  options.flatMap((option) => [...moveLines(option, study), ...sureLines(option, study)]);

/** A move that is no candidate of its own: its degrees and what each costs. */
function moveLines({ id, name, cost, T, gain, perDegree }: Option, study: UpgradeStudy): Line[] {
  const T_now = judged(study.judge, study.found);
  if (!id.startsWith('move-') || T_now === null) return [];
  return [
    formulaLine(
      plan.gainFormula,
      { T_now, T_with: T },
      {
        id: `${id}.gain`,
        statement: `“${name}”: degrees it takes off the charge air, ${JUDGED[study.judge]}`,
        why: 'One kind of change out of a candidate, solved by itself: it may be all that is needed.',
      },
    ),
    ...(perDegree === null
      ? []
      : [
          formulaLine(
            plan.costPerDegreeFormula,
            { C: cost!, dT: gain },
            {
              id: `${id}.per-degree`,
              statement: `“${name}”: cost of each of these degrees`,
              why: 'What lets one kind of change be set beside another.',
            },
          ),
        ]),
  ];
}

/** ± of the degrees and of their price, and how often they are the cheapest. */
function sureLines(
  { id, name, cost, perDegree, taken, cheapest }: Option,
  { judge }: UpgradeStudy,
) {
  const lines: Line[] = [];
  const degrees = rangeOf(taken);
  if (degrees) {
    lines.push(
      formulaLine(
        plan.gainHalfWidth,
        { dT_high: degrees.high, dT_low: degrees.low },
        {
          id: `${id}.gain-plus-minus`,
          statement: `“${name}”: ± of the degrees it takes off, ${JUDGED[judge]}`,
          why: 'A change whose ± is as wide as what it brings is a wager, not a plan.',
          notes: [DRAWN],
        },
      ),
    );
  }
  const prices =
    perDegree === null || cost === null || !taken ? null : rangeOf(costsPerDegree(cost, taken));
  if (prices) {
    lines.push(
      formulaLine(
        plan.priceHalfWidth,
        { c_high: prices.high, c_low: prices.low },
        {
          id: `${id}.per-degree-plus-minus`,
          statement: `“${name}”: ± of what each of these degrees costs`,
          why: 'Two prices closer than their ± are the same price, unless what is unsure moves both alike.',
          notes: [DRAWN],
        },
      ),
    );
  }
  if (cheapest && perDegree !== null) {
    lines.push(
      formulaLine(
        chanceFormula,
        { n: cheapest.n, N: cheapest.N },
        {
          id: `${id}.cheapest`,
          statement: `“${name}”: chance that its degrees are the cheapest of all`,
          why: 'Counted draw by draw, so that what is unsure about the vehicle counts alike for every change.',
          notes: [DRAWN],
        },
      ),
    );
  }
  return lines;
}

const DRAWN = {
  code: 'drawn',
  message:
    'Every draw is a loop that the inputs’ ± allow, solved with and without the change; 95 of 100 lie between the two ends.',
};
