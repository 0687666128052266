/** The loop in time with its feedbacks: an integrator restarted at everything that switches. */
import { SolverError } from '../../errors';
import { DenseSolution } from '../../numerics/dense';
import { integrateSharply } from '../../numerics/sharpEvent';
import { HEAT_OF_FUSION } from '../../fluids/ice';
import { NODE } from '../network';
import type { PreparedLoop } from '../prepare';
import type { Loop } from '../types';
import { capLiftTemperature } from './cap';
import { eventNetwork, type Mode } from './eventNetwork';
import { tolerances } from './layout';
import { readRun, type Stretch } from './readRun';
import { requireEventRequest, setUp } from './setUp';
import { firstSettings, settleOne } from './settle';
import {
  appointedTimes,
  keepAppointments,
  modeOf,
  moves,
  newSwitches,
  restOf,
  turns,
} from './switches';
import type { EventRequest, EventSolution, LoopEvent } from './types';
import { variantsOf } from './variants';
import { watched, type Outcome, type WatchFacts } from './watch';

const RTOL = 1e-6;
/** Absolute part of the tolerance, K, for each unit of rtol; as in the warm-up. */
const ATOL_PER_RTOL = 10;
/**
 * First step after an event, s, at the usual tolerance; at others by the order of the steps. Well below
 * the time the liquid of a core needs to be renewed; a step that proves too long is halved as any other.
 */
const STEP_AFTER_EVENT = 0.1;
/** States that only gather. */
const GATHERED = [NODE.heatIn, NODE.heatOut];
/** More events than this are a chatter, not a drive. */
const MOST_EVENTS = 50_000;
/** Share of the reservoir's liquid that may boil off before the pump draws air. Our choice, no source. */
const DRY_SHARE = 0.9;

/**
 * Follow a loop through a schedule with pump, breaker, fans, ice and boiling as they switch.
 *
 * The nodes, the quasi-steady flow and what is simplified are those of the warm-up; with no feature asked
 * the two agree. Between two events nothing switches, and the integrator runs on smooth rates; it stops
 * where a watched quantity crosses its edge, placed by the steps themselves and not by the curve between
 * them, and starts afresh in the new mode. See {@link eventNetwork} for what each feature adds.
 *
 * Further simplifications: the pump starts and stops at once; the cap holds its rating once warm (as
 * everywhere in the loop's model); steam leaves where it forms, and glycol left behind does not change
 * the liquid; ice keeps all of the reservoir at the ice point.
 *
 * @throws {@link InvalidInputError}, {@link OutOfRangeError} for a request that contradicts itself
 * @throws {@link SolverError} `integration-failed`, should the integrator give up or events chatter
 * @source first law on each node; breaker as in feed/breaker; heat of vaporisation after Clapeyron
 */
export function simulate(given: Loop | PreparedLoop, request: EventRequest): EventSolution {
  const variants = variantsOf(given, request);
  const { prepared } = variants;
  requireEventRequest(prepared, request);
  const { schedule, rtol = RTOL } = request;
  const { loop, boilingPoint, coldest, hottest } = prepared;
  const {
    layout,
    capacity,
    cellCapacity,
    reservoirMass,
    specificHeat,
    y: start,
  } = setUp(prepared, request);
  const net = eventNetwork({
    loop,
    layout,
    capacity,
    cellCapacity,
    boilingPoint,
    specificHeat,
    breaker: request.breaker?.breaker ?? null,
    breakerOutside: request.breaker?.place === 'outside',
    underhood: request.underhood ?? null,
  });
  const facts: WatchFacts = {
    request,
    layout,
    net,
    boilingPoint,
    coldest,
    hottest,
    capLiftsAt: request.boiling ? capLiftTemperature(prepared) : Infinity,
    capGauge: loop.reservoir.capGauge,
    dryAt: DRY_SHARE * reservoirMass,
  };
  const current = request.breaker
    ? (request.breaker.current ?? pumpCurrent(prepared, request.start.reservoir))
    : 0;
  const perKelvin = capacity.reservoir / HEAT_OF_FUSION;
  const options = { rtol, atol: tolerances(layout, rtol, ATOL_PER_RTOL, perKelvin) };
  const dense = new DenseSolution(layout.dimension);
  const appointed = appointedTimes(request);

  const s = newSwitches();
  const events: LoopEvent[] = [];
  const stretches: Stretch[] = [];
  const segmentStarts: number[] = [];
  let status: EventSolution['status'] = 'completed';
  let t = 0;
  let y: Float64Array = start.slice();
  let rejected = 0;
  let afterEvent = false;
  const restart = STEP_AFTER_EVENT * (rtol / RTOL) ** (1 / 4);
  firstSettings(s, facts, y);

  const tell = (what: Outcome) => {
    if ('ends' in what) status = what.ends;
    else events.push({ t, kind: what.kind, value: what.value, part: what.part ?? null });
    if (events.length > MOST_EVENTS) throw failed('events without end', t);
  };

  for (const [index, segment] of schedule.entries()) {
    const end = t + segment.duration;
    segmentStarts.push(t);
    tell({ kind: 'segment', value: index });
    const modeNow = (): Mode =>
      modeOf(s, variants.forcing(segment, moves(s), s.fansOn), request, current);
    while (status === 'completed') {
      const state = layout.breaker >= 0 ? y[layout.breaker]! + 1 : 0;
      const T_reservoir = net.reservoir(modeNow(), y);
      keepAppointments(s, t, request, T_reservoir, state).forEach(tell);
      let mode = modeNow();
      for (let turned = turns(s); ; turned = turns(s)) {
        const moved = settleOne(s, mode, facts, y);
        if (!moved) break;
        tell(moved);
        restOf(s, t, turned, request);
        mode = modeNow();
      }
      // Appointments of the last moment belong to the segment that begins there.
      if (t >= end) break;
      const watch = watched(facts, s, mode);
      const limit = watch[0]!;
      if (limit.value(t, y) <= 0) {
        stretches.push({
          mode,
          from: t,
          to: t,
          firstStep: dense.steps,
          lastStep: dense.steps - 1,
          switches: { ...s },
        });
        tell(limit.happen(y));
        break;
      }
      const stop = Math.min(end, s.primeDue, appointed.find((time) => time > t) ?? Infinity);
      const firstStep = dense.steps;
      const problem = {
        dimension: layout.dimension,
        autonomous: true,
        unused: GATHERED,
        rhs: (_t: number, x: Float64Array, out: Float64Array) => net.rates(mode, x, out),
      };
      const run = integrateSharply(problem, t, y, stop, {
        ...options,
        dense,
        events: watch,
        firstStep: afterEvent ? restart : undefined,
      });
      if (run.reason !== 'finished' && run.reason !== 'event') throw failed(run.reason, run.t);
      stretches.push({
        mode,
        from: t,
        to: run.t,
        firstStep,
        lastStep: dense.steps - 1,
        switches: { ...s },
      });
      ({ t, y } = run);
      rejected += run.rejected;
      afterEvent = run.reason === 'event';
      if (run.reason === 'event') {
        const turned = turns(s);
        const crossed = watch[run.event!]!;
        crossed.value(t, y);
        tell(crossed.happen(y));
        restOf(s, t, turned, request);
      } else if (t >= end) break;
    }
    if (status !== 'completed') break;
  }

  return {
    status,
    endTime: t,
    events,
    segmentStarts,
    ...readRun({
      net,
      dense,
      stretches,
      layout,
      capacity,
      cellCapacity,
      start,
      end: y,
      boilingPoint,
      specificHeat,
    }),
    trips: events.filter(({ kind }) => kind === 'breaker-trips').length,
    steps: dense.steps,
    rejected,
    notes: [],
  };
}

/** Current of the pump at work, A: on its feed with the liquid at `T`, else power over the volts stated. */
function pumpCurrent({ loop, hydraulics, liquidAt }: PreparedLoop, T: number): number {
  const { pump, supplied } = hydraulics.settled(liquidAt(T));
  if (supplied) return supplied.status === 'runs' ? supplied.current : 0;
  return loop.pump.volts > 0 ? pump.electricPower / loop.pump.volts : 0;
}

const failed = (reason: string, t: number) =>
  new SolverError(`the drive could not be followed: ${reason}`, {
    code: 'integration-failed',
    law: 'drive with events',
    value: t,
  });
