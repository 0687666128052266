import { describe, expect, it } from 'vitest';
import {
  loop4Steady,
  simulateLoop4,
  simulateLoop4Air,
  simulateTwoMass,
  simulateTwoMassFallingFlow,
  type Loop4AirInputs,
  type Loop4Inputs,
  type NodeHistory,
  type TwoMassFallingFlowInputs,
  type TwoMassInputs,
} from '$lib/solver/loop/referenceModels';
import loop from '../../reference/values/transient-loop.json';
import twoMass from '../../reference/values/transient-two-mass.json';
import { within } from './within';

type Fields = Record<string, number | readonly number[]>;

const named = (history: NodeHistory): Fields =>
  Object.fromEntries(history.nodes.map((node, i) => [`T${i + 1}`, node]));

/** Each op of the two files, by the function that answers it. */
const answer: Record<string, (inputs: never) => Fields> = {
  'two-mass': (inputs: TwoMassInputs) => named(simulateTwoMass(inputs)),
  'two-mass-flow-falls-with-temperature': (inputs: TwoMassFallingFlowInputs) =>
    named(simulateTwoMassFallingFlow(inputs)),
  'loop-4-node': (inputs: Loop4Inputs) => ({
    ...named(simulateLoop4(inputs)),
    ...Object.fromEntries(loop4Steady(inputs).map((T, i) => [`T${i + 1}_steady`, T])),
  }),
  'loop-4-node-air': (inputs: Loop4AirInputs) => {
    const history = simulateLoop4Air(inputs);
    return { ...named(history), T_charge_out: history.chargeOut };
  },
};

describe.each([twoMass, loop])('against $source.library: $title', (file) => {
  it.each(file.cases.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    const got = answer[c.op]!(c.inputs as never);
    for (const [field, expected] of Object.entries(c.expected)) {
      const values = [expected].flat() as number[];
      const ours = [got[field]!].flat() as number[];
      expect(ours.length).toBe(values.length);
      values.forEach((value, i) => within(ours[i]!, value, file.tolerance, field));
    }
  });
});

describe('what the network must do', () => {
  it('reads its start when asked for nothing later', () => {
    const { nodes } = simulateTwoMass({
      ...(twoMass.cases[0]!.inputs as unknown as TwoMassInputs),
      t: [0],
    });
    expect(nodes.map((node) => node[0])).toEqual([303, 303]);
  });
});
