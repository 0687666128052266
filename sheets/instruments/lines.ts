/** Lines: what boiling water reads here, and what the ± of flow and probes does to heat and UA. */
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import { measuredHeat } from '$lib/solver/diagnosis/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import { straightFormula } from '$lib/solver/instruments/meter/formulas';
import { STRAIGHT } from '$lib/solver/instruments/meter/meterInLoop';
import * as plan from '$lib/solver/instruments/plan/formulas';
import { airLines } from '../probe/airLines';
import type { HeatReading, Study } from './study';

export const lines = (study: Study): Line[] => [
  ...boilLines(study),
  ...pairLines(study),
  ...(study.heat ? heatLines(study, study.heat) : []),
  ...mountLines(study),
];

function boilLines({ air, probe }: Study): Line[] {
  if (!air.ok) return [];
  const { barometer, pressure, plusMinus } = air.value;
  const u_b = formulaLine(
    plan.boilPlusMinus,
    { p_a: pressure, u_p: plusMinus },
    {
      statement: 'How sure that boil point is',
      why:
        barometer.by === 'altitude'
          ? 'By altitude alone the weather is not in it: some 20 hPa either way (common practice).'
          : 'A barometer or a report leaves some 2 hPa (common practice).',
    },
  );
  const reading = formulaLine(
    plan.boilReadingPlusMinus,
    { u_T: probe, u_b: u_b.value },
    {
      statement: 'How far a good probe may read from it',
      why: 'In ice there is no weather: there the ± of the probe stands alone.',
    },
  );
  return [...airLines(barometer, pressure), u_b, reading];
}

const pairLines = ({ probe }: Study): Line[] => [
  formulaLine(
    plan.pairPlusMinus,
    { u_T: probe },
    {
      statement: 'What two probes may disagree by in one bath, or after a night',
      why: 'Two that err independently differ by more than either is off.',
    },
  ),
];

function heatLines(study: Study, { settled, drop, share, wanted }: HeatReading): Line[] {
  const { probe, airProbe, pair, pairFound, flowShare, heatWanted } = study;
  const { liquidIn: T_in, liquidOut: T_out, airIn: T_a } = settled.front;
  const { density, specificHeat } = settled.liquid;
  const rate = formulaLine(
    liquidCapacityRate,
    { rho: density, V: settled.operating.flow, c_p: specificHeat },
    {
      statement: 'Heat the liquid carries for each degree, as the loop settles',
      why: 'Flow and temperatures are those of the loop balance in the duty chosen; properties are the coolant’s there.',
    },
  );
  const dT = formulaLine(
    plan.expectedDrop,
    { T_in, T_out },
    {
      statement: 'Drop that the two probes of the front exchanger are to show',
      why: 'Set it beside the ± of the probes: a small drop needs good probes.',
    },
  );
  const heat = formulaLine(
    measuredHeat,
    { C_l: rate.value, dT: dT.value },
    {
      statement: 'Heat that flow and drop will give',
      why: 'It is what all the instruments together are there to tell.',
    },
  );
  const x_Q = formulaLine(
    plan.heatShareFormula,
    { x_V: flowShare, u_D: pair, dT: drop },
    {
      statement: pairFound
        ? 'How sure that heat is; ± of the drop: the spread found in one bath'
        : 'How sure that heat is, by two probes that err independently',
      why: 'Errors that do not know of each other add by their squares.',
    },
  );
  const th_1 = formulaLine(
    plan.aboveAir,
    { T: T_in, T_a },
    {
      id: 'above-in',
      statement: 'Liquid into the front exchanger, above the air at its face',
      why: 'The lead that drives all the heat: the larger it is, the less a degree of error costs.',
    },
  );
  const th_2 = formulaLine(
    plan.aboveAir,
    { T: T_out, T_a },
    {
      id: 'above-out',
      statement: 'Liquid out of it, above the same air',
      why: 'Where it nears nought, the core has done all it can and its size can no longer be read.',
    },
  );
  const N = formulaLine(
    plan.transferUnitsByAir,
    { th_1: th_1.value, th_2: th_2.value },
    {
      statement: 'Transfer units that cool the liquid so',
      why: 'The air is taken as hardly warmed, so this is the least; for the ± that does.',
    },
  );
  const u_th = formulaLine(
    plan.abovePlusMinus,
    { u_T: probe, u_a: airProbe },
    {
      statement: 'How sure the liquid above the air is',
      why: 'The bath matches the pair to each other, not to the probe in the air.',
    },
  );
  const x_UA = formulaLine(
    plan.conductanceShareFormula,
    {
      x_V: flowShare,
      u_D: pair,
      th_1: th_1.value,
      th_2: th_2.value,
      N: N.value,
      u_th: u_th.value,
      dT: drop,
    },
    {
      statement: 'How sure that UA is',
      why: 'Where the liquid leaves close to the air, a degree at the core’s face weighs heavily.',
    },
  );
  return [
    rate,
    dT,
    heat,
    x_Q,
    formulaLine(
      plan.heatPlusMinusFormula,
      { x_Q: x_Q.value, Q_f: heat.value },
      {
        statement: '± of the heat',
        why: 'Whatever is smaller than this will not show, however long one measures.',
      },
    ),
    ...(share > 0
      ? [
          formulaLine(
            plan.probesToBlame,
            { u_D: pair, dT: drop, x_Q: x_Q.value },
            {
              statement: 'Part of it that the probes bring; the rest is the flow’s',
              why: 'It says which of the two is worth bettering.',
            },
          ),
        ]
      : []),
    ...(wanted !== null
      ? [
          formulaLine(
            plan.probeWantedFormula,
            { dT: drop, x_w: heatWanted, x_V: flowShare },
            {
              statement: 'How good each probe must be for the heat wanted',
              why: 'Or a pair, matched in one bath to 1.4 times this.',
            },
          ),
        ]
      : []),
    th_1,
    th_2,
    N,
    formulaLine(
      plan.conductanceByAir,
      { C_l: rate.value, N: N.value },
      {
        statement: 'Least UA that cools the liquid so',
        why: 'One figure for the core as it stands, to hold against its maker’s.',
      },
    ),
    u_th,
    x_UA,
  ];
}

const mountLines = ({ bore, meterBore }: Study): Line[] => [
  formulaLine(
    plan.tipDepth,
    { d: bore },
    {
      statement: 'Depth of a probe’s tip in the return hose',
      why: 'At the wall it reads the wall, and a short probe reads the heat of its own stem.',
    },
  ),
  formulaLine(
    straightFormula,
    { n: STRAIGHT.before, d: meterBore },
    {
      id: 'straight-before',
      statement: 'Straight hose before the flow meter',
      why: 'Out of a bend the liquid spins, and a turbine counts the spin.',
    },
  ),
];
