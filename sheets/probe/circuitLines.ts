/** Volts, counts and own heat of the circuit as it will be. */
import { formulaLine, type Line } from '$lib/solver/formula';
import { fullScale, parallel } from '$lib/solver/instruments/probe/divider';
import {
  degreesPerCountFormula,
  inputVoltsFormula,
  probePowerFormula,
  selfHeatingFormula,
  sensitivityFormula,
  sideBySide,
} from '$lib/solver/instruments/probe/dividerFormulas';
import type { Study } from './study';

export function circuitLines({ job, setup, trim }: Study): Line[] {
  const { probe, divider } = job.setup;
  const R_b = trim?.bias ?? setup?.divider.bias ?? divider.bias;
  const V_s = divider.supply;
  const T = job.boilPoint;
  const R_boil = job.boil?.ohms ?? probe.resistance(T);
  const beside =
    divider.input === Infinity
      ? []
      : [
          formulaLine(
            sideBySide,
            { R_1: R_boil, R_2: divider.input },
            {
              id: 'boil-at-input',
              statement: 'Probe at the boil, the input beside it',
              why: 'An input that draws current pulls the reading hot, and a table made without it is off.',
            },
          ),
        ];
  const R = parallel(R_boil, divider.input);
  const alpha = formulaLine(
    sensitivityFormula(probe),
    { T },
    {
      id: 'boil-slope',
      statement: 'What the probe loses per kelvin at the boil',
      why: 'Hot probes change little per degree: there the converter’s steps are coarsest.',
    },
  );
  const most = formulaLine(
    probePowerFormula,
    { V_s, R: R_b, R_b },
    {
      statement: 'Heat made in the probe where it has as many ohms as the bias: the most there is',
      why: 'A probe warms itself; in still air it reads high by several times what it does in liquid.',
    },
  );
  return [
    ...beside,
    formulaLine(
      inputVoltsFormula,
      { V_s, R, R_b },
      {
        id: 'boil-volts',
        statement: 'Volts at the input at the boil, with the bias named above',
        why: 'A meter on the input’s pin shows this if all is well; near nothing is a short, near the supply is open.',
      },
    ),
    alpha,
    formulaLine(
      degreesPerCountFormula,
      { R, R_b, alpha: alpha.value, n: fullScale(divider.bits) },
      {
        id: 'boil-count',
        statement: 'One count of the converter at the boil',
        why: 'No trim makes a reading finer than this.',
      },
    ),
    most,
    formulaLine(
      selfHeatingFormula,
      { P: most.value, delta: job.tolerances.dissipation },
      {
        statement: 'How far the probe then reads high',
        why: 'A reader that feeds the probe hard reads its own heat, most of all in still air.',
      },
    ),
  ];
}
