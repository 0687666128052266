/** Edits that a log brings: values as measured beside the loop as entered, readings for the diagnosis. */
import {
  chargeKnob,
  frontKnob,
  pumpKnob,
  soakKnob,
  volumeKnob,
} from '$lib/solver/loop/fromLog/asMeasured';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import { formatQuantity, type Quantity, type UnitSystem } from '$lib/units';
import { applyEdit, putAside, setFrom, setPm, startCandidate } from '../edit';
import { channelName } from './logKeep';
import type { LogEventRecord, LogFit, LogRecord } from './logRecord';
import type { Job, SideId, Typed } from '../types';

export const AS_MEASURED = 'As measured';

/** One value to put in, with its ± and what it came from. */
export interface LogEdit {
  readonly path: string;
  readonly typed: Typed;
  readonly plusMinus?: string;
  /** What this value stands for, in words for the sheet. */
  readonly says: string;
}

export interface LogEdits {
  readonly edits: readonly LogEdit[];
  /** What was fitted but has no honest place in the description, and why. */
  readonly left: readonly string[];
}

/** A value as a person would type it. */
function typed(si: number, quantity: Quantity, units: UnitSystem, digits = 4): string {
  const { text, unit } = formatQuantity(si, quantity, units, { digits });
  return `${text.replaceAll(',', '').replace('−', '-')} ${unit.replace('Δ', '')}`.trim();
}

const valueOf = (fit: LogFit, name: string) => fit.estimates.find((e) => e.name === name);

/** Half of the interval's width, if it is known. */
const spread = (e: { readonly low: number | null; readonly high: number | null }) =>
  e.low === null || e.high === null ? null : 0.5 * (e.high - e.low);

/** The loop as the fit found it, in the description's own words. */
export function measuredEdits(
  prepared: PreparedLoop,
  fit: LogFit,
  units: UnitSystem,
  volts: number | null,
): LogEdits {
  const edits: LogEdit[] = [];
  const left: string[] = [];
  const { at } = fit;
  const core = (
    name: 'frontUA' | 'chargeUA',
    path: 'frontExchanger' | 'chargeCooler',
    knob: (UA: number) => ReturnType<typeof frontKnob>,
  ) => {
    const found = valueOf(fit, name);
    if (!found) return;
    const words = path === 'frontExchanger' ? 'the front exchanger’s UA' : 'the charge cooler’s UA';
    const own = knob(found.value);
    if (!own) {
      left.push(`No dirt and no rating gives ${words} at these flows: check flow and air first.`);
      return;
    }
    const half = spread(found);
    // Where the interval itself leaves the range of the knob only one side of it can be told.
    const ends = half === null ? [] : [knob(found.value - half), knob(found.value + half)];
    const widths = ends.flatMap((end) =>
      end?.by === own.by ? [Math.abs(end.value - own.value)] : [],
    );
    const width = widths.length > 0 ? Math.max(...widths) : null;
    const quantity = own.by === 'heat' ? 'heat' : 'percent';
    edits.push({
      path: own.by === 'heat' ? `${path}.rating.heat` : `${path}.cleanliness`,
      typed: typed(own.value, quantity, units),
      ...(width !== null && width > 0 && { plusMinus: typed(width, quantity, units, 2) }),
      says:
        own.by === 'heat'
          ? `rated heat raised until the core has ${words}`
          : `conductance left, set until the core has ${words}`,
    });
    if (own.by === 'heat' && prepared.loop[path].cleanliness < 1)
      edits.push({
        path: `${path}.cleanliness`,
        typed: '100 %',
        says: 'clean, since the core does more than its rating',
      });
  };
  core('frontUA', 'frontExchanger', (UA) =>
    frontKnob(prepared, UA, { ...at, airRate: at.frontAirRate }),
  );
  if (at.chargeAirFlow !== null)
    core('chargeUA', 'chargeCooler', (UA) =>
      chargeKnob(prepared, UA, { ...at, airMassFlow: at.chargeAirFlow! }),
    );
  mass(prepared, fit, units, edits, left);
  flow(prepared, fit, units, edits, left);
  soak(prepared, fit, units, edits, left);
  if (volts !== null && !prepared.loop.feed)
    edits.push({
      path: 'pump.volts',
      typed: typed(volts, 'voltage', units),
      says: 'volts at the pump as logged',
    });
  if (valueOf(fit, 'heatScale'))
    left.push(
      'The heat load’s scale is told above and not carried over: it belongs to the drive and to the air meter.',
    );
  return { edits, left };
}

function mass(
  prepared: PreparedLoop,
  fit: LogFit,
  units: UnitSystem,
  edits: LogEdit[],
  left: string[],
): void {
  const found = valueOf(fit, 'reservoirCapacity');
  if (!found || found.entered === null) return;
  const { rho, cp } = prepared.liquidAt(fit.at.liquidTemperature);
  const volume = volumeKnob(prepared, { measured: found.value, entered: found.entered }, rho * cp);
  if (volume === null) {
    left.push(
      'The thermal mass found for the reservoir asks for less than no liquid, or for more than it holds: hoses or cores share it. It stays as entered.',
    );
    return;
  }
  const half = spread(found);
  edits.push({
    path: 'reservoir.volume',
    typed: typed(volume, 'volume', units),
    ...(half !== null && { plusMinus: typed(half / (rho * cp), 'volume', units, 2) }),
    says: 'liquid in the reservoir that takes part, by its thermal mass',
  });
}

/** A pump that gives this share more or less than described is as described. */
const SAME_FLOW = 0.01;

function flow(
  prepared: PreparedLoop,
  fit: LogFit,
  units: UnitSystem,
  edits: LogEdit[],
  left: string[],
): void {
  const { flow: measured, liquidTemperature } = fit.at;
  const own = prepared.flowAt(liquidTemperature).flow;
  if (Math.abs(measured / own - 1) < SAME_FLOW) return;
  const knob = pumpKnob(prepared, measured, liquidTemperature);
  if (!knob) {
    left.push(
      'No speed of this pump gives the flow found: look at the restriction. The pump stays as entered.',
    );
    return;
  }
  edits.push({
    path: 'pump.curve',
    typed: knob.curve.map(({ flow: Q, head }) => [
      typed(Q, 'volumeFlow', units),
      typed(head, 'head', units),
    ]),
    says: 'head of the pump moved along the affinity laws until the loop flows as logged',
  });
}

function soak(
  prepared: PreparedLoop,
  fit: LogFit,
  units: UnitSystem,
  edits: LogEdit[],
  left: string[],
): void {
  const found = valueOf(fit, 'soakHeat');
  if (!found) return;
  const T = fit.at.liquidTemperature;
  const conductance = soakKnob(prepared, found.value, T);
  if (conductance === null) {
    left.push(
      'The soak found is less than no conductance from the engine gives: it stays as it was. Enter the engine’s temperature.',
    );
    return;
  }
  const half = spread(found);
  const perKelvin = prepared.loop.soak.engineTemperature - T;
  edits.push({
    path: 'soak.engineConductance',
    typed: typed(conductance, 'conductance', units),
    ...(half !== null && { plusMinus: typed(half / perKelvin, 'conductance', units, 2) }),
    says: 'engine to charge cooler, by the soak that the log shows',
  });
}

/** Put edits into a side, each with its ± and where it came from. Those refused stay as drafts. */
export function withEdits(job: Job, side: SideId, edits: readonly LogEdit[], from: string): Job {
  // The values first: each is weighed against the job before it, which is worked out then already.
  const put = edits.reduce(
    (current, { path, typed: text }) => applyEdit(current, side, path, text).job,
    job,
  );
  return edits.reduce((current, { path, plusMinus }) => {
    const next = plusMinus === undefined ? current : setPm(current, side, path, plusMinus).job;
    return setFrom(next, side, path, from);
  }, put);
}

/** The loop as measured as the candidate; the present one is put aside, an earlier one of these replaced. */
export function asMeasured(job: Job, edits: readonly LogEdit[], from: string): Job {
  const cleared = job.candidate?.name === AS_MEASURED ? { ...job, candidate: null } : putAside(job);
  // Too many aside already: nothing is lost, the candidate stays.
  if (cleared.candidate) return job;
  return withEdits(startCandidate(cleared, AS_MEASURED), 'candidate', edits, from);
}

/** Slower than this counts as traffic, m/s (15 mph; common practice, no source). */
const TRAFFIC_SPEED = 6.7;

const BLANK: Readonly<Record<string, readonly [blank: string, quantity: Quantity]>> = {
  vehicleSpeed: ['speed', 'speed'],
  reservoir: ['reservoir', 'temperature'],
  chargeAirOut: ['charge', 'temperature'],
  volts: ['volts', 'voltage'],
  amps: ['amps', 'current'],
  flow: ['flow', 'volumeFlow'],
  frontIn: ['frontIn', 'temperature'],
  frontOut: ['frontOut', 'temperature'],
};

/** What was read after an event, as readings of the diagnosis: in traffic or at cruise by the speed then. */
export function eventReadings(event: LogEventRecord, units: UnitSystem): readonly LogEdit[] {
  const speed = event.after.vehicleSpeed?.mean;
  const duty = speed !== undefined && speed > TRAFFIC_SPEED ? 'cruise' : 'traffic';
  const edits = Object.entries(event.after).flatMap(([channel, { mean }]): LogEdit[] => {
    const blank = BLANK[channel];
    return blank
      ? [
          {
            path: `measured.${duty}.${blank[0]}`,
            typed: typed(mean, blank[1], units),
            says: channelName(channel),
          },
        ]
      : [];
  });
  const ambient = event.after.ambient;
  return ambient
    ? [
        ...edits,
        {
          path: 'measured.ambient',
          typed: typed(ambient.mean, 'temperature', units),
          says: 'Ambient air',
        },
      ]
    : edits;
}

/** Minutes and seconds of a log. */
export const clock = (seconds: number): string => {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};

/** Where a fitted value came from. */
export const fromLog = ({ name }: LogRecord, spans: LogFit['spans']): string =>
  `log ${name}, ${spans.map(({ from, to }) => `${clock(from)} to ${clock(to)}`).join(', ')}`.slice(
    0,
    390,
  );
