/** Results of the air side in the duty shown. */
import {
  freeAirShare,
  freeDeliveryOfAll,
  fanHandover,
  standingFlow,
} from '$lib/solver/airside/curves';
import { faceAirRise } from '$lib/solver/loop/faceAir';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import type { Result } from '../types';

export function results(loop: Loop, s: SteadySolution): Result[] {
  const { air, front } = s;
  const [shrouded, open] = air.zones;
  const noFan = loop.fans.count === 0 ? 'no fan' : 'the fans stand';
  const handover = fanHandover(loop);
  return [
    {
      id: 'face-velocity',
      name: 'Mean face velocity',
      symbol: '\\bar u',
      value: air.meanFaceVelocity,
      quantity: 'faceVelocity',
      better: 'higher',
    },
    {
      id: 'face-velocity-shrouded',
      name: 'Face velocity behind the shroud',
      symbol: 'u_s',
      value: shrouded!.faceVelocity,
      quantity: 'faceVelocity',
      better: 'higher',
    },
    {
      id: 'face-velocity-open',
      name: 'Face velocity of the open face',
      symbol: 'u_o',
      value: open?.faceVelocity ?? null,
      absent: 'the shroud covers the whole face',
      quantity: 'faceVelocity',
    },
    {
      id: 'air-flow',
      name: 'Air through the core',
      symbol: '\\dot V_a',
      value: air.totalVolumeFlow,
      quantity: 'airFlow',
      better: 'higher',
    },
    {
      id: 'air-mass-flow',
      name: 'Air mass through the core',
      symbol: '\\dot m_a',
      value: air.totalMassFlow,
      quantity: 'airMassFlow',
      better: 'higher',
    },
    {
      id: 'air-capacity-rate',
      name: 'Heat the air can carry off per degree',
      symbol: 'C_a',
      value: front.C_air,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: 'ram-pressure',
      name: 'Ram pressure across the stack',
      symbol: 'p_{ram}',
      value: air.ramPressure,
      quantity: 'airPressure',
    },
    {
      id: 'fan-pressure',
      name: 'Pressure of the fans (negative: in the way)',
      symbol: '\\Delta p_{fan}',
      value: loop.fans.count > 0 ? shrouded!.fanPressure : null,
      absent: noFan,
      quantity: 'airPressure',
    },
    {
      id: 'standing-flow',
      name: 'Pulled by the fans, vehicle standing',
      symbol: '\\dot V',
      value: freeDeliveryOfAll(loop) > 0 ? standingFlow(loop) : null,
      absent: noFan,
      quantity: 'airFlow',
      better: 'higher',
    },
    {
      id: 'free-air-share',
      name: 'Pulled standing, as a share of free air',
      symbol: '\\sigma',
      value: freeAirShare(loop),
      absent: noFan,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'handover-speed',
      name: 'Fans in the way from this vehicle speed on',
      symbol: 'v_0',
      value: handover?.speed ?? null,
      absent: freeDeliveryOfAll(loop) > 0 ? 'at no road speed' : noFan,
      quantity: 'speed',
    },
    {
      id: 'stack-rise',
      name: 'Air warmed by other cores',
      symbol: '\\Delta T_{stack}',
      value: air.stackRise,
      quantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'recirculation',
      name: 'Hot air that comes round again',
      symbol: 'r',
      value: air.recirculation,
      quantity: 'percent',
      better: 'lower',
    },
    {
      id: 'face-air-rise',
      name: 'Air at the face above ambient',
      symbol: '\\Delta T_f',
      value: faceAirRise(loop, front.airIn),
      quantity: 'temperatureDifference',
      better: 'lower',
    },
  ];
}
