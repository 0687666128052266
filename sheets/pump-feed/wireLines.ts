/** Lines of the circuit by itself: copper, joints, the whole. */
import type { Side } from '$lib/job/evaluate';
import { contactsTogether, feedTogether, jointsTogether } from '$lib/solver/feed/circuitFormulas';
import { feedParts, relayResistance } from '$lib/solver/feed/circuit';
import {
  jointResistanceFormula,
  wireAreaFormula,
  wireResistance20,
  wireResistanceHot,
} from '$lib/solver/feed/formulas';
import { copperArea } from '$lib/solver/feed/gauge';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Study } from './study';

/** Resistances that later lines stand on, ohm. */
export interface Ohms {
  readonly lines: readonly Line[];
  readonly wire20: number;
  readonly wire: number;
  readonly joints: number;
  readonly whole: number;
}

/** Copper out and back; needs nothing but the wire. */
export function copperLines({ supply }: Study): Omit<Ohms, 'joints' | 'whole'> {
  const { size, lengthOneWay: L, temperature: T } = supply.circuit.wire;
  const lines: Line[] = [];
  let A = copperArea(size);
  if (size.by === 'awg') {
    const area = formulaLine(
      wireAreaFormula,
      { n: size.awg },
      {
        id: 'wire-area',
        statement: 'Copper in a wire of this gauge',
        why: 'Three gauges thinner halve it. SAE cable of the same number may hold 5 to 12 % less.',
      },
    );
    A = area.value;
    lines.push(area);
  }
  const cold = formulaLine(
    wireResistance20,
    { L, A },
    {
      id: 'wire-20',
      statement: 'Resistance of the wire out and back at 20 °C (68 °F)',
      why: 'Length counts twice: the ground is half of the way.',
    },
  );
  const hot = formulaLine(
    wireResistanceHot,
    { R_20: cold.value, T },
    {
      id: 'wire-hot',
      statement: 'The same, hot',
      why: 'Copper gains about 4 % for every 10 K (18 °F); a bench reading flatters.',
    },
  );
  return { lines: [...lines, cold, hot], wire20: cold.value, wire: hot.value };
}

/** Joints and the whole; needs every joint to have a number. */
export function jointLines(side: Side, { supply }: Study, R_w: number): Omit<Ohms, 'wire20'> {
  const { circuit } = supply;
  const lines: Line[] = side.values['feed.connectors']!.rows!.flatMap((row, i) => {
    if (row.resistance !== null || row.drop === null || row.at === null) return [];
    const x = { U: row.drop as number, I: row.at as number };
    const { name } = circuit.connectors[i]!;
    return [
      formulaLine(jointResistanceFormula, x, {
        id: `joint-${i + 1}`,
        statement: `Resistance of joint ${i + 1} of the table (${name}), from its drop`,
        why: 'One bad crimp can cost more than all of the wire; this tells which.',
      }),
    ];
  });
  const [first, second] = circuit.relays;
  if (first && second && relayResistance(circuit.relays) > 0) {
    lines.push(
      formulaLine(
        contactsTogether,
        { R_1: first.resistance, R_2: second.resistance },
        {
          id: 'contacts',
          statement: 'Both relay contacts side by side',
          why: 'Two contacts halve the loss only while both are good.',
        },
      ),
    );
  }
  const joints = feedParts(circuit).filter(({ kind }) => kind !== 'wire');
  const sum = formulaLine(
    jointsTogether(joints.length),
    Object.fromEntries(joints.map(({ resistance }, i) => [`R_${i + 1}`, resistance])),
    {
      id: 'joints',
      statement: 'All joints, no wire',
      why: 'No thicker wire takes this away.',
      notes: [
        {
          code: 'joints',
          message: `In order of the current: ${joints.map(({ name }) => name).join('; ')}.`,
        },
      ],
    },
  );
  const whole = formulaLine(
    feedTogether,
    { R_w, R_c: sum.value },
    {
      id: 'whole',
      statement: 'Whole feed, battery post to battery post without the pump',
      why: 'Divide the drop by it and you have the current; it is what thicker wire must bring down.',
    },
  );
  return { lines: [...lines, sum, whole], wire: R_w, joints: sum.value, whole: whole.value };
}
