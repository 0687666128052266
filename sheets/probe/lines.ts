/** Lines from the air's pressure to what the trimmed reader shows. */
import { formulaLine, type Line } from '$lib/solver/formula';
import {
  balancedBiasFormula,
  believedFormula,
} from '$lib/solver/instruments/probe/dividerFormulas';
import { readerShows } from '$lib/solver/instruments/probe/formulas';
import { ICE_POINT } from '$lib/solver/instruments/probe/boilPoint';
import {
  NETWORK_FORMULAS,
  WITH_NETWORK,
  spreadFormula,
} from '$lib/solver/instruments/probe/trim/formulas';
import { airLines } from './airLines';
import { biasLines } from './biasLines';
import { circuitLines } from './circuitLines';
import { resistanceLine } from './curveLines';
import type { Study } from './study';
import { tried } from './tried';

export function lines(study: Study): Line[] {
  const { job } = study;
  const air = airLines(job.barometer, job.airPressure);
  const ice = resistanceLine(job.setup.probe, ICE_POINT, {
    id: 'ice-probe',
    statement: 'Probe in ice water, by its curve',
    why: 'Melting ice is 32 °F (0 °C) everywhere: the one temperature nobody has to measure.',
  });
  const boil = resistanceLine(job.setup.probe, job.boilPoint, {
    id: 'boil-probe',
    statement: 'Probe at the boil, by its curve',
    why: 'Hot, the probe has few ohms, so an ohm in a bad pin shows here and not in the ice.',
  });
  return [
    ...air,
    ice.line,
    boil.line,
    formulaLine(
      balancedBiasFormula,
      { R_1: ice.value, R_2: boil.value },
      {
        statement: 'Bias that suits both ends of this range alike',
        why: 'A bias far above it spends the converter’s counts on the cold end and leaves few for the hot one.',
      },
    ),
    ...biasLines(study, ice.value, boil.value),
    ...trimLines(study, ice.value, boil.value),
    ...circuitLines(study),
    ...lotLines(study),
  ];
}

/** The network to solder, and what the reader then shows where only the bias was wrong. */
function trimLines({ trim, setup, job }: Study, R_ice: number, R_boil: number): Line[] {
  if (!trim || !setup) return [];
  const x = Object.fromEntries(trim.network.parts.map((R, i) => [`R_${i + 1}`, R]));
  const network = formulaLine(NETWORK_FORMULAS[trim.network.form], x, {
    id: 'network',
    statement: 'The network to solder',
    why: 'Any one pair of its ends may be measured before it goes in.',
  });
  const bias = formulaLine(
    WITH_NETWORK[trim.placement],
    { R_f: setup.divider.bias, R_n: network.value },
    {
      id: 'bias-with-network',
      statement: 'Bias with the network',
      why: 'It should be the one for which the reader’s table was made.',
    },
  );
  if (Object.keys(setup.flaw).length > 0 || setup.divider.input !== Infinity) {
    return [network, bias];
  }
  const shown = (where: 'ice' | 'boil', R: number) => {
    const believed = formulaLine(
      believedFormula,
      { R, R_ba: setup.reader.bias, R_b: bias.value },
      {
        id: `${where}-believed`,
        statement: `What the trimmed reader takes the probe for, ${where === 'ice' ? 'in ice' : 'at the boil'}`,
        why: 'If the trim is right these are the ohms of the probe’s own table.',
      },
    );
    // A bath outside the range that counts may lie where the reader shows nothing.
    const shows = tried(() =>
      formulaLine(
        readerShows(job.setup.reader.table),
        { R: believed.value },
        {
          id: `${where}-trimmed`,
          statement: `What the trimmed reader shows ${where === 'ice' ? 'in ice water' : 'at the boil'}`,
          why: 'Check it in the same two baths after soldering.',
        },
      ),
    );
    return shows.ok ? [believed, shows.value] : [believed];
  };
  return [
    network,
    bias,
    ...shown('ice', job.ice?.ohms ?? R_ice),
    ...shown('boil', job.boil?.ohms ?? R_boil),
  ];
}

function lotLines({ lot }: Study): Line[] {
  return (['ice', 'boil'] as const).flatMap((bath) => {
    const shown = lot[bath]?.probes.map((p) => p.shown);
    return shown
      ? [
          formulaLine(
            spreadFormula,
            { T_max: Math.max(...shown), T_min: Math.min(...shown) },
            {
              id: `spread-${bath}`,
              statement: `Spread of the probes ${bath === 'ice' ? 'in ice water' : 'at the boil'}`,
              why: 'What lies between two probes of one part shows in a loop as a drop or a rise that is not there.',
            },
          ),
        ]
      : [];
  });
}
