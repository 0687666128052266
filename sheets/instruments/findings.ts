/** Which checks are wanting, and how good the instruments must be, in plain words. */
import * as plan from '$lib/solver/instruments/plan/formulas';
import { PLACE_WORDS } from '../diagnosis/words';
import { q, say, type Finding, type Sentence } from '../types';
import { failed, missing, type Check } from './checks';
import type { Placed } from './order';
import type { HeatReading, Study } from './study';

export const findings = (study: Study, order: readonly Placed[]): Finding[] => [
  missingFinding(study),
  ...failed(study.checks).map(offFinding),
  ...study.checks.filter((c) => c.contradicts).map(contradiction),
  ...nextFinding(order),
  ...(study.heat ? heatFindings(study, study.heat) : [NO_DROP]),
  ...boilFinding(study),
  ...pairFinding(study),
];

const NO_DROP: Finding = {
  code: 'no-drop',
  level: 'act',
  sentence: say`In this duty the loop as described settles with no drop across the front exchanger to be read, or does not settle. How sure its heat would be cannot be told; the checks stand.`,
};

const listed = (checks: readonly Check[]) =>
  checks.map(({ name }) => name.charAt(0).toLowerCase() + name.slice(1)).join('; ');

function missingFinding({ checks, read }: Study): Finding {
  const left = missing(checks);
  if (left.length === 0) {
    return failed(checks).length === 0
      ? {
          code: 'all-checked',
          level: 'good',
          sentence: say`Every check that this job calls for was made and is good. Its readings may be concluded from, each within its ±.`,
        }
      : {
          code: 'checked-some-off',
          level: 'watch',
          sentence: say`Every check was made; those that came out off are told here. Conclude from the others only.`,
        };
  }
  return read.size > 0
    ? {
        code: 'not-checked',
        level: 'act',
        sentence: say`Readings are entered, and ${q(left.length, 'count')} checks are not made: ${listed(left)}. Conclude nothing yet: bad data is worse than no data.`,
      }
    : {
        code: 'to-check',
        level: 'watch',
        sentence: say`Before anything is concluded, ${q(left.length, 'count')} checks are to be made: ${listed(left)}. Bad data is worse than no data.`,
      };
}

function offFinding(check: Check): Finding {
  const { id, name, read, expected, quantity, difference, off } = check;
  const measured: Sentence =
    read === null || expected === null || off === null
      ? say`${name}: recorded as off, without what it read. Enter it, then its reading may be corrected or the instrument changed.`
      : expected.value === 0
        ? say`${name}: read ${q(read, quantity)} where at most ${q(expected.plusMinus, difference)} belongs. Find which one errs before any of them is used.`
        : say`${name}: read ${q(read, quantity)} where ${q(expected.value, quantity)} ± ${q(expected.plusMinus, difference)} belongs, off by ${q(off, difference)}. Correct it or change it before its readings are used.`;
  return { code: `off-${id}`, level: 'act', sentence: measured };
}

function contradiction({ id, name, state }: Check): Finding {
  return {
    code: `contradicts-${id}`,
    level: 'act',
    sentence:
      state === 'off'
        ? say`${name}: recorded as good, yet what it read lies outside its ±. Read it again.`
        : say`${name}: recorded as off, yet what it read lies within its ±. Read it again, or say what was wrong.`,
  };
}

function nextFinding(order: readonly Placed[]): Finding[] {
  const first = order[0];
  if (!first?.next) return [];
  const { doubt, minutes, place } = first.next;
  return [
    {
      code: 'next',
      level: 'info',
      sentence: say`To fit next: ${first.name.charAt(0).toLowerCase()}${first.name.slice(1)}, read ${PLACE_WORDS[place]}. By the readings so far it can be expected to take away ${q(doubt, 'percent')} of the doubt which fault it is, in ${q(minutes, 'count')} minutes.`,
    },
  ];
}

function heatFindings(study: Study, heat: HeatReading): Finding[] {
  const { flowShare, flowBy, probe, heatWanted, pair } = study;
  const { drop, share, wanted } = heat;
  const by =
    flowBy === 'bucket' ? ' (by its bucket test)' : flowBy === 'usual' ? ' (as usual)' : '';
  const sure = share <= heatWanted;
  const blame = plan.probesToBlame.value({ u_D: pair, dT: drop, x_Q: share });
  return [
    {
      code: 'heat',
      level: sure ? 'good' : 'act',
      sentence: sure
        ? say`The drop to be read is ${q(drop, 'temperatureDifference')}. With the drop good to ± ${q(pair, 'temperatureDifference')} and the flow to ± ${q(flowShare, 'percent')}${by} the heat is sure to ± ${q(share, 'percent')}: enough.`
        : say`The drop to be read is only ${q(drop, 'temperatureDifference')}. With the drop good to ± ${q(pair, 'temperatureDifference')} and the flow to ± ${q(flowShare, 'percent')}${by} the heat is sure to ± ${q(share, 'percent')}, and ± ${q(heatWanted, 'percent')} is wanted.`,
    },
    wanted === null
      ? {
          code: 'flow-first',
          level: 'act',
          sentence: say`The flow alone is less sure than the heat is wanted: no probe, however good, helps. Calibrate the meter with bucket and watch first.`,
        }
      : wanted < probe
        ? {
            code: 'probes-wanted',
            level: 'watch',
            sentence: say`Each probe would have to be good to ± ${q(wanted, 'temperatureDifference')}, or the two matched in one bath. The probes bring ${q(blame, 'percent')} of the doubt.`,
          }
        : {
            code: 'probes-good',
            level: 'good',
            sentence: say`Probes good to ± ${q(wanted, 'temperatureDifference')} would do; of the doubt that is left they bring ${q(blame, 'percent')}, the flow the rest.`,
          },
  ];
}

function boilFinding({ air }: Study): Finding[] {
  if (!air.ok) {
    return [{ code: air.problem.code, level: 'act', sentence: say`${air.problem.message}` }];
  }
  const { boilPoint, boilPlusMinus, barometer } = air.value;
  return [
    {
      code: 'boil',
      level: 'info',
      sentence:
        barometer.by === 'altitude'
          ? say`Water boils here at ${q(boilPoint, 'temperature')} ± ${q(boilPlusMinus, 'temperatureDifference')}; altitude alone leaves the weather open, a barometer does better.`
          : say`Water boils here and today at ${q(boilPoint, 'temperature')} ± ${q(boilPlusMinus, 'temperatureDifference')}.`,
    },
  ];
}

const pairFinding = ({ pairFound }: Study): Finding[] =>
  pairFound
    ? []
    : [
        {
          code: 'pair',
          level: 'info',
          sentence: say`For a drop only the difference of two probes counts. Put both in one stirred bath and enter by how much they differ: that often betters the heat more than dearer probes.`,
        },
      ];
