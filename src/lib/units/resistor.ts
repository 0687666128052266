/** Values as they stand on resistors and in circuit drawings: the letter is the decimal point. */
import { readNumber, type ReadNumber } from './number';

/** Only the capital M: a small one is a thousandth. */
const CODE = /^(\d{0,4})\s*([RrkKM])\s*(\d{1,3})(?=$|\s|ohms?$|Ω|Ω)(.*)$/;

/**
 * A number as {@link readNumber} finds it, or one in the letter code: 4k7, 4R7, 2M2, R47.
 * @source IEC 60062 (from memory)
 * @example readResistor('4k7') // { value: 4.7, rest: 'kohm' }
 */
export function readResistor(text: string): ReadNumber | null {
  const code = CODE.exec(text);
  if (!code) return readNumber(text);
  const [, whole, letter, part, rest] = code as unknown as readonly string[];
  if (!/^\s*(ohms?|Ω|Ω)?\s*$/i.test(rest!)) return readNumber(text);
  const unit = /r/i.test(letter!) ? 'ohm' : letter === 'M' ? 'Mohm' : 'kohm';
  return { value: Number(`${whole || '0'}.${part}`), rest: unit };
}
