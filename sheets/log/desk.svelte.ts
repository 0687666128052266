/** The log open in this window: what was read, how it is mapped, what is in view. The rows stay on its thread. */
import { setLog } from '$lib/job/edit';
import { FIT_ROWS, type Span } from '$lib/job/log/logFit';
import { keptLevels, keptLog } from '$lib/job/log/logKeep';
import type { LogRecord } from '$lib/job/log/logRecord';
import type { JobState } from '$lib/job/state.svelte';
import type { TimeStretch } from '$lib/kit/timePlot/types';
import { LogError, type LogProblem } from '$lib/log/errors';
import { LogLine, type Asking } from '$lib/log/worker/line';
import type { Assigned, MappedLog, OpenedLog, Seen, Talk } from '$lib/log/worker/messages';
import { fitInBackground, type FitRun } from '$lib/workers/logFit';
import { usualUnit } from './mapping';

export const DEMO_NAME = 'demo-log.csv';

interface Reading {
  readonly name: string;
  readonly size: number;
  readonly bytes: number;
  readonly rows: number;
}

interface Searching {
  readonly what: 'marks' | 'events';
  readonly done: number;
  readonly of: number;
}

interface Failed {
  readonly code: LogProblem | 'fault';
  readonly message: string;
  readonly name: string;
}

export class LogDesk {
  readonly #line = new LogLine();
  #asking: Asking<'open'> | null = null;
  #search: Pick<Asking<'map'>, 'stop'> | null = null;
  #fit: FitRun | null = null;
  #file: { readonly blob: Blob; readonly name: string } | null = null;
  #wish: TimeStretch | null = null;
  #looking = false;
  /** Columns of a plot; null until the first is there: what is seen waits for that. */
  #pixels: number | null = null;

  reading = $state.raw<Reading | null>(null);
  failed = $state.raw<Failed | null>(null);
  /** Columns being marked and searched. */
  searching = $state.raw<Searching | null>(null);
  /** What was stopped last, until something else is begun. */
  halted = $state.raw<'reading' | 'search' | null>(null);
  opened = $state.raw<OpenedLog | null>(null);
  assigned = $state.raw<readonly Assigned[]>([]);
  mapped = $state.raw<MappedLog | null>(null);
  seen = $state.raw<readonly Seen[]>([]);
  view = $state.raw<TimeStretch>({ from: 0, to: 1 });
  /** Steps of the fit under way; null: none is. */
  steps = $state.raw<number | null>(null);
  stopped = $state.raw(false);

  /** Read a file; what was open stays until it is read whole. */
  async open(blob: Blob, name: string, job: JobState, withoutHeader = false): Promise<void> {
    this.#asking?.stop();
    [this.failed, this.halted] = [null, null];
    this.#file = { blob, name };
    this.reading = { name, size: blob.size, bytes: 0, rows: 0 };
    const { size } = blob;
    const ask = { file: blob, name, size, withoutHeader };
    const asking = this.#line.ask('open', ask, (bytes, rows) => {
      if (this.#asking === asking) this.reading = { name, size, bytes, rows };
    });
    this.#asking = asking;
    try {
      const opened = await asking.answer;
      if (this.#asking !== asking) return;
      this.opened = opened;
      this.mapped = null;
      this.seen = [];
      const kept = keptMapping(opened, job.job.log ?? null);
      this.assigned = kept ?? guessed(opened);
      if (kept) await this.confirm(job);
    } catch (thrown) {
      if (this.#asking !== asking) return;
      if (isStop(thrown)) this.halted = 'reading';
      else this.#fail(thrown, name);
    } finally {
      if (this.#asking === asking) [this.#asking, this.reading] = [null, null];
    }
  }

  /** Open the file just refused without names of its own. */
  openWithoutNames(job: JobState): void {
    if (this.#file) void this.open(this.#file.blob, this.#file.name, job, true);
  }

  async openDemo(address: string, job: JobState): Promise<void> {
    try {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error('The invented log could not be fetched.');
      await this.open(await answer.blob(), DEMO_NAME, job);
    } catch (thrown) {
      this.#fail(thrown, DEMO_NAME);
    }
  }

  stopReading(): void {
    this.#asking?.stop();
  }

  /** Take the mapping as it stands: time, marks, events; the job keeps it. @returns whether it was taken */
  async confirm(job: JobState): Promise<boolean> {
    const { opened, assigned } = this;
    if (!opened) return false;
    [this.failed, this.halted] = [null, null];
    this.stopSearch();
    try {
      const mapped = await this.#searched('marks', 'map', { assigned });
      const events = await this.#searched('events', 'events', {});
      if (this.opened !== opened) return false;
      const kept = keptLog(opened, assigned, mapped, events, opened.name === DEMO_NAME);
      job.revise((current) => setLog(current, withWork(kept, current.log ?? null)));
      // What the job tells and the curves are each drawn in their own turn.
      await turn();
      if (this.opened !== opened) return false;
      this.mapped = mapped;
      this.view = { from: 0, to: mapped.duration };
      this.look(this.view);
    } catch (thrown) {
      if (!isStop(thrown)) this.#fail(thrown, opened.name);
      // A search that another one follows was not stopped by the user.
      else if (!this.searching) this.halted = 'search';
      return false;
    }
    return true;
  }

  async #searched<K extends 'map' | 'events'>(
    what: Searching['what'],
    kind: K,
    ask: Talk[K]['ask'],
  ): Promise<Talk[K]['answer']> {
    this.searching = { what, done: 0, of: 1 };
    const asking = this.#line.ask(kind, ask, (done, of) => (this.searching = { what, done, of }));
    this.#search = asking;
    try {
      return await asking.answer;
    } finally {
      if (this.#search === asking) [this.#search, this.searching] = [null, null];
    }
  }

  stopSearch(): void {
    this.#search?.stop();
  }

  /** Least and greatest of every two pixels: finer lines than the eye parts only take time. */
  room(width: number): void {
    const pixels = Math.round(width / 2);
    if (this.#pixels !== null && Math.abs(pixels - this.#pixels) < 2) return;
    this.#pixels = pixels;
    if (this.mapped) this.look(this.#wish ?? this.view);
  }

  /** Ask for what is in view; only the latest wish counts while one is worked on. */
  look(view: TimeStretch): void {
    this.#wish = view;
    if (!this.#looking && this.#pixels !== null) void this.#serve();
  }

  async #serve(): Promise<void> {
    this.#looking = true;
    try {
      while (this.#wish && this.#pixels !== null) {
        const [view, pixels] = [this.#wish, this.#pixels];
        this.#wish = null;
        const seen = await this.#line.ask('view', { ...view, pixels }).answer;
        [this.seen, this.view] = [seen, view];
      }
    } catch (thrown) {
      this.#fail(thrown, this.opened?.name ?? '');
    } finally {
      this.#looking = false;
    }
  }

  /** Means of the spans and, where the log drives it, the fit. Without a span the whole log counts. */
  async work(job: JobState, spans: readonly Span[], leaveOutMarked: boolean): Promise<void> {
    const { mapped } = this;
    if (!mapped || this.steps !== null) return;
    const some = spans.some(({ use }) => use === 'fit');
    const asked: readonly Span[] = some ? spans : [{ from: 0, to: mapped.duration, use: 'fit' }];
    [this.steps, this.stopped, this.failed] = [0, false, null];
    try {
      const paced = await this.#line.ask('pace', { spans: asked, most: FIT_ROWS, leaveOutMarked })
        .answer;
      const fitSpans = asked
        .filter(({ use }) => use === 'fit')
        .map(({ from, to }) => ({ from, to }));
      const means = await this.#line.ask('pace', { spans: fitSpans, most: 2, leaveOutMarked })
        .answer;
      this.#fit = fitInBackground({ job: job.job, paced, spans: asked }, (n) => (this.steps = n));
      const outcome = await this.#fit.outcome;
      if (!outcome.ok && outcome.stopped) {
        this.stopped = true;
        return;
      }
      job.revise((current) =>
        current.log
          ? setLog(current, {
              ...current.log,
              means: { spans: fitSpans, levels: keptLevels(means.levels) },
              fit: outcome.ok ? outcome.fit : null,
              refused: outcome.ok ? null : outcome.message.slice(0, 390),
            })
          : current,
      );
    } catch (thrown) {
      this.#fail(thrown, this.opened?.name ?? '');
    } finally {
      [this.#fit, this.steps] = [null, null];
    }
  }

  stopFit(): void {
    this.#fit?.stop();
  }

  #fail(thrown: unknown, name: string): void {
    const message = thrown instanceof Error ? thrown.message : String(thrown);
    this.failed = { code: thrown instanceof LogError ? thrown.code : 'fault', message, name };
  }
}

/** Let the page draw and answer before going on. */
const turn = () => new Promise((resolve) => setTimeout(resolve));

const isStop = (thrown: unknown) => thrown instanceof LogError && thrown.code === 'cancelled';

const guessed = ({ guesses }: OpenedLog): Assigned[] =>
  guesses.map(({ channel, column, unit }) => ({
    channel,
    column,
    unit: unit ?? usualUnit(channel),
  }));

/** The mapping the job keeps, where this log has the same columns. */
function keptMapping({ columns }: OpenedLog, record: LogRecord | null): Assigned[] | null {
  if (!record) return null;
  const found = record.channels.map(({ channel, column, unit }) => ({
    channel: channel as Assigned['channel'],
    column: columns.findIndex(({ text }) => text.slice(0, 200) === column),
    unit,
  }));
  return found.length > 0 && found.every(({ column }) => column >= 0) ? found : null;
}

/** The same file mapped the same way keeps what was worked out of it. */
function withWork(kept: LogRecord, before: LogRecord | null): LogRecord {
  const same =
    before !== null &&
    before.name === kept.name &&
    before.size === kept.size &&
    JSON.stringify(before.channels) === JSON.stringify(kept.channels);
  return same
    ? { ...kept, means: before.means, fit: before.fit, refused: before.refused ?? null }
    : kept;
}

let desk: { readonly job: string; readonly desk: LogDesk } | null = null;

/** The desk of a job: another job begins with an empty one. */
export function deskOf(job: string): LogDesk {
  if (desk?.job !== job) desk = { job, desk: new LogDesk() };
  return desk.desk;
}
