/** From both readings to one bias, with its ±. */
import { formulaLine, type Line } from '$lib/solver/formula';
import { sensitivityFormula, sideBySide } from '$lib/solver/instruments/probe/dividerFormulas';
import {
  assumedBias,
  biasInCircuit,
  biasShareFormula,
  combinedBiasFormula,
  combinedShareFormula,
  shareWithProbe,
} from '$lib/solver/instruments/probe/formulas';
import type { BathReading } from '$lib/solver/instruments/probe/bath';
import { resistanceLine } from './curveLines';
import type { Study } from './study';

const PLACE = { ice: 'in ice', boil: 'at the boil' } as const;

export function biasLines(study: Study, R_ice: number, R_boil: number): Line[] {
  const { ice, boil } = study.job;
  const byIce = ice && fromBath(study, 'ice', ice, R_ice);
  const byBoil = boil && fromBath(study, 'boil', boil, R_boil);
  const both = byIce && byBoil ? together(study, byIce, byBoil) : [];
  return [...(byIce?.lines ?? []), ...(byBoil?.lines ?? []), ...both];
}

interface FromBath {
  readonly lines: readonly Line[];
  readonly bias: number;
  readonly share: number;
}

function fromBath(
  { job: { setup, readerBiasKnown } }: Study,
  place: keyof typeof PLACE,
  { shown, ohms, plusMinus }: BathReading,
  R_curve: number,
): FromBath {
  const { divider, reader } = setup;
  const where = PLACE[place];
  const believed = resistanceLine(reader.table, shown, {
    id: `${place}-shown`,
    statement: `What the reader takes the probe for, ${where}: its table at the temperature shown`,
    why: 'A reader measures ohms and looks the temperature up: the ohms are what it got wrong.',
  });
  const beside =
    divider.input === Infinity
      ? []
      : [
          formulaLine(
            sideBySide,
            { R_1: ohms ?? R_curve, R_2: divider.input },
            {
              id: `${place}-beside`,
              statement: `Probe ${where} with the reader’s input beside it`,
              why: 'The input draws a little of the current meant for the probe.',
            },
          ),
        ];
  const x = { R: beside[0]?.value ?? ohms ?? R_curve, R_s: believed.value };
  const words = {
    id: `${place}-bias`,
    why: 'Believed and true resistance stand to each other as assumed and fitted bias.',
  };
  const bias = readerBiasKnown
    ? formulaLine(
        biasInCircuit,
        { ...x, R_ba: reader.bias },
        {
          ...words,
          statement: `Bias that works in the circuit, by the reading ${where}`,
        },
      )
    : formulaLine(
        assumedBias,
        { ...x, R_b: divider.bias },
        {
          ...words,
          statement: `Bias that the table assumes, by the reading ${where}`,
        },
      );
  const alpha = formulaLine(
    sensitivityFormula(reader.table),
    { T: shown },
    {
      id: `${place}-alpha`,
      statement: `What the probe loses per kelvin ${where}`,
      why: 'It turns a miss in degrees into a miss in ohms, so it says how sharply this bath can tell.',
    },
  );
  const share = formulaLine(
    biasShareFormula,
    { u: plusMinus, alpha: alpha.value },
    {
      id: `${place}-share`,
      statement: `± of that bias, from the ± of the reading ${where}`,
      why: 'One degree in the ice is worth more ohms than one degree at the boil.',
    },
  );
  return {
    lines: [believed.line, ...beside, bias, alpha, share],
    bias: bias.value,
    share: share.value,
  };
}

function together({ job }: Study, ice: FromBath, boil: FromBath): Line[] {
  const s = { s_1: ice.share, s_2: boil.share };
  const share = formulaLine(combinedShareFormula, s, {
    id: 'bias-share',
    statement: '± of the bias by both baths',
    why: 'Two baths together know more than the better of them; this is the band to trim within.',
  });
  const measured = job.ice?.ohms !== undefined && job.boil?.ohms !== undefined;
  return [
    formulaLine(
      combinedBiasFormula,
      { R_1: ice.bias, R_2: boil.bias, ...s },
      {
        id: 'bias-both',
        statement: job.readerBiasKnown
          ? 'Bias that works in the circuit, by both baths'
          : 'Bias that the table assumes, by both baths',
        why: 'If one bias is all that is wrong, both baths give it within their ±; if they do not, it is something else.',
      },
    ),
    share,
    ...(measured
      ? []
      : [
          formulaLine(
            shareWithProbe,
            { s: share.value, t: job.tolerances.probe },
            {
              id: 'bias-share-with-probe',
              statement: '± of the bias with what the probe itself may be off',
              why: 'A probe that is off by so much everywhere looks exactly like a wrong bias; only ohms measured in the bath tell them apart.',
            },
          ),
        ]),
  ];
}
