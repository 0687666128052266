/** The blanks of this sheet: first what a kettle and ice give, then the circuit, then the box of resistors. */
import type { Side } from '$lib/job/evaluate';

export interface InputPaths {
  /** What the answer needs, at the top of the page. */
  readonly first: readonly string[];
  readonly baths: readonly string[];
  readonly probe: readonly string[];
  readonly circuit: readonly string[];
  readonly trim: readonly string[];
  readonly lot: readonly string[];
}

/** Only what the choices made so far call for. */
export function inputPaths({ values }: Side): InputPaths {
  const choice = (path: string) => values[path]!.choice!;
  const law = choice('probe.law');
  return {
    first: [
      'probe.ice',
      'probe.boil',
      'probe.bias',
      'probe.stock',
      ...(choice('probe.stock') === 'hand' ? ['probe.hand'] : []),
      'site.altitude',
    ],
    baths: [
      'probe.airBy',
      ...(choice('probe.airBy') === 'altitude' ? [] : ['probe.barometer']),
      'probe.readPlusMinus',
      'probe.iceOhms',
      'probe.boilOhms',
    ],
    circuit: [
      'probe.readerBias',
      'probe.readerTable',
      ...(choice('probe.readerTable') === 'other' ? ['probe.readerR25', 'probe.readerBeta'] : []),
      'probe.biasTolerance',
      'probe.supply',
      'probe.bits',
      'probe.counts',
      'probe.input',
    ],
    probe: [
      'probe.law',
      ...(law === 'beta'
        ? ['probe.r25', 'probe.beta']
        : law === 'steinhart-hart'
          ? ['probe.a', 'probe.b', 'probe.c']
          : ['probe.points']),
      'probe.tolerance',
      'probe.dissipation',
    ],
    trim: [
      ...(choice('probe.stock') === 'hand' ? [] : ['probe.stockLow', 'probe.stockHigh']),
      'probe.stockTolerance',
      'probe.keepBias',
      'probe.goodEnough',
      'probe.from',
      'probe.to',
    ],
    lot: ['probe.lot', 'probe.lotTolerance'],
  };
}
