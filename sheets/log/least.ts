/** The least UA that two temperatures, flow and ambient allow, with its ±. */
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import { leastUA, leastUAPlusMinus } from '$lib/solver/loop/fromLog/formulas';
import type { Study } from './study';

export interface Least {
  readonly UA: number;
  readonly plusMinus: number;
}

export function leastOf({ looked, temperatureError, flowError }: Study): Least | null {
  if (!looked) return null;
  const { T_in, T_out, T_a, flow, rho, cp } = looked;
  const C_l = liquidCapacityRate.value({ rho, V: flow, c_p: cp });
  const UA = leastUA.value({ C_l, T_in, T_out, T_a });
  const given = { UA, u_V: flowError, C_l, u_T: temperatureError, T_in, T_out, T_a };
  return { UA, plusMinus: leastUAPlusMinus.value(given) };
}
