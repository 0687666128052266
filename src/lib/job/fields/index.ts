/** Every input of a job, grouped as a person would go round the vehicle. */
import { airPath } from './airPath';
import { chargeCooler } from './chargeCooler';
import { coolant } from './coolant';
import { chargeMeasures, frontMeasures } from './coreMeasures';
import { cruise, pull, traffic } from './duties';
import { engine } from './engine';
import { events } from './events';
import { fans } from './fans';
import { feed } from './feed';
import { feedDraw } from './feedDraw';
import { feedProtection } from './feedProtection';
import { feedWire } from './feedWire';
import { frontExchanger } from './frontExchanger';
import { hoses } from './hoses';
import { instruments } from './instruments';
import { log } from './log';
import { measuredCruise, measuredOnce, measuredTraffic } from './measured';
import { meterMade, meterPlace, meterRuns } from './meter';
import { probeBaths } from './probe';
import { probeCircuit } from './probeCircuit';
import { probeLaw } from './probeLaw';
import { probeLot, probeTrim } from './probeTrim';
import { pump } from './pump';
import { reservoir } from './reservoir';
import { reservoirQuestion } from './reservoirQuestion';
import { runaway } from './runaway';
import { limits, schedule } from './schedule';
import { site } from './site';
import { soak } from './soak';
import { suction } from './suction';
import { title } from './title';
import { upgrades } from './upgrades';
import { view } from './view';
import { whatItTakes } from './whatItTakes';
import type { FieldGroup, FieldSpec, GroupId } from './types';

export const FIELD_GROUPS: readonly FieldGroup[] = [
  title,
  view,
  site,
  coolant,
  engine,
  traffic,
  cruise,
  pull,
  chargeCooler,
  chargeMeasures,
  frontExchanger,
  frontMeasures,
  hoses,
  pump,
  feed,
  feedWire,
  feedDraw,
  feedProtection,
  reservoir,
  reservoirQuestion,
  suction,
  fans,
  airPath,
  soak,
  schedule,
  events,
  limits,
  measuredOnce,
  measuredTraffic,
  measuredCruise,
  probeBaths,
  probeLaw,
  probeCircuit,
  probeTrim,
  probeLot,
  meterRuns,
  meterMade,
  meterPlace,
  instruments,
  log,
  runaway,
  upgrades,
  whatItTakes,
];

/** The fields by path. */
export const FIELDS: ReadonlyMap<string, FieldSpec> = new Map(
  FIELD_GROUPS.flatMap((group) => group.fields).map((field) => [field.path, field]),
);

/** The group of that name. */
export function fieldGroup(id: GroupId): FieldGroup {
  return FIELD_GROUPS.find((group) => group.id === id)!;
}

/** The field at `path`. @throws Error for a path no field has: a mistake in the program, not in the job */
export function fieldAt(path: string): FieldSpec {
  const field = FIELDS.get(path);
  if (!field) throw new Error(`no field at ${path}`);
  return field;
}

export * from './types';
