/** Arrow keys in a box: one step up or down in the last digit typed, the rest of the text kept. */

/** A number at the start, then a unit; a size that is not a measure (`-20 AN`, `3/4 in`) is left alone. */
const LEADING = /^(\s*)([-−]?\d+(?:[.,]\d+)?)(?![\d.,]|\s*[/-]\s*\d)(.*)$/s;
const NAMED_SIZE = /\ban\b|\bdash\b/i;

/** `text` with its number moved by `steps` in its last place, or null where that means nothing. */
export function nudge(text: string, steps: number): string | null {
  const match = LEADING.exec(text);
  if (!match || NAMED_SIZE.test(text)) return null;
  const [, before = '', digits = '', after = ''] = match;
  const comma = digits.includes(',');
  const plain = digits.replace(',', '.').replace('−', '-');
  const places = plain.split('.')[1]?.length ?? 0;
  const moved = (Number(plain) + steps * 10 ** -places).toFixed(places);
  const unsigned = Number(moved) === 0 ? moved.replace('-', '') : moved;
  return before + (comma ? unsigned.replace('.', ',') : unsigned) + after;
}
