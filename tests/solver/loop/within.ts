import { expect } from 'vitest';

interface Bound {
  readonly rel?: number;
  readonly abs?: number;
}

/** Hold `got` to `expected` under the tolerance the reference file states for `field`. */
export function within(
  got: number | null,
  expected: number,
  tolerance: Bound & { readonly fields?: Readonly<Record<string, Bound>> },
  field: string,
): void {
  const { rel = 0, abs = 0 } = tolerance.fields?.[field] ?? tolerance;
  expect(got, field).not.toBeNull();
  expect(Math.abs(got! - expected), `${field}: ${got} against ${expected}`).toBeLessThanOrEqual(
    Math.max(abs, rel * Math.abs(expected)),
  );
}
