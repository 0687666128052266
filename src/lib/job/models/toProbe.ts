/** From the blanks of a probe to its circuit, its baths and what a trim may be made of. */
import { preferredValues, type SeriesName } from '$lib/solver/instruments/preferred';
import type { BathReading } from '$lib/solver/instruments/probe/bath';
import {
  airPressureOf,
  boilPoint,
  ICE_POINT,
  type Barometer,
} from '$lib/solver/instruments/probe/boilPoint';
import { requireDivider } from '$lib/solver/instruments/probe/divider';
import { probeOf, type Probe, type ProbeLaw } from '$lib/solver/instruments/probe/probe';
import type { ReadSetup } from '$lib/solver/instruments/probe/reader';
import { stockOf, type Stock } from '$lib/solver/instruments/probe/trim/search';
import type { Tolerances } from '$lib/solver/instruments/probe/worstCase';
import type { Values } from '../values';

/** A probe, its circuit and its baths as entered. */
export interface ProbeJob {
  readonly setup: ReadSetup;
  /** The reader's maker states for which bias its table was made. */
  readonly readerBiasKnown: boolean;
  readonly tolerances: Tolerances;
  readonly barometer: Barometer;
  /** Pa */
  readonly airPressure: number;
  /** Water at an open boil, K. */
  readonly boilPoint: number;
  readonly ice: BathReading | null;
  readonly boil: BathReading | null;
}

type Points = Extract<ProbeLaw, { kind: 'table' }>['points'];

/** @throws SolverError where the probe, its circuit or the air contradicts itself */
export function toProbe(values: Values): ProbeJob {
  const si = (path: string) => values[path]!.si!;
  const choice = (path: string) => values[path]!.choice!;
  const maybe = (path: string) => values[path]!.si;

  const probe = probeOf(toLaw(values));
  const table: Probe =
    choice('probe.readerTable') === 'same'
      ? probe
      : probeOf({ kind: 'beta', R25: si('probe.readerR25'), beta: si('probe.readerBeta') });
  const bias = si('probe.bias');
  const readerBias = maybe('probe.readerBias');
  const divider = {
    supply: si('probe.supply'),
    bias,
    input: maybe('probe.input') ?? Infinity,
    bits: si('probe.bits'),
  };
  requireDivider(divider);

  const barometer = toBarometer(values);
  const airPressure = airPressureOf(barometer);
  const boils = boilPoint(airPressure);
  const reading = (T: number, shown?: number, ohms?: number): BathReading | null =>
    shown === undefined
      ? null
      : { T, shown, plusMinus: si('probe.readPlusMinus'), ...(ohms !== undefined && { ohms }) };

  return {
    setup: { probe, divider, reader: { table, bias: readerBias ?? bias }, flaw: {} },
    readerBiasKnown: readerBias !== undefined,
    tolerances: {
      probe: si('probe.tolerance'),
      bias: si('probe.biasTolerance'),
      counts: si('probe.counts'),
      dissipation: si('probe.dissipation'),
    },
    barometer,
    airPressure,
    boilPoint: boils,
    ice: reading(ICE_POINT, maybe('probe.ice'), maybe('probe.iceOhms')),
    boil: reading(boils, maybe('probe.boil'), maybe('probe.boilOhms')),
  };
}

function toLaw(values: Values): ProbeLaw {
  const si = (path: string) => values[path]!.si!;
  const kind = values['probe.law']!.choice as ProbeLaw['kind'];
  switch (kind) {
    case 'beta':
      return { kind, R25: si('probe.r25'), beta: si('probe.beta') };
    case 'steinhart-hart':
      return { kind, A: si('probe.a'), B: si('probe.b'), C: si('probe.c') };
    default:
      return { kind, points: values['probe.points']!.rows as unknown as Points };
  }
}

/** How the pressure of the air is known. */
export function toBarometer(values: Values): Barometer {
  const pressure = values['probe.barometer']!.si!;
  const altitude = values['site.altitude']!.si!;
  switch (values['probe.airBy']!.choice) {
    case 'station':
      return { by: 'station', pressure };
    case 'report':
      return { by: 'report', pressure, altitude };
    default:
      return { by: 'altitude', altitude };
  }
}

/** Resistors to choose from. @throws SolverError for an empty or senseless list */
export function toStock(values: Values): Stock {
  const choice = values['probe.stock']!.choice!;
  if (choice === 'hand') {
    const rows = values['probe.hand']!.rows!;
    return stockOf(
      rows.map(({ R, count }) => ({
        R: R as number,
        ...(typeof count === 'number' && { count }),
      })),
    );
  }
  const [low, high] = ['probe.stockLow', 'probe.stockHigh'].map((path) => values[path]!.si!);
  return stockOf(preferredValues(choice as SeriesName, low!, high!).map((R) => ({ R })));
}

/** Readings of several probes, by bath, each with its row; rows without one are left out. */
export function toLot(values: Values, bath: 'ice' | 'boil'): { row: number; shown: number }[] {
  return values['probe.lot']!.rows!.flatMap((cells, row) => {
    const shown = cells[bath];
    return typeof shown === 'number' ? [{ row, shown }] : [];
  });
}
