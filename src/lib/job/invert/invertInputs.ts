/** The inputs a target may be solved for: where each may go, and what is set with it. */
import { dashBore } from '$lib/solver/hydraulics/dash';
import { gaugeName, wireArea } from '$lib/solver/feed/gauge';
import { SOLD_GAUGES } from '$lib/solver/feed/wireFor';
import type { Quantity } from '$lib/solver/quantity';
import { byMeasures } from '../models/coreMeasures';
import { fieldAt, type QuantityField } from '../fields';
import { HOSE_RUNS } from '../fields/hoses';
import { INPUTS, type WholePart } from '../fields/whatItTakes';
import type { Value, Values } from '../values';

/** What is put into one field; SI, a choice, or the cells of a table. */
export type Setting = { readonly path: string } & Pick<Value, 'si' | 'choice' | 'rows'>;

/** A size one can buy or choose. */
export interface Entry {
  readonly x: number;
  readonly name: string;
}

export interface TriedInput {
  /** Of its choice: a path, or the name of a whole part. */
  readonly id: string;
  readonly name: string;
  readonly quantity: Quantity;
  /** Fields it is set by, the first the one whose value is told. */
  readonly paths: readonly string[];
  readonly range: readonly [low: number, high: number];
  readonly present: number;
  /** Nothing but these can be had. */
  readonly only?: readonly Entry[];
  /** Sizes sold among the many that can be thought of. */
  readonly sold?: readonly Entry[];
  /** What is set with it, in words. */
  readonly with?: string;
  settings(x: number): Setting[];
}

const NAMES = new Map(INPUTS.map(({ value, label }) => [value, label]));

/** The input of that name on one side. */
export function triedInput(id: string, values: Values): TriedInput {
  const make = WHOLE[id as WholePart];
  return { id, name: NAMES.get(id)!, ...(make ? make(values) : single(id, values)) };
}

type Made = Omit<TriedInput, 'id' | 'name'>;

const quantityAt = (path: string) => fieldAt(path) as QuantityField;
const si = (values: Values, path: string) => values[path]!.si!;

function single(path: string, values: Values): Made {
  const { quantity, min, max, integer } = quantityAt(path);
  const also = switches(path, values);
  return {
    quantity,
    paths: [path],
    range: [min, max],
    present: si(values, path),
    ...(integer && { only: whole(min, max) }),
    ...(path.endsWith('.bore') && { sold: DASHES }),
    ...(also.length && { with: SWITCH_WORDS }),
    settings: (x) => [{ path, si: x }, ...also],
  };
}

const whole = (min: number, max: number): Entry[] =>
  Array.from({ length: max - min + 1 }, (_, i) => ({ x: min + i, name: String(min + i) }));

/** Choices without which an input of the feed, or the volts stated, would count for nothing. */
function switches(path: string, values: Values): Setting[] {
  if (path === 'pump.volts') return set(values, 'pump.voltsFrom', 'stated');
  return path.startsWith('feed.') ? set(values, 'pump.voltsFrom', 'feed') : [];
}

const set = (values: Values, path: string, choice: string): Setting[] =>
  values[path]!.choice === choice ? [] : [{ path, choice }];

const SWITCH_WORDS = 'where the volts at the pump come from is switched so that this input counts';

/** Dash sizes by the bore of the hose. */
const DASHES: readonly Entry[] = [6, 8, 10, 12, 16, 20, 24].map((dash) => ({
  x: dashBore(dash, 'hose-bore').bore,
  name: `−${dash}`,
}));

/** Runs of hose by the fields that follow the bore. */
const BORES = HOSE_RUNS.map(({ id }) => ({
  bore: `hose.${id}.bore`,
  fitting: `hose.${id}.fittingBore`,
}));

const WHOLE: Readonly<Record<WholePart, (values: Values) => Made>> = {
  'part.hoses'(values) {
    const { quantity, min, max } = quantityAt(BORES[0]!.bore);
    const present = Math.min(...BORES.map(({ bore }) => si(values, bore)));
    return {
      quantity,
      paths: BORES.flatMap(({ bore, fitting }) => [bore, fitting]),
      range: [min, max],
      present,
      sold: DASHES,
      with: 'all four runs get this bore, and their end fittings keep their share of it',
      settings: (x) =>
        BORES.flatMap(({ bore, fitting }) => [
          { path: bore, si: x },
          { path: fitting, si: (x * si(values, fitting)) / si(values, bore) },
        ]),
    };
  },

  'part.reservoir'(values) {
    const { quantity, min, max } = quantityAt('reservoir.volume');
    const present = si(values, 'reservoir.volume');
    const air = Math.max(0, si(values, 'reservoir.totalVolume') - present);
    return {
      quantity,
      paths: ['reservoir.volume', 'reservoir.totalVolume'],
      range: [min, max - air],
      present,
      with: 'the air space stays as it is, and the metal of a larger tank is not counted',
      // The full volume first: the liquid must always fit.
      settings: (x) => [
        { path: 'reservoir.volume', si: x },
        { path: 'reservoir.totalVolume', si: x + air },
      ],
    };
  },

  'part.gauge'(values) {
    const byArea = values['feed.wire.by']!.choice === 'area';
    const spoken = values['feed.wire.gauge']!.choice!;
    const only = SOLD_GAUGES.map((awg) => ({ x: wireArea({ awg }), name: gaugeName(awg) }));
    return {
      quantity: 'wireArea',
      paths: ['feed.wire.gauge'],
      range: [only[0]!.x, only.at(-1)!.x],
      present: byArea
        ? si(values, 'feed.wire.area')
        : wireArea({ awg: spoken.includes('/') ? 1 - parseInt(spoken) : Number(spoken) }),
      only,
      with: 'the pump is taken as fed by the feed described, and the wire as known by its gauge',
      settings: (x) => [
        ...nearest(only, x).map(({ name }) => ({ path: 'feed.wire.gauge', choice: name })),
        ...set(values, 'feed.wire.by', 'awg'),
        ...set(values, 'pump.voltsFrom', 'feed'),
      ],
    };
  },

  'part.frontSameBuild': sameBuild,
};

const nearest = (only: readonly Entry[], x: number): Entry[] => {
  const best = only.reduce((a, b) => (Math.abs(b.x - x) < Math.abs(a.x - x) ? b : a));
  return [best];
};

/** Fields of the front exchanger that grow with its face where fins, tubes and depth stay. */
const WITH_FACE = ['rating.heat', 'rating.airMassFlow', 'rating.liquidFlow'];
const HELD_BY_FACE = ['liquidVolume', 'metal'];

/**
 * More or fewer of the same tubes: a core k times as high carries at k times the rated flows k times the
 * rated heat, with the same losses of both streams.
 */
function sameBuild(values: Values): Made {
  const at = (key: string) => `frontExchanger.${key}`;
  const { quantity, min, max } = quantityAt(at('height'));
  const present = si(values, at('height'));
  const measured = byMeasures(values, 'frontExchanger');
  const scaled = measured ? HELD_BY_FACE : [...WITH_FACE, ...HELD_BY_FACE];
  const rows = values[at('liquidLoss')]!.rows!;
  return {
    quantity,
    paths: [at('height'), ...scaled.map(at), ...(measured ? [] : [at('liquidLoss')])],
    range: [min, max],
    present,
    with: 'fins, tubes and depth stay; rated heat and flows, liquid and metal go with the height',
    settings: (x) => {
      const k = x / present;
      return [
        { path: at('height'), si: x },
        ...scaled.map((key) => ({ path: at(key), si: k * si(values, at(key)) })),
        ...(measured
          ? []
          : [
              {
                path: at('liquidLoss'),
                rows: rows.map((row) => ({ ...row, flow: k * (row.flow as number) })),
              },
            ]),
      ];
    },
  };
}

/** Values with settings put in. */
export function withSettings(values: Values, settings: readonly Setting[]): Values {
  const all: Record<string, Value> = { ...values };
  for (const { path, ...meaning } of settings) all[path] = { ...values[path]!, ...meaning };
  return all;
}
