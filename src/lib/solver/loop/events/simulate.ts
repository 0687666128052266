/** The loop in time with its feedbacks: an integrator restarted at everything that switches. */
import { SolverError } from '../../errors';
import { HEAT_OF_FUSION } from '../../fluids/ice';
import { DenseSolution } from '../../numerics/dense';
import { integrateSharply } from '../../numerics/sharpEvent';
import { NODE, STATES } from '../network';
import type { PreparedLoop } from '../prepare';
import type { Loop, Segment } from '../types';
import { requireEventRequest } from './checks';
import type { Stretch } from './history';
import { tolerances } from './layout';
import type { Mode } from './mode';
import { notesOf } from './notes';
import { networkOf, pumpCurrent, watchFacts } from './parts';
import { readRun } from './readRun';
import { setUp } from './setUp';
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
import { watched, type Outcome } from './watch';

const RTOL = 1e-6;
/** Absolute part of the tolerance, K, for each unit of rtol; as in the warm-up. */
const ATOL_PER_RTOL = 10;
/**
 * First step after an event, and after an edge where more is followed than the warm-up does, s, at the usual tolerance; at others by the order of the steps. Well below
 * the time the liquid of a core needs to be renewed; a step that proves too long is halved as any other.
 */
const STEP_AFTER_EVENT = 0.1;
/** States that only gather. */
const GATHERED = [NODE.heatIn, NODE.heatOut];
/** More events than this are a chatter, not a drive. */
const MOST_EVENTS = 50_000;
/** Two times this close are one, s: an integrator could not step between them. */
const ONE_MOMENT = 1e-9;
/** Switches that may move at one moment, each once. */
const MOST_AT_ONCE = 8;

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
  const parts = setUp(prepared, request);
  const { layout, capacity, y: start } = parts;
  const { schedule, rtol = RTOL } = request;
  const net = networkOf(prepared, request, parts);
  const facts = watchFacts(prepared, request, parts, net);
  const current = request.breaker
    ? (request.breaker.current ?? pumpCurrent(prepared, request.start.reservoir))
    : 0;
  const perKelvin = capacity.reservoir / HEAT_OF_FUSION;
  const dense = new DenseSolution(layout.dimension);
  const options = { rtol, atol: tolerances(layout, rtol, ATOL_PER_RTOL, perKelvin), dense };
  const appointed = appointedTimes(request);
  const restart = STEP_AFTER_EVENT * (rtol / RTOL) ** (1 / 4);

  // Left to itself the first step is that of the warm-up, whose states alone it should then agree with.
  const more = layout.dimension > STATES;

  const s = newSwitches();
  const events: LoopEvent[] = [];
  const stretches: Stretch[] = [];
  const segmentStarts: number[] = [];
  let status: EventSolution['status'] = 'completed';
  let t = 0;
  let y: Float64Array = start.slice();
  let rejected = 0;
  let afterEvent = false;
  firstSettings(s, facts, y);

  const tell = (what: Outcome) => {
    if ('ends' in what) status = what.ends;
    else events.push({ t, kind: what.kind, value: what.value, part: what.part ?? null });
    if (events.length > MOST_EVENTS) throw failed('events without end', t);
  };
  const modeIn = (segment: Segment): Mode =>
    modeOf(s, variants.forcing(segment, moves(s), s.fansOn), request, current);

  /** Keep what is appointed for this moment, then move what contradicts the state. */
  const settled = (segment: Segment): Mode => {
    const state = layout.breaker >= 0 ? y[layout.breaker]! + 1 : 0;
    const T = net.reservoir(modeIn(segment), y);
    keepAppointments(s, t, request, T, state).forEach(tell);
    let mode = modeIn(segment);
    // Each switch moves once; what still wavers, wavers by rounding.
    for (let i = 0; i < MOST_AT_ONCE; i++) {
      const turned = turns(s);
      const moved = settleOne(s, mode, facts, y);
      if (!moved) break;
      tell(moved);
      restOf(s, t, turned, request);
      mode = modeIn(segment);
    }
    return mode;
  };

  /** Run on in one mode until something happens, or until `end`. */
  const stretch = (mode: Mode, end: number) => {
    const watch = watched(facts, s, mode);
    const from = t;
    const firstStep = dense.steps;
    const keep = () =>
      stretches.push({
        mode,
        switches: { ...s },
        from,
        to: t,
        firstStep,
        lastStep: dense.steps - 1,
      });
    const limit = watch[0]!;
    if (limit.value(t, y) <= 0) {
      keep();
      tell(limit.happen(y));
      return;
    }
    const stop = Math.min(end, s.primeDue, appointed.find((time) => time > t) ?? Infinity);
    if (stop - t < ONE_MOMENT) {
      t = stop;
      return;
    }
    const problem = {
      dimension: layout.dimension,
      autonomous: true,
      unused: GATHERED,
      rhs: (_t: number, x: Float64Array, out: Float64Array) => net.rates(mode, x, out),
    };
    const run = integrateSharply(problem, t, y, stop, {
      ...options,
      events: watch,
      firstStep: afterEvent || more ? restart : undefined,
    });
    if (run.reason !== 'finished' && run.reason !== 'event') throw failed(run.reason, run.t);
    ({ t, y } = run);
    rejected += run.rejected;
    keep();
    afterEvent = run.reason === 'event';
    if (!afterEvent) return;
    const turned = turns(s);
    const crossed = watch[run.event!]!;
    crossed.value(t, y);
    tell(crossed.happen(y));
    restOf(s, t, turned, request);
  };

  for (const [index, segment] of schedule.entries()) {
    const end = t + segment.duration;
    segmentStarts.push(t);
    tell({ kind: 'segment', value: index });
    while (status === 'completed' && t < end) stretch(settled(segment), end);
    if (status !== 'completed') break;
  }

  const { boilingPoint } = facts;
  const runs = prepared.flowAt(request.start.reservoir).flow > 0;
  const run = { ...parts, net, dense, stretches, start, end: y, boilingPoint, runs };
  const read = readRun(run);
  const { coolant } = prepared.loop;
  return {
    status,
    endTime: t,
    events,
    segmentStarts,
    ...read,
    trips: events.filter(({ kind }) => kind === 'breaker-trips').length,
    steps: dense.steps,
    rejected,
    notes: notesOf({ request, coolant, stretches, ...parts, ...read }),
  };
}

const failed = (reason: string, t: number) =>
  new SolverError(`the drive could not be followed: ${reason}`, {
    code: 'integration-failed',
    law: 'drive with events',
    value: t,
  });
