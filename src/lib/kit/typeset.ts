/**
 * TeX to markup, kept. A symbolic formula is set once and found again; numbers put in change with
 * each edit, so the store forgets its oldest half when full.
 */
import katex from 'katex';
import 'katex/dist/katex.min.css';

const KEPT = 600;
const store = new Map<string, string>();

/**
 * Markup of a formula. `withMath` adds MathML for assistive technology: right for a formula set
 * once; a line that changes with each edit carries an aria-label instead, at half the cost.
 */
export function typeset(tex: string, withMath: boolean): string {
  const key = (withMath ? 'm' : 'h') + tex;
  const found = store.get(key);
  if (found !== undefined) return found;
  const markup = katex.renderToString(`\\displaystyle ${tex}`, {
    output: withMath ? 'htmlAndMathml' : 'html',
    throwOnError: false,
    strict: 'ignore',
  });
  if (store.size >= KEPT) {
    let n = 0;
    for (const old of store.keys()) {
      store.delete(old);
      if (++n >= KEPT / 2) break;
    }
  }
  store.set(key, markup);
  return markup;
}

const WORD = /[A-Za-z_][A-Za-z0-9_]*/g;

/**
 * A formula read aloud: its expression with each symbol replaced by `put`, or left as it is.
 * Exponent letters of numbers (`1e5`) are not symbols, since a symbol never follows a digit.
 */
export function spoken(expr: string, put: (symbol: string) => string | undefined): string {
  return expr
    .replace(WORD, (word, at: number) =>
      /[0-9.]/.test(expr[at - 1] ?? '') ? word : (put(word) ?? word),
    )
    .replaceAll('*', ' × ')
    .replaceAll('/', ' ÷ ')
    .replace(/\s+/g, ' ');
}
