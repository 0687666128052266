/** The reader's own calculations of a sheet, worked out and put into the reader's units for the kit. */
import {
  ownCalculations,
  symbolTex,
  type OwnCalculated,
  type OwnOutcome,
} from '$lib/job/own/ownCalculation';
import type { OwnLine } from '$lib/job/own/ownLines';
import { sheetSymbols } from '$lib/job/own/ownSymbols';
import type { Values } from '$lib/job/values';
import { difference, worded } from '$lib/kit/format';
import type { OwnCalculationItem, OwnSide, OwnSymbol } from '$lib/kit/ownTypes';
import type { SideName } from '$lib/kit/types';
import type { Line } from '$lib/solver/formula';
import type { UnitSystem } from '$lib/units';
import { printAs } from '$lib/units/expression';

/** What the calculations of one side stand on. */
export interface Ground {
  readonly lines: readonly Line[];
  readonly values: Values;
}

/** Calculations by the id of their line; `planned` is the candidate's ground, where there is one. */
export function calculationItems(
  own: readonly OwnLine[],
  found: Ground,
  planned: Ground | undefined,
  system: UnitSystem,
): ReadonlyMap<string, OwnCalculationItem> {
  const asFound = ownCalculations(own, found.lines, found.values);
  const candidate = planned && ownCalculations(own, planned.lines, planned.values);
  return new Map(asFound.map((one, i) => [one.id, itemOf(one, candidate?.[i], system)] as const));
}

function itemOf(
  found: OwnCalculated,
  planned: OwnCalculated | undefined,
  system: UnitSystem,
): OwnCalculationItem {
  const { line, outcome } = found;
  const first = sideOf('found', outcome, system);
  const second = planned && sideOf('candidate', planned.outcome, system, outcome);
  // Said once for both: the same numbers, or the same reason for none.
  const alike =
    second !== undefined && first.put?.tex === second.put?.tex && first.message === second.message;
  const note = outcome.ok ? outcome.note : undefined;
  return {
    kind: 'calculation',
    id: line.id,
    statement: line.statement,
    expression: line.expression,
    symbol: line.symbol,
    unit: line.unit,
    tex: found.tex ?? planned?.tex ?? null,
    symbolTex: symbolTex(line.symbol.trim()),
    sides: second && !alike ? [first, second] : [first],
    same: alike && first.put !== null,
    faults: outcome.ok ? {} : { [outcome.part]: outcome.message },
    ...(note !== undefined && { note }),
  };
}

function sideOf(
  side: SideName,
  outcome: OwnOutcome,
  system: UnitSystem,
  from?: OwnOutcome,
): OwnSide {
  if (!outcome.ok) return { side, put: null, value: null, message: outcome.message };
  const { text, unit } = printAs(outcome.value, outcome.shown, system);
  return {
    side,
    put: { tex: outcome.put(system), said: outcome.said(system) },
    value: { text, unit },
    ...(from?.ok && { difference: differenceOf(from, outcome, system) }),
  };
}

type Done = OwnOutcome & { ok: true };

function differenceOf(a: Done, b: Done, system: UnitSystem) {
  if (b.shown.as === 'quantity') return difference(a.value, b.value, b.shown.quantity, system);
  const shown =
    b.shown.as === 'unit' ? { ...b.shown, unit: { ...b.shown.unit, offset: 0 } } : b.shown;
  const { text, unit } = printAs(b.value - a.value, shown, system);
  return { text: b.value > a.value ? `+${text}` : text, unit };
}

/** What a calculation on these lines may use, the results of the reader's own lines included. */
export function usableSymbols(
  own: readonly OwnLine[],
  { lines, values }: Ground,
  system: UnitSystem,
): readonly OwnSymbol[] {
  const mine = ownCalculations(own, lines, values).flatMap(({ line, outcome }) => {
    const name = line.symbol.trim();
    if (name === '' || !outcome.ok) return [];
    const { text, unit } = printAs(outcome.value, outcome.shown, system);
    const means = line.statement || 'of a line of yours';
    const value = unit ? `${text}\u00a0${unit}` : text;
    return [{ name, tex: symbolTex(name), means, value, line: line.id }];
  });
  const theirs = sheetSymbols(lines).offered.map(({ name, tex, means, quantity, value }) => ({
    name,
    tex,
    means,
    value: worded(value, quantity, system),
  }));
  return [...mine, ...theirs];
}
