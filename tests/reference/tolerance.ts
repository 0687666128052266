/** When a value passes: the rule of `values/README.md`, nothing more. */
import type { Bound, Case, Tolerance, Value } from './schema';

/** How one field (or one element of it) compares. */
export interface Comparison {
  readonly field: string;
  readonly got: Value | undefined;
  readonly expected: Value;
  readonly pass: boolean;
  /** |got - expected| / |expected|; the bare difference where 0 is expected; null for text. */
  readonly relativeError: number | null;
  /** Difference over what is allowed: the worst field is the one where this is largest. */
  readonly severity: number;
}

/** The first that exists: case field, case, file field, file. */
export function boundFor(field: string, c: Case, file: Tolerance): Bound {
  const own = c.tolerance;
  if (own?.fields?.[field]) return own.fields[field];
  // A case may carry bounds for single fields and none of its own.
  if (own && (own.rel !== undefined || own.abs !== undefined)) return own;
  return file.fields?.[field] ?? file;
}

/** Compare one field; arrays element by element, so the list may be longer than one. */
export function compare(
  field: string,
  got: Value | undefined,
  expected: Value,
  bound: Bound,
): Comparison[] {
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) {
      const length = Array.isArray(got) ? got.length : undefined;
      return [verdict(`${field}.length`, length, expected.length, false, null, Infinity)];
    }
    return expected.flatMap((e: Value, i) => compare(`${field}[${i}]`, got[i], e, bound));
  }
  if (typeof expected !== 'number') {
    const same = got === expected;
    return [verdict(field, got, expected, same, null, same ? 0 : Infinity)];
  }
  if (typeof got !== 'number') return [verdict(field, got, expected, false, null, Infinity)];
  const difference = Math.abs(got - expected);
  const allowed = Math.max(bound.abs ?? 0, (bound.rel ?? 0) * Math.abs(expected));
  // "<=" so that NaN, in the value or in the difference, fails.
  const pass = difference <= allowed;
  const relativeError = expected === 0 ? difference : difference / Math.abs(expected);
  const severity = Number.isNaN(difference)
    ? Infinity
    : pass && difference === 0
      ? 0
      : difference / allowed;
  return [verdict(field, got, expected, pass, relativeError, severity)];
}

function verdict(
  field: string,
  got: Value | undefined,
  expected: Value,
  pass: boolean,
  relativeError: number | null,
  severity: number,
): Comparison {
  return { field, got, expected, pass, relativeError, severity };
}
