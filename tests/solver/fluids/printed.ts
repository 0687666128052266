/** A value as a table prints it, and half a unit in its last place: the tolerance the table grants. */
export function printedTo(printed: string): { value: number; within: number } {
  const [digits, exponent = '0'] = printed.split('e') as [string, string?];
  const decimals = digits.split('.')[1]?.length ?? 0;
  // The sum's own rounding must not fail a digit that is right.
  return { value: Number(printed), within: 0.5000001 * 10 ** (Number(exponent) - decimals) };
}
