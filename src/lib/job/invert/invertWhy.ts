/** Why a result stands where it does: the rungs from the day's air up to it, and what else would move it. */
import { SolverError } from '$lib/solver/errors';
import { byMeasures } from '../models/coreMeasures';
import { triedInput, withSettings, type TriedInput } from './invertInputs';
import { aroundPulls, RESULT_KINDS, type Question } from './invertQuestion';
import { tried, trialOf, type Trial } from './invertResults';
import type { Values } from '../values';

/** One step of a temperature above the one before it, K; the first stands on ambient. */
export interface Rung {
  readonly id:
    'face' | 'front' | 'between' | 'taken' | 'tank' | 'cooler' | 'settled' | 'rise' | 'above';
  readonly by: number;
}

/** From ambient to the result, by what each part adds. Empty where the result is no temperature. */
export function ladder(trial: Trial, question: Question): Rung[] {
  try {
    return rungs(trial, question);
  } catch (thrown) {
    // The result was there before, so only a refusal of a part of the way is left.
    if (thrown instanceof SolverError) return [];
    throw thrown;
  }
}

function rungs(trial: Trial, question: Question): Rung[] {
  const ambient = trial.values['site.ambient']!.si!;
  switch (question.result) {
    case 'charge':
    case 'reservoir': {
      const s = trial.settled(question.duty);
      const { frontOut, chargeCoolerIn, returning, reservoir } = s.temperatures;
      const up: Rung[] = [
        { id: 'face', by: s.front.airIn - ambient },
        { id: 'front', by: frontOut - s.front.airIn },
      ];
      return question.result === 'charge'
        ? [
            ...up,
            { id: 'between', by: chargeCoolerIn - frontOut },
            { id: 'cooler', by: s.chargeOut! - chargeCoolerIn },
          ]
        : [
            ...up,
            // What the charge gives lies between the two only where the cooler comes last.
            ...(returning === frontOut ? [] : [{ id: 'taken', by: returning - frontOut } as const]),
            { id: 'tank', by: reservoir - returning },
          ];
    }
    case 'pull-end': {
      const before = trial.settled(aroundPulls(question)).temperatures.reservoir;
      const { end, history } = trial.pulls();
      return [
        { id: 'settled', by: before - ambient },
        { id: 'rise', by: end.reservoir - before },
        { id: 'above', by: history.chargeOut.at(-1)! - end.reservoir },
      ];
    }
    default:
      return [];
  }
}

/** Another input, and how much better the result gets by a tenth of it. */
export interface Rival {
  readonly id: string;
  readonly name: string;
  readonly change: 'more' | 'less';
  /** Better by, in the unit of the result's differences. */
  readonly gain: number;
}

const TENTH = 0.1;

/** What a workshop can change; the weather and the driver are not among them. */
const CHANGEABLE = [
  'part.frontSameBuild',
  'frontExchanger.rating.heat',
  'frontExchanger.cleanliness',
  'chargeCooler.rating.heat',
  'part.hoses',
  'pump.volts',
  'fans.volts',
  'fans.coverage',
  'airPath.ramRecovery',
  'airPath.recirculation',
  'airPath.stackHeat',
  'part.reservoir',
  'reservoir.shortCircuit',
  'soak.engineConductance',
  'feed.wire.lengthOneWay',
  'feed.relay1.contact',
] as const;

/** What holds the result where it is once the input asked about has its say; most telling first. */
export function bottlenecks(
  trial: Trial,
  question: Question,
  input: TriedInput,
  y: number,
): Rival[] {
  const { values } = trial;
  const better = RESULT_KINDS[question.result].better === 'lower' ? -1 : 1;
  const asked = new Set(input.paths);
  return CHANGEABLE.flatMap((id): Rival[] => {
    const other = triedInput(id, values);
    if (other.paths.some((path) => asked.has(path)) || !counts(id, values, question)) return [];
    return ([1 + TENTH, 1 - TENTH] as const).flatMap((factor): Rival[] => {
      const x = Math.min(Math.max(factor * other.present, other.range[0]), other.range[1]);
      if (x === other.present) return [];
      const moved = tried(trialOf(withSettings(values, other.settings(x)), question), question);
      if (moved.y === null) return [];
      const gain = better * (moved.y - y);
      const change = factor > 1 ? ('more' as const) : ('less' as const);
      return gain > FELT * Math.max(Math.abs(y), 1e-9)
        ? [{ id, name: other.name, change, gain }]
        : [];
    });
  }).toSorted((a, b) => b.gain - a.gain);
}

/** Smaller gains are not worth a word, share of the result. */
const FELT = 1e-5;

/** Whether moving the input moves the loop as it stands, and no switch with it. */
function counts(id: string, values: Values, { result }: Question): boolean {
  const fed = values['pump.voltsFrom']!.choice === 'feed' || result === 'drop';
  if (id === 'pump.volts') return !fed;
  return id.startsWith('feed.') ? fed : true;
}

/** Why an input does nothing for a result, as the job stands; a sentence's end. */
export function whyFlat(values: Values, question: Question): string {
  const { input, result, duty } = question;
  const [head, middle, key] = input.split('.');
  const settled = !RESULT_KINDS[result].followed;
  const choice = (path: string) => values[path]!.choice;
  if (/\.rating\./.test(input) && byMeasures(values, head as 'chargeCooler' | 'frontExchanger'))
    return 'this core is told by its measures, and its rating then only names the flows they are told at';
  if (settled && HOLDS_HEAT.test(input))
    return 'volume and metal set how long the loop takes, never where it settles';
  if (head === 'duty') {
    if (settled && middle !== duty) return 'it belongs to another duty than the one asked about';
    const by = choice(`duty.${middle}.by`);
    const asked = { power: 'power', fuelUse: 'power', airFuelRatio: 'power', heat: 'heat' }[key!];
    if (asked && by !== asked) return 'the charge air of this duty is found another way';
  }
  if (head === 'fans' && values['fans.count']!.si === 0) return 'there is no fan';
  if (input === 'reservoir.cap' && choice('reservoir.vent') === 'vented')
    return 'the reservoir is open to the air';
  return 'nothing that decides this result depends on it, as the job stands';
}

const HOLDS_HEAT = /^(part\.reservoir|reservoir\.(totalVolume|metal)|.*\.(liquidVolume|metal))$/;
