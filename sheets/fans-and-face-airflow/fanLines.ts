/** Lines of the fans: speed, flow and pressure at the balance; what they pull standing; when they are in the way. */
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import { freeDeliveryOfAll, fanHandover, standingFlow } from '$lib/solver/airside/curves';
import { airModel } from '$lib/solver/airside/face';
import { fanModel, type FanModel } from '$lib/solver/airside/fan';
import {
  askedStanding,
  drivenFanPressure,
  fanFlow,
  fanPressure,
  freeAirShare,
  freeDelivery,
  handoverSpeed,
  standingFanPressure,
  sweptDisc,
} from '$lib/solver/airside/formulas';
import { speedFromVolts } from '$lib/solver/hydraulics/formulas';
import type { AirSide, Loop } from '$lib/solver/loop/types';

/** Speed of the fans, and what one of them does at the face velocity of the balance. */
export function fanLines(loop: Loop, air: AirSide, area: number): Line[] {
  const { fans } = loop;
  const [zone] = air.zones;
  if (fans.count === 0 || zone!.fanFlow === null) return [];
  const fan = fanModel(fans, air.density);
  const q = formulaLine(
    fanFlow,
    { u: zone!.faceVelocity, A: area, x: fans.coverage, n: fans.count },
    {
      id: 'fan-flow',
      statement: 'Air through one fan, at the face velocity found below',
      why: 'Where on its curve a fan works decides what another volt or another fan brings.',
    },
  );
  return [
    formulaLine(
      speedFromVolts,
      { U: fans.volts, U_r: fans.ratedVolts },
      {
        id: 'fan-speed',
        statement: 'Speed of the fans at the volts on their plug',
        why: 'Flow goes with speed, pressure with its square.',
      },
    ),
    q,
    ...pressureLines(loop, fan, air, q.value),
  ];
}

function pressureLines({ fans }: Loop, fan: FanModel, air: AirSide, q: number): Line[] {
  const { speedRatio: s, freeDelivery: q_0 } = fan;
  if (q < q_0) {
    return [
      formulaLine(
        fanPressure(fan),
        { s, rho: air.density, q },
        {
          id: 'fan-pressure',
          statement: 'Pressure the fan adds there',
          why: 'Car fans have little of it: a deep core uses it up before much air moves.',
          notes: fan.notesAt(q),
        },
      ),
    ];
  }
  const disc = formulaLine(
    sweptDisc,
    { d: fans.diameter },
    {
      id: 'swept-disc',
      statement: 'Swept disc of one fan, hub included',
      why: 'All air behind the shroud must squeeze through these discs once the wind drives it.',
    },
  );
  const running =
    s > 0
      ? [
          formulaLine(
            freeDelivery,
            { n: 1, s, q_r: fan.rated.runOut },
            {
              id: 'free-delivery-one',
              statement: 'Free delivery of one fan at this speed',
              why: 'Beyond this flow a fan no longer helps: the wind has overtaken it.',
            },
          ),
        ]
      : [];
  return [
    ...running,
    disc,
    formulaLine(
      drivenFanPressure,
      { K: fans.drivenLoss, rho: air.density, q, q_0, A_d: disc.value },
      {
        id: 'fan-pressure',
        statement: 'Pressure the fan takes there, being driven by the air',
        why: 'Past free delivery a fan is a restriction; its curve must not be carried on in a straight line.',
        notes: fan.notesAt(q),
      },
    ),
  ];
}

/** What the fans pull with the vehicle standing, and the speed from which they are in the way. */
export function fanLimitLines(loop: Loop, air: AirSide, area: number): Line[] {
  const { fans, airPath } = loop;
  const V_0 = freeDeliveryOfAll(loop);
  if (!(V_0 > 0)) return [];
  const fan = fanModel(fans, air.density);
  const { speedRatio: s } = fan;
  const { resisting } = airModel(loop);
  const V = standingFlow(loop);
  const x = fans.coverage;
  const handover = fanHandover(loop);
  return [
    formulaLine(
      freeDelivery,
      { n: fans.count, s, q_r: fan.rated.runOut },
      {
        id: 'free-delivery',
        statement: 'Free delivery of all fans at this speed',
        why: 'The figure on the box: with no core in front of the fan.',
      },
    ),
    balanceLine(
      { formula: standingFanPressure(fan), x: { s, rho: air.density, V, n: fans.count } },
      { formula: askedStanding(resisting), x: { V, A: area, x } },
      {
        id: 'standing-flow',
        statement: 'What they pull through this stack with the vehicle standing',
        why: 'In traffic this is all the air there is; it sets how hot the loop gets there.',
        unknown: {
          tex: '\\dot V',
          quantity: 'airFlow',
          name: 'air flow through the fans',
          value: V,
        },
        method: 'Air flow found by bracketed root finding (Brent).',
      },
    ),
    formulaLine(
      freeAirShare,
      { V, V_0 },
      {
        id: 'free-air-share',
        statement: 'Share of the free delivery that is really pulled',
        why: '55 to 75 % through one core with a good shroud (from memory).',
      },
    ),
    ...(handover
      ? [
          formulaLine(
            handoverSpeed(resisting),
            { V_0, A: area, x, k: airPath.ramRecovery, rho: air.density },
            {
              id: 'handover-speed',
              statement: 'Vehicle speed from which running fans are in the way',
              why: 'There the wind alone drives what the fans move freely; faster, they hold air back.',
            },
          ),
        ]
      : []),
  ];
}
