/** A ± as typed: one half width, or one up and another down. */
import type { Quantity } from '$lib/solver/quantity';
import { parseQuantity, type UnitSystem } from '$lib/units';
import type { QuantityField } from '../fields/types';

/** SI. */
export interface HalfWidths {
  readonly up: number;
  readonly down: number;
}

type Read =
  | { readonly ok: true; readonly half: HalfWidths; readonly typed: string }
  | { readonly ok: false; readonly message: string };

/** `+3 / −1 °F`, either first; the unit of the second is the unit of both where the first has none. */
const TWO = /^([+−-])(.*?)[\s/,;]+([+−-])(.*)$/;
const BARE = /^[\d.,]+$/;

/**
 * Uncertainty of a value: in its own unit, or in per cent of it.
 * @param si - the value, SI
 */
export function checkPlusMinus(
  field: QuantityField,
  typed: string,
  si: number,
  units: UnitSystem,
): Read {
  const text = typed.trim().replace(/^±\s*/, '');
  const two = TWO.exec(text);
  if (!two) {
    const half = halfWidth(field, text, si, units);
    return half.ok ? { ok: true, half: { up: half.si, down: half.si }, typed: half.text } : half;
  }
  const [firstSign, first, secondSign, second] = two.slice(1) as [string, string, string, string];
  const isUp = (sign: string) => sign === '+';
  if (isUp(firstSign) === isUp(secondSign))
    return { ok: false, message: 'Write one half width up and one down: +3 / −1.' };
  const unit = second.replace(/^[\d.,\s]+/, '');
  const one = halfWidth(field, BARE.test(first) ? `${first} ${unit}` : first, si, units);
  if (!one.ok) return one;
  const other = halfWidth(field, second, si, units);
  if (!other.ok) return other;
  const [up, down] = isUp(firstSign) ? [one, other] : [other, one];
  return {
    ok: true,
    half: { up: up.si, down: down.si },
    typed: up.si === down.si ? up.text : `+${up.text} / −${down.text}`,
  };
}

function halfWidth({ quantity }: QuantityField, text: string, si: number, system: UnitSystem) {
  const relative = quantity !== 'percent' && quantity !== 'ratio' && /%\s*$/.test(text);
  const parsed = parseQuantity(text, relative ? 'percent' : differenceOf(quantity), { system });
  if (!parsed.ok) return { ok: false, message: parsed.message } as const;
  const half = relative ? parsed.si * Math.abs(si) : parsed.si;
  if (half < 0) return { ok: false, message: 'An uncertainty cannot be negative.' } as const;
  return { ok: true, si: half, text: parsed.text } as const;
}

const differenceOf = (quantity: Quantity): Quantity =>
  quantity === 'temperature' || quantity === 'absoluteTemperature'
    ? 'temperatureDifference'
    : quantity === 'pressure'
      ? 'pressureDrop'
      : quantity;

/** As printed behind a value; one that already says up and down needs no ± before it. */
export const plusMinusText = (typed: string): string =>
  typed.startsWith('+') ? typed : `± ${typed}`;
