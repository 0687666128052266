/** Results of one choice: the rows of the table. */
import { stateAbove, stateBelow } from '$lib/solver/loop/limits';
import type { Limits } from '$lib/job/models/toLoop';
import { stateWithin } from '$lib/solver/feed/dropAdvice';
import { currentOf, pumpCurrentOf, type Judge } from '$lib/job/upgrades/assess';
import type { Result } from '../types';
import { costOf, costPerDegree, gainOf, massAddedBy, takesOff, type Choice } from './choice';
import { plusMinus } from './plusMinus';

const NOT_SOLVED = 'the loop cannot be solved';
const NO_AIR = 'heat is stated outright, so the air is not known';

const temperature = {
  quantity: 'temperature',
  differenceQuantity: 'temperatureDifference',
  better: 'lower',
} as const;
const degrees = { quantity: 'temperatureDifference', better: 'higher' } as const;

export const resultsOf = (choice: Choice, limits: Limits): Result[] =>
  [...temperatures(choice, limits), ...margins(choice), ...price(choice)].map((result) =>
    unsure(choice, result),
  );

/** With its ±, where it has one. */
function unsure(choice: Choice, result: Result): Result {
  const pm = result.value === null ? undefined : plusMinus(choice, result.id);
  return pm === undefined ? result : { ...result, plusMinus: pm };
}

const ICED = 'not told with ice in the tank';

function temperatures({ is }: Choice, limits: Limits): Result[] {
  const solved = is.problem === null;
  const charge = (id: string, name: string, symbol: string, value: number | null, why: string) => ({
    ...temperature,
    id,
    name,
    symbol,
    value,
    absent: solved ? why : NOT_SOLVED,
    ...(value !== null && { state: stateBelow(value, limits.charge) }),
  });
  const tank = (id: string, name: string, symbol: string, value: number | null) => ({
    ...temperature,
    id,
    name,
    symbol,
    value,
    absent: NOT_SOLVED,
    ...(value !== null && { state: stateBelow(value, limits.reservoir) }),
  });
  const drive = is.driveProblem ?? 'no pull in this drive, or it ended before';
  return [
    charge('charge-cruise', 'Charge air, settled at cruise', 'T_{3,c}', is.chargeCruise, NO_AIR),
    charge('charge-pull', 'Charge air as the last pull ends', 'T_{3,p}', is.chargePull, drive),
    charge(
      'charge-after',
      'Charge air as the segment after that pull ends',
      'T_{3,r}',
      is.chargeAfter,
      'nothing follows the last pull, or the drive ended before',
    ),
    {
      id: 'recovery-time',
      name: 'Recovery after the hardest segment',
      symbol: 't_{rec}',
      value: is.recovery,
      absent: !solved ? NOT_SOLVED : is.iced ? ICED : 'not back within this drive',
      // Nothing was recovered from: 0 s would read as a feat.
      ...(is.recovery === 0 && { said: 'within the band as that segment ends' }),
      quantity: 'time',
      better: 'lower',
    },
    tank('tank-cruise', 'Reservoir, settled at cruise', 'T_{t,c}', is.tankCruise),
    tank('tank-peak', 'Highest reservoir of the drive', 'T_{t,max}', is.tankPeak),
  ];
}

function margins(choice: Choice): Result[] {
  const { is } = choice;
  const margin = (id: string, name: string, value: number | null): Result => ({
    ...degrees,
    id,
    name,
    symbol: '\\Delta T',
    value,
    absent: NOT_SOLVED,
    ...(value !== null && { state: stateAbove(value, 0) }),
  });
  const pump = pumpCurrentOf(is);
  return [
    {
      id: 'suction-margin',
      name: 'Suction head to spare, least',
      symbol: '\\Delta h',
      value: is.suction,
      absent: NOT_SOLVED,
      quantity: 'head',
      better: 'higher',
      ...(is.suction !== null && { state: stateAbove(is.suction, 0, 'head') }),
    },
    margin('boiling-margin', 'Degrees below boiling, least', is.boiling),
    margin('freezing-margin', 'Degrees above freezing, least', is.freezing),
    {
      id: 'feed-margin',
      name: 'What fuse or breaker holds above the pump’s current',
      symbol: '\\Delta I',
      value: is.feed,
      absent: 'the pump stands still',
      quantity: 'current',
      better: 'higher',
      ...(is.holds !== null && pump !== null && { state: stateWithin(pump, is.holds) }),
    },
    {
      id: 'pump-current',
      name: 'Current of the pump',
      symbol: 'I_p',
      value: pump,
      absent: 'the pump stands still',
      quantity: 'current',
      better: 'lower',
    },
    {
      id: 'current',
      name: 'Current of pump and fans',
      symbol: 'I',
      value: currentOf(is),
      absent: pump === null ? 'the pump stands still' : 'current of a fan not stated',
      quantity: 'current',
      better: 'lower',
    },
  ];
}

function price(choice: Choice): Result[] {
  const { parts } = choice;
  const none = 'nothing is bought';
  const of = (lacking: string) =>
    parts === null ? none : parts.rows.length === 0 ? 'no part is listed' : lacking;
  const gain = (judge: Judge, id: string, name: string): Result => ({
    ...degrees,
    id,
    name,
    symbol: '\\Delta T',
    value: gainOf(choice, judge),
    absent: parts === null ? 'this is what is compared with' : NOT_SOLVED,
  });
  const perDegree = (judge: Judge, id: string, name: string): Result => ({
    id,
    name,
    symbol: 'C/\\Delta T',
    value: costPerDegree(choice, judge),
    absent:
      costOf(choice) !== null && !takesOff(gainOf(choice, judge))
        ? 'it takes no degrees off'
        : of('a price is not known'),
    quantity: 'costPerDegree',
    better: 'lower',
  });
  return [
    gain('cruise', 'gain-cruise', 'Degrees it takes off at cruise'),
    gain('pull', 'gain-pull', 'Degrees it takes off as the last pull ends'),
    {
      id: 'mass-added',
      name: 'Mass added, with its liquid, less what comes off',
      symbol: '\\Delta m',
      value: massAddedBy(choice),
      absent: of('a mass is not known'),
      quantity: 'mass',
      better: 'lower',
    },
    {
      id: 'cost',
      name: 'Cost of its parts',
      symbol: 'C',
      value: costOf(choice),
      absent: of('a price is not known'),
      quantity: 'money',
      better: 'lower',
    },
    perDegree('cruise', 'per-degree-cruise', 'Cost of each degree at cruise'),
    perDegree('pull', 'per-degree-pull', 'Cost of each degree as the last pull ends'),
  ];
}
