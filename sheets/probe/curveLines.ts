/** Resistance of a probe at a temperature, as a line by whichever law it is known. */
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import {
  betaResistanceFormula,
  reciprocalTemperature,
  steinhartHartFormula,
  tableResistance,
} from '$lib/solver/instruments/probe/formulas';
import { probeNotes, type Probe } from '$lib/solver/instruments/probe/probe';

interface Words {
  readonly id: string;
  readonly statement: string;
  readonly why?: string;
}

export function resistanceLine(
  probe: Probe,
  T: number,
  words: Words,
): { readonly line: Line; readonly value: number } {
  const value = probe.resistance(T);
  const notes = probeNotes(probe, T);
  const more = notes.length > 0 ? { ...words, notes } : words;
  const { law, steinhartHart } = probe;
  if (steinhartHart) {
    const unknown = { tex: 'R', quantity: 'resistance', name: 'probe', value } as const;
    return {
      value,
      line: balanceLine(
        { formula: reciprocalTemperature, x: { T } },
        { formula: steinhartHartFormula, x: { ...steinhartHart, R: value } },
        {
          ...more,
          unknown,
          method:
            law.kind === 'three-points'
              ? 'The cubic in ln R solved by Newton’s method; A, B and C are laid through the three points.'
              : 'The cubic in ln R solved by Newton’s method.',
        },
      ),
    };
  }
  const line =
    law.kind === 'beta'
      ? formulaLine(betaResistanceFormula, { R_25: law.R25, beta: law.beta, T }, more)
      : formulaLine(tableResistance(probe, 'the probe’s table'), { T }, more);
  return { line, value: line.value };
}
