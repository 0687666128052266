/** What the sheet reads out of the record the job keeps. */
import type { Side } from '$lib/job/evaluate';
import { isFrontFirst } from '$lib/solver/loop/order';
import type { LogChange, LogEstimate, LogEventRecord, LogRecord } from '$lib/job/log/logRecord';

/** Means of a steady look at the front exchanger. */
export interface Looked {
  readonly T_in: number;
  readonly T_out: number;
  readonly T_a: number;
  readonly flow: number;
  readonly rho: number;
  readonly cp: number;
}

export interface Study {
  readonly record: LogRecord | null;
  readonly looked: Looked | null;
  readonly frontUA: LogEstimate | null;
  /** First event in which the flow fell. */
  readonly flowFell: { readonly event: LogEventRecord; readonly change: LogChange } | null;
  readonly temperatureError: number;
  readonly flowError: number;
  /** The spans were changed after the fit. */
  readonly outdated: boolean;
  /** Somebody described the front exchanger; else there is nothing to compare it with. */
  readonly described: boolean;
  /** Somebody described what warms the air at the face, or that nothing does. */
  readonly airDescribed: boolean;
}

/** Inputs by which a front exchanger is told, and what warms the air before it. */
const CORE = ['frontExchanger.rating.heat', 'frontExchanger.by'];
const AIR = ['airPath.stackHeat', 'airPath.recirculation'];

export function studyOf({ log: record, values, prepared, loop }: Side): Study {
  const levels = record?.means?.levels;
  const mean = (channel: string) => levels?.[channel]?.mean;
  // Where its own inlet was not logged, what the liquid comes from stands in.
  const T_in = mean('frontIn') ?? mean(isFrontFirst(loop) ? 'reservoir' : 'chargeCoolerOut');
  const T_out = mean('frontOut');
  const flow = mean('flow');
  const T_a = mean('ambient') ?? values['site.ambient']!.si!;
  const whole = T_in !== undefined && T_out !== undefined && flow !== undefined;
  const liquid = whole && prepared.ok ? prepared.value.liquidAt(0.5 * (T_in + T_out)) : null;
  const looked =
    whole && liquid && flow > 0 && T_in > T_out && T_out > T_a
      ? { T_in, T_out, T_a, flow, rho: liquid.rho, cp: liquid.cp }
      : null;
  const fell = record?.events.flatMap((event) =>
    event.changes.flatMap((change) => (change.channel === 'flow' ? [{ event, change }] : [])),
  )[0];
  const worked = record?.fit?.spans ?? record?.means?.spans;
  const chosen = (values['log.spans']!.rows ?? []).filter(({ use }) => use === 'fit');
  // None chosen: the whole log was asked for.
  const now = chosen.length > 0 || !record ? chosen : [{ from: 0, to: record.duration }];
  const entered = (paths: readonly string[]) => paths.some((path) => !values[path]!.assumed);
  return {
    record,
    looked,
    frontUA: record?.fit?.estimates.find(({ name }) => name === 'frontUA') ?? null,
    flowFell: fell ?? null,
    temperatureError: values['log.temperatureError']!.si!,
    flowError: values['log.flowError']!.si!,
    outdated:
      worked !== undefined &&
      (worked.length !== now.length ||
        worked.some(({ from, to }, i) => from !== now[i]!.from || to !== now[i]!.to)),
    described: entered(CORE),
    airDescribed: entered(AIR),
  };
}
