/** The cores by their measures as data: results, lines, findings. */
import type { ContentOf, Result } from '../types';
import { say } from '../types';
import { coreFindings } from './findings';
import { measuresOverRating } from '$lib/solver/cores/geometry/formulas';
import { coreLines } from './lines';
import { compared } from './ratingLines';
import { CORE_WORDS, measuredCores, type MeasuredCore } from './measured';

export const content: ContentOf = (side) => {
  const { cores, trouble } = measuredCores(side);
  return {
    results: cores.flatMap(results),
    lines: cores.flatMap(coreLines),
    findings: [
      ...trouble.map(({ core, message }) => ({
        code: `${CORE_WORDS[core].id}-trouble`,
        level: 'act' as const,
        sentence: say`${CORE_WORDS[core].title}: these measures make no core. ${message}.`,
      })),
      ...cores.flatMap(coreFindings),
    ],
  };
};

function results(measured: MeasuredCore): Result[] {
  const { core, made, rated } = measured;
  const { id, title } = CORE_WORDS[core];
  return [
    {
      id: `${id}-conductance`,
      name: `${title}, conductance`,
      symbol: 'UA',
      value: made.UA,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: `${id}-against-rating`,
      name: `${title}, its conductance by measures, of that by its rating`,
      symbol: 'x_{UA}',
      value: compared(measured)
        ? measuresOverRating.value({ UA: made.UA, UA_r: rated!.rated.UA })
        : null,
      absent: rated ? 'its fins and tubes are not measured' : 'no rating typed in',
      quantity: 'percent',
    },
    {
      id: `${id}-heat`,
      name: `${title}, heat at these flows and inlets`,
      symbol: '\\dot Q',
      value: made.rating.heat,
      quantity: 'heat',
      better: 'higher',
    },
    {
      id: `${id}-effectiveness`,
      name: `${title}, effectiveness`,
      symbol: '\\varepsilon',
      value: made.effectiveness,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: `${id}-air-loss`,
      name: `${title}, pressure the air loses`,
      symbol: '\\Delta p_a',
      value: made.air.pressureDrop,
      quantity: 'airPressure',
      better: 'lower',
    },
    {
      id: `${id}-liquid-loss`,
      name: `${title}, pressure the liquid loses`,
      symbol: '\\Delta p_l',
      value: made.liquid.pressureDrop,
      quantity: 'pressureDrop',
      better: 'lower',
    },
    {
      id: `${id}-air-share`,
      name: `${title}, share of the resistance on the air side`,
      symbol: 's_a',
      value: made.airShare,
      quantity: 'percent',
    },
    {
      id: `${id}-mass`,
      name: `${title}, fins and tubes`,
      symbol: 'm',
      value: made.metalMass,
      quantity: 'mass',
    },
    {
      id: `${id}-volume`,
      name: `${title}, liquid in its tubes`,
      symbol: 'V',
      value: made.tubeVolume,
      quantity: 'volume',
    },
  ];
}
