/** Results of the probe: what to solder, the error before and after, how fine and how sure it reads. */
import { ICE_POINT } from '$lib/solver/instruments/probe/boilPoint';
import { countStep } from '$lib/solver/instruments/probe/fineness';
import { worstCase } from '$lib/solver/instruments/probe/worstCase';
import { stateWithin } from '$lib/solver/feed/dropAdvice';
import type { Result } from '../types';
import { misfitUnknown, NO_TRIM, unknown } from './reasons';
import type { Study } from './study';
import { tried } from './tried';

/** The same rows where nothing can be said. */
export const noResults = (absent: string): Result[] =>
  (
    [
      ['trim', 'Trim to solder', 'R_n', 'resistance'],
      [
        'error-before',
        'Largest error over the range, as it is',
        '\\Delta T_0',
        'temperatureDifference',
      ],
      [
        'error-after',
        'Largest error over the range, trimmed',
        '\\Delta T_1',
        'temperatureDifference',
      ],
      ['bias-wanted', 'Bias that the reader wants', 'R_b', 'resistance'],
    ] as const
  ).map(([id, name, symbol, quantity]) => ({ id, name, symbol, value: null, absent, quantity }));

export function results(study: Study): Result[] {
  const { job, verdict, leading, trims, trim, noTrim, goodEnough, stockAssumed } = study;
  const known = trims?.ok && (verdict || job.readerBiasKnown) ? trims.value : null;
  const absent = unknown(study);
  const absentTrim = known && noTrim ? NO_TRIM[noTrim] : absent;
  const mended = noTrim !== 'repair' && noTrim !== 'bias-cannot';
  const example = trim && stockAssumed ? ', of the example list; enter yours' : '';
  const within = (error: number | null) =>
    error === null ? {} : { state: stateWithin(error, goodEnough) };
  const before = known?.present ?? null;
  const after = known ? (trim?.worst ?? null) : null;
  return [
    {
      id: 'trim',
      name: trim ? `Trim to solder, whole network${example}` : 'Trim to solder',
      symbol: 'R_n',
      value: trim?.R ?? null,
      absent: absentTrim,
      quantity: 'resistance',
    },
    {
      id: 'error-before',
      name: 'Largest error over the range, as it is',
      symbol: '\\Delta T_0',
      value: before === Infinity ? null : before,
      absent: before === Infinity ? 'the reader shows nothing somewhere in it' : absent,
      quantity: 'temperatureDifference',
      better: 'lower',
      ...within(before),
    },
    {
      id: 'error-after',
      name: `Largest error over the range, trimmed${example}`,
      symbol: '\\Delta T_1',
      value: after,
      absent: absentTrim,
      quantity: 'temperatureDifference',
      better: 'lower',
      ...within(after),
    },
    {
      id: 'error-tolerance',
      name: 'The same with every resistor at the end of its ±',
      symbol: '\\Delta T_2',
      value: trim?.worstWithTolerance ?? null,
      absent: absentTrim,
      quantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'bias-wanted',
      name: 'Bias that the reader wants',
      symbol: 'R_b',
      // Past a fault, the best bias is only what hides it best.
      value: mended ? (known?.target ?? null) : null,
      absent: mended ? absent : absentTrim,
      quantity: 'resistance',
    },
    {
      id: 'chi-square',
      name: 'Misfit of the leading explanation, squares over both baths',
      symbol: '\\chi^2',
      value: leading?.chiSquare ?? null,
      absent: misfitUnknown(study),
      quantity: 'ratio',
      better: 'lower',
    },
    {
      id: 'boil-point',
      name: 'Water at an open boil here',
      symbol: 'T_b',
      value: job.boilPoint,
      quantity: 'temperature',
    },
    ...fineness(study),
    ...lotResults(study),
  ];
}

function fineness({ job, setup, trim }: Study): Result[] {
  const { divider, probe } = job.setup;
  const R_b = trim?.bias ?? setup?.divider.bias ?? divider.bias;
  const at = (T: number) => countStep(job.setup, R_b, T);
  // Of a sound circuit: its own tolerances, the table made for its bias.
  const sound = { ...job.setup, reader: { table: probe, bias: divider.bias } };
  // A count at an end of the converter shows nothing, and has no band.
  const worst = tried(() => worstCase(sound, job.tolerances, job.boilPoint));
  const band = divider.input === Infinity && worst.ok ? worst.value : null;
  return [
    {
      id: 'count-ice',
      name: 'One count in ice',
      symbol: '\\Delta T_n',
      value: at(ICE_POINT),
      quantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'count-boil',
      name: 'One count at the boil',
      symbol: '\\Delta T_n',
      value: at(job.boilPoint),
      quantity: 'temperatureDifference',
      better: 'lower',
    },
    ...(band
      ? ([
          {
            id: 'band-low',
            name: 'At the boil a sound circuit may show, lowest',
            symbol: 'T_{low}',
            value: band.low,
            quantity: 'temperature',
          },
          {
            id: 'band-high',
            name: 'At the boil a sound circuit may show, highest',
            symbol: 'T_{high}',
            value: band.high,
            quantity: 'temperature',
          },
        ] as const)
      : []),
  ];
}

function lotResults({ lot }: Study): Result[] {
  return (['ice', 'boil'] as const).flatMap((bath): Result[] => {
    const compared = lot[bath];
    if (!compared) return [];
    const where = bath === 'ice' ? 'in ice' : 'at the boil';
    return [
      {
        id: `spread-${bath}`,
        name: `Spread of the probes ${where}`,
        symbol: '\\Delta T',
        value: compared.spread,
        quantity: 'temperatureDifference',
        better: 'lower',
      },
      {
        id: `rejected-${bath}`,
        name: `Probes to reject ${where}`,
        symbol: 'n',
        value: compared.probes.filter((p) => p.reject).length,
        quantity: 'count',
        better: 'lower',
      },
    ];
  });
}
