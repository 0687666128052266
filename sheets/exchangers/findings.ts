/** What the numbers of the loop and of the charge cooler mean, in plain words. */
import type { Side } from '$lib/job/evaluate';
import { chargeCooling } from '$lib/solver/loop/exchangerCurves';
import { CHARGE_IS_LIQUID, chargeAboveLiquid } from '$lib/solver/loop/readings';
import type { Note } from '$lib/solver/errors';
import type { SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';

/** Said first: numbers that follow are those of a loop without a balance. */
export function statusFindings(s: SteadySolution): Finding[] {
  switch (s.status) {
    case 'balanced':
      return [];
    case 'boils':
      return [
        {
          code: 'boils',
          level: 'act',
          sentence: say`In this duty the loop boils before it balances. What follows is the state at that limit, with ${q(s.residual, 'heat')} left that nothing carries off: the front exchanger would have to carry that as well.`,
        },
      ];
    case 'freezes':
      return [
        {
          code: 'freezes',
          level: 'act',
          sentence: say`The liquid would freeze before the loop balances, at ${q(s.margins.freezingPoint, 'temperature')}; a frozen front exchanger splits.`,
        },
      ];
    case 'no-flow':
      return [
        {
          code: 'no-flow',
          level: 'act',
          sentence: say`The liquid stands still, so neither exchanger carries anything; only their rating points are shown. A bigger core would stand still as well: find out why the pump moves nothing.`,
        },
      ];
  }
}

/** One core sized for a pull; at cruise it has nothing left to do. */
export function chargeFindings({ steady }: Side, s: SteadySolution): Finding[] {
  const found: Finding[] = [];
  const cruise = steady.cruise.ok ? steady.cruise.value : null;
  const pull = steady.pull.ok ? steady.pull.value : null;
  const above = cruise && chargeAboveLiquid(cruise);
  if (
    cruise?.chargeCooler &&
    cruise.status !== 'no-flow' &&
    above !== null &&
    chargeCooling(cruise.chargeCooler) >= CHARGE_IS_LIQUID
  ) {
    const atPull = pull?.chargeCooler
      ? say` In a pull held the same core cools ${q(chargeCooling(pull.chargeCooler), 'percent')} of the way; there its size counts.`
      : [];
    found.push({
      code: 'intake-is-liquid',
      level: 'info',
      sentence: [
        ...say`At cruise the charge is cooled ${q(chargeCooling(cruise.chargeCooler), 'percent')} of the way to the liquid: the intake reads the liquid’s temperature within ${q(Math.abs(above), 'temperatureDifference')}. No larger charge cooler changes that reading.`,
        ...atPull,
      ],
    });
  }
  if (s.status !== 'no-flow' && !s.chargeCooler) {
    found.push({
      code: 'heat-stated',
      level: 'info',
      sentence: say`The heat of this duty is stated outright, so the charge air is not known: the charge cooler is followed no further than its rating.`,
    });
  }
  if (s.charge && s.status !== 'no-flow' && s.temperatures.chargeCoolerIn < s.charge.dewPoint) {
    found.push({
      code: 'charge-condenses',
      level: 'watch',
      sentence: say`The liquid enters the charge cooler at ${q(s.temperatures.chargeCoolerIn, 'temperature')}, below the dew point of the charge at ${q(s.charge.dewPoint, 'temperature')}: water forms on the fins and is swept into the engine.`,
    });
  }
  return found;
}

const isFar = ({ code }: Note) => code === 'core-far-from-rating';

/** A rating carried far by an exponent. Where the charge cooler does nearly all it could, it matters little. */
export function ratingFindings(s: SteadySolution): Finding[] {
  if (s.status === 'no-flow') return [];
  const found: Finding[] = [];
  const cooler = s.chargeCooler;
  if (cooler?.notes.some(isFar)) {
    const settled = chargeCooling(cooler) >= CHARGE_IS_LIQUID;
    found.push({
      code: 'charge-far-from-rating',
      level: settled ? 'info' : 'watch',
      sentence: settled
        ? say`The charge cooler runs far from its rating here; with the charge cooled ${q(chargeCooling(cooler), 'percent')} of the way to the liquid that moves the result little.`
        : say`The charge cooler runs far from its rating here: its conductance of ${q(cooler.UA, 'conductance')} is carried over by an exponent and is an estimate.`,
    });
  }
  if (s.front.notes.some(isFar) && s.air.totalMassFlow > 0) {
    found.push({
      code: 'front-far-from-rating',
      level: 'watch',
      sentence: say`The front exchanger runs far from its rating here, with ${q(s.air.totalMassFlow, 'airMassFlow')} of air and ${q(s.operating.flow, 'volumeFlow')} of liquid: its conductance is an estimate. A rating nearer to the fans’ airflow would make it a number.`,
    });
  }
  return found;
}
