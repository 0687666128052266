/**
 * What a file of reference values holds, and the check that it holds it. The schema in words is in
 * `values/README.md`.
 */

export type Value =
  number | string | boolean | null | readonly Value[] | { readonly [key: string]: Value };
export type Fields = Readonly<Record<string, Value>>;

/** |got - expected| <= max(abs, rel |expected|); a missing part counts as zero. */
export interface Bound {
  readonly rel?: number;
  readonly abs?: number;
  readonly why?: string;
}

export interface Tolerance extends Bound {
  readonly fields?: Readonly<Record<string, Bound>>;
}

export interface Case {
  readonly id: string;
  readonly op: string;
  readonly inputs: Fields;
  readonly expected: Fields;
  readonly note?: string;
  readonly tolerance?: Tolerance;
  /** Recalled from the publication, not compared with the page: a disagreement is a question. */
  readonly from_memory?: boolean;
}

export interface ReferenceFile {
  readonly title: string;
  readonly topic: string;
  readonly tolerance: Tolerance;
  readonly cases: readonly Case[];
}

/** A file that does not follow the schema; the message says where. */
export class MalformedFileError extends Error {}

/** Read `text` as a reference file. @throws {@link MalformedFileError} with the place at fault */
export function parseReferenceFile(text: string, name: string): ReferenceFile {
  const refuse = (what: string): never => {
    throw new MalformedFileError(`${name}: ${what}`);
  };
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return refuse(`not JSON (${(error as Error).message})`);
  }
  if (!isRecord(data)) return refuse('not an object');
  if (typeof data.topic !== 'string') return refuse('no topic');
  if (!Array.isArray(data.cases)) return refuse('no list of cases');
  if (data.tolerance !== undefined) checkTolerance(data.tolerance, 'tolerance', refuse);
  const seen = new Set<string>();
  data.cases.forEach((item: unknown, i) => {
    const at = `case ${i + 1}`;
    if (!isRecord(item)) return refuse(`${at} is not an object`);
    if (typeof item.id !== 'string') return refuse(`${at} has no id`);
    if (seen.has(item.id)) return refuse(`${at}: id ${item.id} is used twice`);
    seen.add(item.id);
    if (typeof item.op !== 'string') return refuse(`${at} (${item.id}) has no op`);
    if (!isRecord(item.inputs)) return refuse(`${at} (${item.id}) has no inputs`);
    if (!isRecord(item.expected) || Object.keys(item.expected).length === 0)
      return refuse(`${at} (${item.id}) expects nothing`);
    if (item.tolerance !== undefined)
      checkTolerance(item.tolerance, `${at} (${item.id}) tolerance`, refuse);
  });
  return { tolerance: {}, ...data } as unknown as ReferenceFile;
}

function checkTolerance(value: unknown, at: string, refuse: (what: string) => never): void {
  if (!isRecord(value)) return refuse(`${at} is not an object`);
  const bounds = [value, ...(isRecord(value.fields) ? Object.values(value.fields) : [])];
  for (const bound of bounds) {
    if (!isRecord(bound)) return refuse(`${at} holds a bound that is not an object`);
    for (const key of ['rel', 'abs'])
      if (bound[key] !== undefined && !((bound[key] as number) >= 0))
        return refuse(`${at}: ${key} must be a number, not negative`);
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
