/** Dash sizes: a number of sixteenths that names two different bores. */

/** Row of a dash table, handed in by the caller; metres. */
export interface DashSize {
  readonly dash: number;
  /** Bore when the number counts sixteenths of hose bore. */
  readonly hoseBore: number;
  /** Bore when the number names the tube outside diameter the hose replaces. */
  readonly tubeBore: number;
}

export type DashConvention = 'hose-bore' | 'tube-replaced';

export interface DashContext {
  readonly convention: DashConvention;
  readonly table: readonly DashSize[];
}

/** "-12", "-12 AN", "AN-12", "12 AN", "#12", "dash 12": the number, or null when it is no dash size. */
export function dashNumber(text: string): number | null {
  const match =
    /^(?:an\s*)?(?:-|#|dash\s*-?)\s*(\d{1,2})(?:\s*an)?$|^(?:an\s*)(\d{1,2})$|^(\d{1,2})\s*an$/i.exec(
      text,
    );
  if (!match) return null;
  return Number(match[1] ?? match[2] ?? match[3]);
}

/** The bore a dash size stands for and what it would be by the other convention; null: not in the table. */
export function dashBore(
  dash: number,
  { convention, table }: DashContext,
): { bore: number; other: number; otherWords: string } | null {
  const row = table.find((size) => size.dash === dash);
  if (!row) return null;
  return convention === 'hose-bore'
    ? { bore: row.hoseBore, other: row.tubeBore, otherWords: 'by tube outside diameter' }
    : { bore: row.tubeBore, other: row.hoseBore, otherWords: 'by hose bore' };
}
