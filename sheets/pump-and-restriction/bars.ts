/** Rows of this sheet's bars. */
import type { Side } from '$lib/job/evaluate';
import { sentence, type UnitSystem } from '$lib/kit';
import { runParts } from '$lib/solver/hydraulics/runParts';
import { runShares, worstRun } from '$lib/solver/hydraulics/shares';
import { flowByDash, pumpChoices } from '$lib/solver/hydraulics/whatIf';
import type { SteadySolution } from '$lib/solver/loop/types';
import { q, say } from '../types';
import { PART_NAME, PUMPS_NAME } from './parts';

const liquidOf = (s: SteadySolution) => ({ rho: s.liquid.density, mu: s.liquid.viscosity });

/** What each part takes of the head, in order of flow. */
export function headRows(
  { loop }: Side,
  s: SteadySolution,
  planned: SteadySolution | null,
  system: UnitSystem,
) {
  const runs = new Map(runShares(s.operating).map((run) => [run.part as string, run]));
  return s.operating.shares.map(({ part, head }, i) => {
    const run = runs.get(part);
    return {
      id: part,
      label: PART_NAME[part],
      found: head,
      ...(planned && { candidate: planned.operating.shares[i]!.head }),
      ...(run && {
        remark: sentence(
          say`${q(loop.hoses[run.part].bore, 'bore')}, ${q(run.velocity!, 'velocity')}`,
          system,
        ),
      }),
    };
  });
}

/** What takes the head within the worst run. */
export function runRows({ loop }: Side, s: SteadySolution) {
  const worst = worstRun(s.operating);
  const parts = runParts(loop.hoses[worst.part], {
    velocity: worst.velocity!,
    friction: worst.friction,
  });
  return {
    title: `Within the worst run: ${PART_NAME[worst.part].toLowerCase()}`,
    rows: [
      { id: 'friction', label: 'Along the hose', found: parts.friction },
      { id: 'bends', label: 'Bends', found: parts.bends },
      { id: 'other', label: 'Entrance, exit, couplings', found: parts.other },
      { id: 'fittings', label: 'Necking end fittings', found: parts.fittings },
    ],
  };
}

/** Flow with one and with two of the pump. */
export function pumpRows(
  found: Side,
  s: SteadySolution,
  candidate: Side | null,
  planned: SteadySolution | null,
  system: UnitSystem,
) {
  const others = candidate && planned ? pumpChoices(candidate.loop, liquidOf(planned)) : null;
  return pumpChoices(found.loop, liquidOf(s)).map(({ arrangement, flow, gain }, i) => {
    return {
      id: arrangement,
      label: PUMPS_NAME[arrangement],
      found: flow,
      ...(others && { candidate: others[i]!.flow }),
      ...(gain !== null &&
        arrangement !== 'one' && {
          remark: sentence(say`${q(gain, 'percent')} more than one`, system),
        }),
    };
  });
}

/** Flow with every hose at the bore a dash size stands for, by both conventions. */
export function dashRows({ loop }: Side, s: SteadySolution, system: UnitSystem) {
  return flowByDash(loop, liquidOf(s)).map(({ dash, convention, bore, flow }) => ({
    id: `${dash}-${convention}`,
    label: `−${dash}, ${convention === 'hose-bore' ? 'bore counted' : 'tube counted'}`,
    remark: sentence(say`${q(bore, 'bore')} inside`, system),
    found: flow,
  }));
}
