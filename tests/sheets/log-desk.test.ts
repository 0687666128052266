/** The log's desk with its thread in this one: what Stop leaves behind. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { jobStore, memoryShelf } from '$lib/job/file/storage';
import { JobState } from '$lib/job/state.svelte';
import { emptyJob } from '$lib/job/types';
import type { Answer, Question, Stop } from '$lib/log/worker/messages';
import { LogDesk } from '../../sheets/log/desk.svelte';
import { assign } from '../../sheets/log/mapping';

type Sent = Question | Stop;
type Hear = (event: { readonly data: Sent }) => void;

/** Worker by name only: messages pass in order, and before work of either side goes on. */
class Thread extends EventTarget {
  static hear: Hear;
  static last: Thread;
  readonly asked: Sent['kind'][] = [];
  constructor() {
    super();
    Thread.last = this;
  }
  postMessage(data: Sent) {
    this.asked.push(data.kind);
    queueMicrotask(() => Thread.hear({ data }));
  }
  static tell(data: Answer) {
    queueMicrotask(() => Thread.last.dispatchEvent(new MessageEvent('message', { data })));
  }
}

beforeEach(async () => {
  vi.resetModules();
  vi.stubGlobal('Worker', Thread);
  vi.stubGlobal('addEventListener', (_kind: string, hear: Hear) => (Thread.hear = hear));
  vi.stubGlobal('postMessage', Thread.tell);
  await import('$lib/log/worker/logWorker');
});
afterEach(async () => {
  // What is still under way is answered first.
  await new Promise((resolve) => setTimeout(resolve, 50));
  vi.unstubAllGlobals();
});

/** Ten minutes with a fall of the flow in the middle: by the rules of the log an event. */
const rows = Array.from({ length: 600 }, (_, t) => {
  const flow = (t < 300 ? 6 : 3) + 0.01 * (t % 5);
  return `${t},${flow.toFixed(3)},${(13 + 0.01 * (t % 3)).toFixed(2)},${(120 + 0.02 * (t % 7)).toFixed(2)}`;
});
const NAMES = 'Time (s),Coolant flow (gpm),Pump volts (V),Tank temp (°F)\n';
const BODY = `${rows.join('\n')}\n`;
const file = new Blob([NAMES, BODY]);

async function opened() {
  const job = new JobState(jobStore(memoryShelf()), () => emptyJob());
  const desk = new LogDesk();
  desk.room(700);
  await desk.open(file, 'drive.csv', job);
  return { job, desk };
}

/** Press Stop once, as soon as so many steps of what is under way are told. */
function stopAt(desk: LogDesk, what: 'marks' | 'events', done: number) {
  const seen: string[] = [];
  let pressed = false;
  Thread.last.addEventListener('message', () => {
    const { searching } = desk;
    if (searching && !pressed) seen.push(`${searching.what} ${searching.done}`);
    if (pressed || searching?.what !== what || searching.done !== done) return;
    pressed = true;
    desk.stopSearch();
  });
  return seen;
}

describe.each([
  ['marks', 2],
  ['events', 1],
] as const)('Stop pressed while %s are sought', (what, done) => {
  it('ends it, says so, and leaves nothing half done; pressed again it goes through', async () => {
    const { job, desk } = await opened();
    const before = job.job;
    const seen = stopAt(desk, what, done);
    expect(await desk.confirm(job)).toBe(false);

    // It was under way, and ended where it was stopped.
    expect(seen.at(-1)).toBe(`${what} ${done}`);
    expect(desk.searching).toBeNull();
    expect(desk.halted).toBe('search');
    expect(desk.failed).toBeNull();
    // Nothing of it was kept; the file and its columns are still there.
    expect(desk.mapped).toBeNull();
    expect(job.job).toBe(before);
    expect(desk.opened?.rows).toBe(600);
    expect(desk.assigned.map(({ channel }) => channel)).toEqual([
      'time',
      'flow',
      'volts',
      'reservoir',
    ]);

    expect(await desk.confirm(job)).toBe(true);
    expect(desk.halted).toBeNull();
    expect(job.job.log?.events.flatMap((e) => e.changes.map((c) => c.channel))).toEqual(['flow']);
    await vi.waitFor(() => expect(desk.seen.map((s) => s.channel)).toContain('flow'));
  });

  it('with curves on the screen they stay, by the columns as they were', async () => {
    const { job, desk } = await opened();
    expect(await desk.confirm(job)).toBe(true);
    await vi.waitFor(() => expect(desk.seen).toHaveLength(3));
    const { mapped } = desk;
    const { log } = job.job;

    // The tank is left out this time, and Stop is pressed on the way.
    const wanted = desk.assigned;
    desk.assigned = assign(wanted, 3, '', '°F');
    stopAt(desk, what, done);
    expect(await desk.confirm(job)).toBe(false);
    expect(desk.halted).toBe('search');
    expect(desk.mapped).toBe(mapped);
    expect(job.job.log).toBe(log);
    desk.look({ from: 0, to: 100 });
    await vi.waitFor(() => expect(desk.view.to).toBe(100));
    expect(desk.seen.map((s) => s.channel)).toEqual(['flow', 'volts', 'reservoir']);
  });
});

describe('Stop pressed while a file is read', () => {
  it('ends it, says so, and the log before stays; the file can be opened again', async () => {
    const { job, desk } = await opened();
    const { opened: before } = desk;
    // Many pieces: what is stopped after the last of them is simply done.
    const long = new Blob([NAMES, ...Array<string>(200).fill(BODY)]);
    Thread.last.addEventListener('message', () => desk.reading && desk.stopReading());
    await desk.open(long, 'again.csv', job);
    expect(desk.halted).toBe('reading');
    expect(desk.reading).toBeNull();
    expect(desk.opened).toBe(before);
    const another = new LogDesk();
    await another.open(file, 'again.csv', job);
    expect(another.halted).toBeNull();
    expect(another.opened?.name).toBe('again.csv');
  });
});

it('a second press while the first is under way is no Stop', async () => {
  const { job, desk } = await opened();
  const [first, second] = [desk.confirm(job), desk.confirm(job)];
  expect([await first, await second]).toEqual([false, true]);
  expect(desk.halted).toBeNull();
  expect(desk.mapped).not.toBeNull();
});
