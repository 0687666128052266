/** Which inputs of the job this sheet shows: only those that a choice of either side calls for. */
import type { Side } from '$lib/job/evaluate';
import { fieldGroup, type GroupId } from '$lib/job/fields';

/** A field, and the choice without which it says nothing. */
const CALLED_BY: readonly (readonly [field: RegExp, choice: string, values: readonly string[]])[] =
  [
    [/^feed\.relay1\./, 'feed.relays', ['one', 'two']],
    [/^feed\.relay2\./, 'feed.relays', ['two']],
    [/^feed\.wire\.shareBeforeRelay$/, 'feed.relays', ['one', 'two']],
    [/^feed\.wire\.gauge$/, 'feed.wire.by', ['awg']],
    [/^feed\.wire\.area$/, 'feed.wire.by', ['area']],
    [/^feed\.breaker\./, 'feed.protection.kind', ['breaker']],
    [/^feed\.breaker\.resetState$/, 'feed.breaker.reset', ['automatic']],
    [/^feed\.table$/, 'feed.draw', ['table']],
    [/^feed\.shutOffShare$/, 'feed.draw', ['pump-law', 'constant-torque', 'constant-power']],
    [/^feed\.armatureResistance$/, 'pump.motor', ['brushed']],
    [/^pump\.cutoutVolts$/, 'pump.motor', ['held-speed']],
    [/^pump\.volts$/, 'pump.voltsFrom', ['stated']],
  ];

const called = (path: string, sides: readonly Side[]) =>
  CALLED_BY.every(
    ([field, choice, wanted]) =>
      !field.test(path) || sides.some(({ values }) => wanted.includes(values[choice]!.choice!)),
  );

const PUMP = [
  'pump.voltsFrom',
  'pump.volts',
  'pump.motor',
  'pump.ratedVolts',
  'pump.electricPower',
  'pump.cutoutVolts',
];

const paths = (id: GroupId) => fieldGroup(id).fields.map((field) => field.path);

/** Paths of each group of inputs, in the order of the circuit. */
export function inputPaths(found: Side, candidate: Side | null) {
  const sides = candidate ? [found, candidate] : [found];
  const of = (list: readonly string[]) => list.filter((path) => called(path, sides));
  return {
    feed: of(paths('feed')),
    wire: of(paths('feedWire')),
    protection: of(paths('feedProtection')),
    draw: of([...PUMP, ...paths('feedDraw')]),
  };
}
