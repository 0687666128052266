/** What the sheet of the feed asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { problemOf } from '$lib/job/problem';
import { toFeed } from '$lib/job/models/toFeed';
import type { Outcome } from '$lib/job/types';
import { breakerBehaviour, type BreakerBehaviour } from '$lib/solver/feed/breaker';
import { relaySharing, type ContactShare } from '$lib/solver/feed/circuit';
import { wireTemperature, type WireTemperature } from '$lib/solver/feed/conductorHeat';
import { suppliedPump, type PumpSupply, type SuppliedPump } from '$lib/solver/feed/supply';
import { walk, type FeedWalk } from '$lib/solver/feed/walk';
import { wireCarries, wireFor, type WireFor } from '$lib/solver/feed/wireFor';
import { feedInLoop, FULL, type FeedInLoop } from '$lib/solver/hydraulics/feedInLoop';
import type { FlowingLiquid } from '$lib/solver/hydraulics/hose';
import { settledOf } from '../wiring/duty';

export type Running = Extract<SuppliedPump, { status: 'runs' }>;

export interface Study {
  readonly supply: PumpSupply;
  /** Liquid of the duty shown; null where the loop could not be solved. */
  readonly liquid: FlowingLiquid | null;
  readonly supplied: Outcome<SuppliedPump>;
  /** The supplied pump where it runs. */
  readonly running: Running | null;
  /** Pump and loop on this feed; null without a liquid. */
  readonly inLoop: FeedInLoop | null;
  readonly walk: FeedWalk | null;
  readonly contacts: readonly ContactShare[];
  readonly wire: WireFor | null;
  readonly carries: { readonly table: number; readonly here: number } | null;
  readonly wireHeat: WireTemperature | null;
  readonly behaviour: BreakerBehaviour | null;
  /** The same feed with a pump of the other kind, and with the engine in the other state. */
  readonly otherMotor: SuppliedPump | null;
  readonly otherEngine: SuppliedPump | null;
}

const known = new WeakMap<Side, Study>();

/** The study of a side; the same side gives the same object. */
export function studyOf(side: Side): Study {
  let study = known.get(side);
  if (!study) known.set(side, (study = newStudy(side)));
  return study;
}

function newStudy(side: Side): Study {
  const { values, loop } = side;
  const { pump } = loop;
  const si = (path: string) => values[path]!.si!;
  const supply = toFeed(values);
  const state = settledOf(side)?.liquid;
  const liquid = state ? { rho: state.density, mu: state.viscosity } : null;
  const attempt = <T>(work: () => T): Outcome<T> => {
    try {
      return { ok: true, value: work() };
    } catch (thrown) {
      return { ok: false, problem: problemOf(thrown, 'US') };
    }
  };
  const orNull = <T>(work: () => T): T | null => {
    const outcome = attempt(work);
    return outcome.ok ? outcome.value : null;
  };
  const inLoop = liquid && orNull(() => feedInLoop(loop, supply, liquid));
  // Without a loop to flow through the electrical side stands alone, at full load.
  const flowShare = inLoop?.flowShare ?? FULL;
  const supplied = inLoop
    ? ({ ok: true, value: inLoop.supplied } as const)
    : attempt(() => suppliedPump(pump, supply, flowShare));
  const running = supplied.ok && supplied.value.status === 'runs' ? supplied.value : null;
  const { size } = supply.circuit.wire;
  const { source } = supply.circuit;
  const otherMotor = pump.motor === 'brushed' ? 'held-speed' : 'brushed';
  return {
    supply,
    liquid,
    supplied,
    running,
    inLoop,
    walk: running && orNull(() => walk(supply.circuit, running.current)),
    contacts: (running && orNull(() => relaySharing(supply.circuit.relays, running.current))) ?? [],
    wire: supplied.ok ? orNull(() => wireFor(pump, supply, si('feed.dropLimit'), flowShare)) : null,
    carries: orNull(() => wireCarries(size, si('feed.wire.airAround'))),
    wireHeat:
      running &&
      orNull(() =>
        wireTemperature({
          size,
          current: running.current,
          outsideDiameter: si('feed.wire.outside'),
          ambient: si('feed.wire.airAround'),
        }),
      ),
    behaviour:
      running && supply.breaker
        ? breakerBehaviour(supply.breaker.thermal, running.current, supply.breaker.ambient)
        : null,
    otherMotor: orNull(() =>
      suppliedPump(
        { ...pump, motor: otherMotor, cutoutVolts: 0 },
        { ...supply, draw: { kind: 'pump-law' }, shutOffShare: 1 },
        flowShare,
      ),
    ),
    otherEngine: orNull(() =>
      suppliedPump(
        pump,
        {
          ...supply,
          circuit: { ...supply.circuit, source: { ...source, running: !source.running } },
        },
        flowShare,
      ),
    ),
  };
}
