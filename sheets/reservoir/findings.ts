/** What volume buys and what it cannot. */
import type { Side } from '$lib/job/evaluate';
import type { SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';
import type { Pull } from './pull';
import { runOf, type Study } from './study';

const AROUND_WORD = { traffic: 'in traffic', cruise: 'at cruise', pull: 'in a held pull' } as const;

/** A loop from which no pull can start is told first. */
export function statusFindings(s: SteadySolution, { loop }: Side): Finding[] {
  if (s.status === 'no-flow') {
    return [
      {
        code: 'no-flow',
        level: 'act',
        sentence: say`The pump moves nothing, so the ${q(loop.reservoir.liquidVolume, 'volume')} in the reservoir cannot help: a pull meets only the ${q(loop.chargeCooler.liquidVolume, 'volume')} standing in the charge cooler. The tank stays as it is while the intake air climbs.`,
      },
    ];
  }
  if (s.status === 'balanced') return [];
  const where = AROUND_WORD[s.duty];
  return [
    {
      code: `no-balance-${s.status}`,
      level: 'act',
      sentence:
        s.status === 'boils'
          ? say`The loop finds no balance ${where} below its boiling point of ${q(s.margins.boilingPoint, 'temperature')}. A larger reservoir would only put off the moment.`
          : say`The liquid would freeze ${where}, at ${q(s.margins.freezingPoint, 'temperature')}: mix the coolant first, size the reservoir afterwards.`,
    },
  ];
}

/** Rise against what is allowed, and what double and half would do. */
export function buysFindings(side: Side, study: Study, pull: Pull): Finding[] {
  const { liquidVolume } = side.loop.reservoir;
  const allowed = side.values['reservoirQuestion.allowedRise']!.si!;
  const [half, present, double] = [runOf(study, 0.5), runOf(study, 1), runOf(study, 2)];
  const found: Finding[] = [];
  const rise = q(pull.rise, 'temperatureDifference');
  if (pull.rise > allowed) {
    found.push({
      code: 'volume-short',
      level: 'watch',
      sentence: say`One pull lifts the loop by ${rise}, more than the ${q(allowed, 'temperatureDifference')} allowed. With nothing given off the reservoir would need ${q(pull.needed, 'volume')}; it holds ${q(liquidVolume, 'volume')}.`,
    });
  } else {
    found.push({
      code: 'volume-enough',
      level: 'good',
      sentence: say`One pull lifts the loop by ${rise}, within the ${q(allowed, 'temperatureDifference')} allowed.`,
    });
  }
  if (half && present && double) {
    const rise = (run: typeof half) => q(run.rise, 'temperatureDifference');
    const delay = (run: typeof half) => q(run.timeConstant!, 'time');
    const times = [half, present, double].every(({ timeConstant }) => timeConstant !== null)
      ? say` Two thirds of the way back then take ${delay(half)}, ${delay(present)} or ${delay(double)}: what went in slowly comes out slowly.`
      : [];
    found.push({
      code: 'volume-buys',
      level: 'info',
      sentence: [
        ...say`What volume buys is time. Followed through one pull, the reservoir rises by ${rise(half)} with half the liquid, ${rise(present)} as it is and ${rise(double)} with double.`,
        ...times,
      ],
    });
  }
  return found;
}

/** The end of a held duty, which no volume moves. */
export function endFindings({ loop, prepared }: Side, study: Study): Finding[] {
  const { ambientTemperature } = loop.site;
  if (prepared.ok && ambientTemperature <= prepared.value.coldest) {
    return [
      {
        code: 'frozen-from-cold',
        level: 'act',
        sentence: say`At ambient, ${q(ambientTemperature, 'temperature')}, this liquid is frozen (it freezes at ${q(prepared.value.coldest, 'temperature')}): there is no start from cold, and a split core to expect.`,
      },
    ];
  }
  const settled = runOf(study, 1)?.settled;
  if (settled?.status !== 'balanced') return [];
  return [
    {
      code: 'volume-cannot',
      level: 'info',
      sentence: say`What volume cannot: held ${AROUND_WORD[study.duty]}, the reservoir ends at ${q(settled.temperatures.reservoir, 'temperature')}, with half the liquid as with double. Heat in, flow and air set that end; volume sets how long it takes to get there.`,
    },
  ];
}

/** What the way through the tank does. */
export function flowFindings({ loop }: Side, pull: Pull): Finding[] {
  const { shortCircuit } = loop.reservoir;
  const found: Finding[] = [];
  // A quarter: beyond it the shortened path shows on a thermometer; common practice, no source.
  if (shortCircuit >= 0.25) {
    found.push({
      code: 'short-circuit',
      level: 'watch',
      sentence: say`${q(shortCircuit, 'percent')} of the return goes straight to the outlet and meets the charge cooler again without having seen the tank. The reservoir mixes in ${q(pull.mixing, 'time')} instead of ${q(pull.residence, 'time')}: in a pull it works like a smaller one. Where it settles hardly changes.`,
    });
  }
  if (pull.turnovers < 1) {
    found.push({
      code: 'under-one-turnover',
      level: 'info',
      sentence: say`The pull is over before the pump has moved the reservoir’s liquid once (${q(pull.residence, 'time')}): the rise reaches the tank’s thermometer partly after the pull.`,
    });
  }
  return found;
}

/** Glycol against water. */
export function mixtureFindings({ loop }: Side, share: number | null): Finding[] {
  if (loop.coolant.kind === 'water') {
    return [
      {
        code: 'plain-water',
        level: 'watch',
        sentence: say`Plain water holds the most heat per volume, but it freezes and corrodes: drain or mix it before frost.`,
      },
    ];
  }
  if (share === null) return [];
  return [
    {
      code: 'glycol-capacity',
      level: 'info',
      sentence: say`This mixture holds ${q(share, 'percent')} of the heat of as much water. That is the price of frost and corrosion protection, and only a small one.`,
    },
  ];
}
