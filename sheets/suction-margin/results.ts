/** Results of the suction side in the duty shown. */
import { stateAbove } from '$lib/solver/loop/limits';
import { degreesLeft } from '$lib/solver/suction/formulas';
import type { FirstLoss } from '$lib/solver/suction/path';
import type { Result } from '../types';
import type { Study } from './study';

const NOTHING = 'nothing flows';

/** Why there is no temperature of the first loss. */
export const NO_LOSS: Readonly<Record<Exclude<FirstLoss['kind'], 'at'>, string>> = {
  never: 'never within the liquid’s range',
  always: 'lost at every temperature',
  'no-flow': NOTHING,
};

export function results({ s, flows, loss, vented, ventedLoss }: Study): Result[] {
  const { operating, margins, liquid } = s;
  const moving = (value: number) => (flows ? value : null);
  const T_1 = loss.kind === 'at' ? loss.point.temperature : null;
  const noLoss = loss.kind === 'at' ? NOTHING : NO_LOSS[loss.kind];
  const left = T_1 === null ? null : degreesLeft.value({ T_1, T: liquid.temperature });
  return [
    {
      id: 'suction-margin',
      name: 'Suction head to spare',
      symbol: 'm_s',
      value: moving(margins.suction),
      absent: NOTHING,
      quantity: 'head',
      better: 'higher',
      ...(flows && { state: stateAbove(margins.suction, 0, 'head') }),
    },
    {
      id: 'head-left',
      name: 'Head the pump keeps',
      symbol: 'x_h',
      value: moving(operating.headLeft),
      absent: NOTHING,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'first-loss',
      name: 'Liquid at which it starts to lose head',
      symbol: 'T_1',
      value: T_1,
      absent: noLoss,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'higher',
    },
    {
      id: 'degrees-left',
      name: 'Liquid below that by',
      symbol: '\\Delta T_s',
      value: flows ? left : null,
      absent: noLoss,
      quantity: 'temperatureDifference',
      better: 'higher',
      ...(flows && left !== null && { state: stateAbove(left, 0) }),
    },
    {
      id: 'liquid',
      name: 'Liquid leaving the reservoir',
      symbol: 'T',
      value: liquid.temperature,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'npsh-available',
      name: 'Suction head available',
      symbol: '\\mathrm{NPSH_A}',
      value: moving(operating.npshAvailable),
      absent: NOTHING,
      quantity: 'head',
      better: 'higher',
    },
    {
      id: 'npsh-required',
      name: 'Suction head required (NPSH3)',
      symbol: '\\mathrm{NPSH_R}',
      value: moving(operating.npshRequired),
      absent: NOTHING,
      quantity: 'head',
    },
    {
      id: 'vented-margin',
      name: 'Suction head to spare with the cap off',
      symbol: 'm_{s,0}',
      value: flows && vented ? vented.margin : null,
      absent: flows ? 'the reservoir holds no pressure' : NOTHING,
      quantity: 'head',
      better: 'higher',
      ...(flows && vented && { state: stateAbove(vented.margin, 0, 'head') }),
    },
    {
      id: 'first-loss-vented',
      name: 'Liquid at which it starts to lose head, cap off',
      symbol: 'T_{1,0}',
      value: ventedLoss?.kind === 'at' ? ventedLoss.point.temperature : null,
      absent:
        ventedLoss && ventedLoss.kind !== 'at'
          ? NO_LOSS[ventedLoss.kind]
          : 'the reservoir holds no pressure',
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'higher',
    },
    {
      id: 'suction-loss',
      name: 'Head lost in the suction hose',
      symbol: 'h_s',
      value: moving(operating.shares[0]!.head),
      absent: NOTHING,
      quantity: 'head',
      better: 'lower',
    },
    {
      id: 'vapour-pressure',
      name: 'Vapour pressure of the liquid',
      symbol: 'p_v',
      value: liquid.vapourPressure,
      quantity: 'pressure',
      better: 'lower',
    },
    {
      id: 'flow',
      name: 'Liquid flow',
      symbol: 'Q',
      value: operating.flow,
      quantity: 'volumeFlow',
      better: 'higher',
    },
  ];
}
