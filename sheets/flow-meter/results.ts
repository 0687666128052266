/** Results of the flow meter. */
import { inputState, linearAbove } from '$lib/solver/instruments/meter/lowFlow';
import { flowStepFormula, flowTaken, pulseFrequency } from '$lib/solver/instruments/meter/formulas';
import { readingFactor } from '$lib/solver/instruments/meter/kFactor';
import type { Result } from '../types';
import type { Study } from './study';

const NO_RUNS = 'no run was entered';
const NO_FLOW = 'the loop does not flow in this duty, or cannot be solved';

export function results({ meter, test, slip, range, K, inLoop }: Study): Result[] {
  const found = test?.ok ? test.value : null;
  const absent = test && !test.ok ? test.problem.message : NO_RUNS;
  const frequency = inLoop ? pulseFrequency.value({ K, Q: inLoop.with }) : null;
  return [
    {
      id: 'k-factor',
      name: 'K-factor by bucket and watch',
      symbol: 'K',
      value: found?.K ?? null,
      absent,
      quantity: 'pulsesPerVolume',
    },
    {
      id: 'k-plus-minus',
      name: '± of the K-factor',
      symbol: 'u_K',
      value: found?.plusMinus ?? null,
      absent,
      quantity: 'pulsesPerVolume',
      better: 'lower',
    },
    {
      id: 'reading-factor',
      name: 'The reader shows, of the true flow',
      symbol: 'K/K_r',
      value: found ? readingFactor(found.K, meter.statedK) : null,
      absent,
      quantity: 'percent',
    },
    {
      id: 'chance',
      name: 'Chance of as much scatter by the stated ± alone',
      symbol: 'P',
      value: found?.chance ?? null,
      absent: found ? 'one run alone says nothing of scatter' : absent,
      quantity: 'percent',
    },
    {
      id: 'linear-above',
      name: 'K holds above',
      symbol: '\\dot V_{low}',
      value: slip ? linearAbove(slip.slip, meter.errorAllowed) : null,
      absent: 'it takes three runs, the fastest twice the slowest or more',
      quantity: 'volumeFlow',
      better: 'lower',
    },
    {
      id: 'range-from',
      name: 'Believe the reading from',
      symbol: '\\dot V_a',
      value: range.from.flow,
      quantity: 'volumeFlow',
      better: 'lower',
    },
    {
      id: 'range-to',
      name: 'Believe the reading up to',
      symbol: '\\dot V_b',
      value: range.to.flow,
      quantity: 'volumeFlow',
      better: 'higher',
    },
    {
      id: 'frequency',
      name: 'Pulses at the flow of the loop',
      symbol: 'f',
      value: frequency,
      absent: NO_FLOW,
      quantity: 'frequency',
      ...(frequency !== null && {
        state: inputState(frequency, meter.input) === 'counts' ? 'ok' : 'over',
      }),
    },
    {
      id: 'step',
      name: 'One pulse more or less',
      symbol: '\\Delta\\dot V',
      value: flowStepFormula.value({ K, t_g: meter.gate }),
      quantity: 'volumeFlow',
      better: 'lower',
    },
    {
      id: 'loss',
      name: 'Lost in the meter',
      symbol: '\\Delta p_m',
      value: inLoop?.loss ?? null,
      absent: NO_FLOW,
      quantity: 'pressureDrop',
      better: 'lower',
    },
    {
      id: 'flow-taken',
      name: 'Flow the meter costs',
      symbol: '\\Delta\\dot V_m',
      value:
        inLoop && !meter.among ? flowTaken.value({ Q: inLoop.without, Q_m: inLoop.with }) : null,
      absent: meter.among ? 'its loss is in the loop as described' : NO_FLOW,
      quantity: 'volumeFlow',
      better: 'lower',
    },
  ];
}
