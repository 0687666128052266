/** What the balance means, in plain words. */
import type { Side } from '$lib/job/evaluate';
import {
  CHARGE_IS_LIQUID,
  chargeAboveLiquid,
  frontDrop,
  frontLimit,
  heatIn,
  soakHeat,
} from '$lib/solver/loop/readings';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { timeConstantWith } from '$lib/solver/reservoir/volumes';
import { q, say, type Finding } from '../types';

/** A loop without a balance is told first and plainly. */
export function statusFindings(s: SteadySolution): Finding[] {
  switch (s.status) {
    case 'balanced':
      return [];
    case 'boils':
      return [
        {
          code: 'boils',
          level: 'act',
          sentence: say`In this duty the loop finds no balance below boiling: at ${q(s.temperatures.reservoir, 'temperature')} in the reservoir ${q(s.residual, 'heat')} more still flows in than out. It boils over; the numbers shown are those at that limit.`,
        },
      ];
    case 'freezes':
      return [
        {
          code: 'freezes',
          level: 'act',
          sentence: say`The liquid would freeze before it balances: this mixture freezes at ${q(s.margins.freezingPoint, 'temperature')}.`,
        },
      ];
    case 'no-flow':
      return [
        {
          code: 'no-flow',
          level: 'act',
          sentence: say`The pump moves nothing. The charge is not cooled, while the reservoir only follows the air around it at ${q(s.temperatures.reservoir, 'temperature')}: a stopped pump leaves the tank cool and the intake hot.`,
        },
      ];
  }
}

/** At cruise the intake reading is the liquid's temperature, or this loop shows why not. */
export function cruiseFinding({ steady: { cruise } }: Side): Finding[] {
  if (!cruise.ok) return [];
  const s = cruise.value;
  const above = chargeAboveLiquid(s);
  if (s.status === 'no-flow' || !s.chargeCooler || s.chargeOut === null || above === null)
    return [];
  if (s.ledger.charge < 0) {
    return [
      {
        code: 'liquid-heats-charge',
        level: 'act',
        sentence: say`At cruise the liquid heats the charge: air leaves the compressor at ${q(s.chargeCooler.airIn, 'temperature')} and the engine at ${q(s.chargeOut, 'temperature')}, because the liquid in the charge cooler is at ${q(s.temperatures.chargeCoolerIn, 'temperature')}. A bigger charge cooler would do it more thoroughly. Find why the liquid is hot.`,
      },
    ];
  }
  if (s.chargeCooler.effectiveness < CHARGE_IS_LIQUID) return [];
  return [
    {
      code: 'intake-is-liquid',
      level: 'info',
      sentence: say`At cruise the charge cooler does ${q(s.chargeCooler.effectiveness, 'percent')} of what it could, so the intake reading of ${q(s.chargeOut, 'temperature')} is the liquid’s temperature within ${q(above, 'temperatureDifference')}. Only colder liquid makes it colder.`,
    },
  ];
}

/** Where the heat comes from when it is not the charge. */
export function sourceFinding(s: SteadySolution): Finding[] {
  const soak = soakHeat(s);
  if (s.status === 'no-flow' || !(soak > s.ledger.charge) || !(soak > 0)) return [];
  return [
    {
      code: 'soak-leads',
      level: 'watch',
      sentence: say`Of the ${q(heatIn(s), 'heat')} that enter the liquid, ${q(soak, 'heat')} come from the engine and its bay and only ${q(s.ledger.charge, 'heat')} from the charge air. Shielding and moving hose count as much here as any core. It is the least known input: measure it by a warm-up with the pump running and no boost.`,
    },
  ];
}

/** Flow too small and exchanger too small look alike at the tank; the drop tells them apart. */
export function limitFinding(s: SteadySolution): Finding[] {
  if (s.status === 'balanced' && !(s.front.conductanceToAmbient > 0)) {
    return [
      {
        code: 'front-idle',
        level: 'act',
        sentence: say`No air crosses the front exchanger, so it gives nothing off: the liquid comes to the temperature of what surrounds it.`,
      },
    ];
  }
  if (s.status === 'no-flow' || !(s.front.heat > 0)) return [];
  const drop = q(frontDrop(s), 'temperatureDifference');
  const share = q(s.front.liquidEffectiveness, 'percent');
  const words = {
    flow: say`The liquid drops ${drop} across the front exchanger, ${share} of all it could: it leaves nearly as cold as the air. More flow carries more heat; a larger core would find little left to take.`,
    'air-and-area': say`The liquid drops only ${drop} across the front exchanger, ${share} of all it could. Flow is not what is short: more air through the face, or more face, carries more heat.`,
    both: say`The liquid drops ${drop} across the front exchanger, ${share} of all it could: flow, air and face each still have something to give.`,
  };
  const limit = frontLimit(s);
  return [{ code: `front-limit-${limit}`, level: 'info', sentence: words[limit] }];
}

/** Margins that are gone or nearly so. */
export function marginFindings({ margins, status }: SteadySolution, { pump }: Loop): Finding[] {
  const found: Finding[] = [];
  if (status !== 'no-flow' && margins.suction < 0) {
    found.push({
      code: 'suction-short',
      level: 'act',
      sentence: say`The pump lacks ${q(-margins.suction, 'head')} of suction head: it cavitates, and the flow shown ${pump.cavitation === 'counted' ? 'counts what that takes' : 'is more than it can hold'}. Cooler liquid, a cap that holds pressure, a higher tank or a wider suction hose give it back.`,
    });
  }
  if (status === 'balanced' && margins.boiling < 10) {
    found.push({
      code: 'boiling-near',
      level: 'watch',
      sentence: say`The hottest liquid is ${q(margins.boiling, 'temperatureDifference')} from boiling, which is at ${q(margins.boilingPoint, 'temperature')} here.`,
    });
  }
  return found;
}

/** What no change of the tank alters, and what it does. */
export function volumeFinding(s: SteadySolution, { prepared }: Side): Finding {
  if (s.duty === 'pull') {
    return {
      code: 'pull-held',
      level: 'info',
      sentence: say`A pull lasts seconds; this is where it would settle if it were held for good. What a real pull does is on the sheet of warm-up and recovery.`,
    };
  }
  const [now, double] = [1, 2].map((factor) =>
    prepared.ok && s.status === 'balanced' ? timeConstantWith(prepared.value, s, factor) : null,
  );
  return {
    code: 'volume-sets-delay',
    level: 'info',
    sentence: [
      'The volume of the reservoir stands in no line of this balance. ',
      ...(now && double
        ? say`It sets the delay: two thirds of a change take ${q(now, 'time')} now and would take ${q(double, 'time')} with double the liquid. It never sets the end: that stays at ${q(s.temperatures.reservoir, 'temperature')}.`
        : say`It sets how long things take to get as hot as they do, never whether they do.`),
    ],
  };
}
