import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Job } from '$lib/job/types';
import { Desks } from '$lib/workers/desks';
import type { Answered, Asked } from '$lib/workers/worker';

const job = {} as Job;
const wish = (key: string, side: Asked['side'] = 'asFound'): Asked => ({
  task: 'faults',
  key,
  job,
  side,
});

/** A thread that answers when told to. */
class Thread extends EventTarget {
  static last: Thread;
  readonly sent: Asked[] = [];
  constructor() {
    super();
    Thread.last = this;
  }
  postMessage(asked: Asked) {
    this.sent.push(asked);
  }
  answer(answered: Answered) {
    this.dispatchEvent(new MessageEvent('message', { data: answered }));
  }
}

const good = (key: string, side: Asked['side'] = 'asFound'): Answered => ({
  task: 'faults',
  key,
  side,
  ok: true,
  value: key,
});

describe('work sent to the other thread', () => {
  beforeEach(() => void vi.stubGlobal('Worker', Thread));
  afterEach(() => void vi.unstubAllGlobals());

  it('asks for one thing at a time, and next for the latest only', () => {
    const changed = vi.fn();
    const desks = new Desks(changed);
    const kept: string[] = [];
    const ask = (key: string) => desks.ask(wish(key), (k) => void kept.push(k));
    for (const key of ['a', 'a', 'b', 'c', 'd']) ask(key);
    const thread = Thread.last;
    expect(thread.sent.map(({ key }) => key)).toEqual(['a']);
    thread.answer(good('a'));
    expect(thread.sent.map(({ key }) => key)).toEqual(['a', 'd']);
    thread.answer(good('d'));
    expect(kept).toEqual(['a', 'd']);
    expect(changed).toHaveBeenCalledTimes(2);
  });

  it('forgets a wish that an undo has made good', () => {
    const desks = new Desks(() => undefined);
    for (const key of ['a', 'b', 'a']) desks.ask(wish(key), () => undefined);
    Thread.last.answer(good('a'));
    expect(Thread.last.sent.map(({ key }) => key)).toEqual(['a']);
  });

  it('serves both sides of a job', () => {
    const desks = new Desks(() => undefined);
    desks.ask(wish('a'), () => undefined);
    desks.ask(wish('b', 'candidate'), () => undefined);
    expect(Thread.last.sent).toHaveLength(2);
  });

  it('does not ask twice for what could not be solved', () => {
    const desks = new Desks(() => undefined);
    desks.ask(wish('a'), () => expect.unreachable());
    Thread.last.answer({ task: 'faults', key: 'a', side: 'asFound', ok: false });
    expect(desks.hopeless('faults', 'a')).toBe(true);
    expect(desks.hopeless('faults', 'b')).toBe(false);
  });

  it('gives up on a thread that does not start', () => {
    const changed = vi.fn();
    const desks = new Desks(changed);
    desks.ask(wish('a'), () => undefined);
    Thread.last.dispatchEvent(new Event('error'));
    expect(desks.hopeless('faults', 'a')).toBe(true);
    expect(changed).toHaveBeenCalled();
  });
});

it('without threads everything is worked out where it is shown', () => {
  vi.stubGlobal('Worker', undefined);
  expect(new Desks(() => undefined).hopeless('faults', 'a')).toBe(true);
  vi.unstubAllGlobals();
});
