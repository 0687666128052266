/** What an integration needs to write in, by the size of its system: short runs follow each other by the dozen. */
export interface Workspace {
  readonly f: Float64Array;
  readonly shifted: Float64Array;
  readonly slope: Float64Array;
  readonly fTime: Float64Array;
  readonly jacobian: Float64Array;
  readonly matrix: Float64Array;
  readonly pivot: Int32Array;
  /** Stages, one after the other. */
  readonly u: Float64Array;
  /** For looking between steps. */
  readonly look: Float64Array;
}

const STAGES = 6;
const free = new Map<number, Workspace[]>();

/** A workspace nobody else holds; jacobian and time derivative are zero. */
export function takeWorkspace(n: number): Workspace {
  const ready = free.get(n)?.pop();
  if (!ready) return newWorkspace(n);
  ready.jacobian.fill(0);
  ready.fTime.fill(0);
  return ready;
}

/** Hand it back once nothing of it is read any more. One that is never handed back is no loss. */
export function giveWorkspace(n: number, workspace: Workspace): void {
  const list = free.get(n);
  if (list) list.push(workspace);
  else free.set(n, [workspace]);
}

const newWorkspace = (n: number): Workspace => ({
  f: new Float64Array(n),
  shifted: new Float64Array(n),
  slope: new Float64Array(n),
  fTime: new Float64Array(n),
  jacobian: new Float64Array(n * n),
  matrix: new Float64Array(n * n),
  pivot: new Int32Array(n),
  u: new Float64Array(STAGES * n),
  look: new Float64Array(n),
});
