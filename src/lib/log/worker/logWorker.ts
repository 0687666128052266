/** The thread that holds the log: questions in, answers out. Long work can be stopped between two steps. */
import { LogError } from '../errors';
import { readFile } from '../readStream';
import type { Answer, Question, Stop, Talk } from './messages';
import type { Steps } from './mapped';
import { LogSession } from './session';

/** The log open now; a new one takes its place only once it is read whole. */
let session: LogSession | null = null;
const working = new Map<number, AbortController>();

const send = (answer: Answer, move: Transferable[] = []) =>
  (postMessage as (message: Answer, move: Transferable[]) => void)(answer, move);

addEventListener('message', async ({ data }: MessageEvent<Question | Stop>) => {
  const { id } = data;
  if (data.kind === 'stop') {
    working.get(id)?.abort();
    return;
  }
  try {
    const value = await answer(data);
    send({ id, kind: 'done', value }, buffersOf(value));
  } catch (thrown) {
    const failure =
      thrown instanceof LogError
        ? { code: thrown.code, message: thrown.message, facts: thrown.facts }
        : { code: 'fault' as const, message: String(thrown), facts: {} };
    send({ id, kind: 'failed', failure });
  }
});

/** Work under a signal that a later message can raise. */
async function stoppable<T>(id: number, work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const stop = new AbortController();
  working.set(id, stop);
  try {
    return await work(stop.signal);
  } finally {
    working.delete(id);
  }
}

const open = (id: number, { file, name, size, withoutHeader }: Talk['open']['ask']) =>
  stoppable(id, async (signal) => {
    const log = await readFile(file, {
      withoutHeader,
      claimedSize: size,
      signal,
      progress: ({ bytes, rows }) => send({ id, kind: 'progress', done: bytes, of: rows }),
    });
    session = new LogSession(log, { name, size });
    return session.opened();
  });

/** Between two steps other messages are heard, a stop among them. */
const stepped = <T>(id: number, steps: Steps<T>) =>
  stoppable(id, async (signal) => {
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
      send({ id, kind: 'progress', ...step.value });
      await new Promise((resolve) => setTimeout(resolve));
      if (signal.aborted)
        throw new LogError('cancelled', 'Stopped; what was there before is unchanged.');
    }
  });

function answer(question: Question) {
  if (question.kind === 'open') return open(question.id, question.ask);
  if (!session) throw new LogError('empty', 'No log is open.');
  switch (question.kind) {
    case 'map':
      return stepped(question.id, session.mapping(question.ask.assigned));
    case 'view':
      return session.view(question.ask.from, question.ask.to, question.ask.pixels);
    case 'events':
      return stepped(question.id, session.searching());
    case 'pace':
      return session.pace(question.ask.spans, question.ask.most, question.ask.leaveOutMarked);
  }
}

/** Arrays of an answer are moved, not copied. */
function buffersOf(value: unknown): ArrayBuffer[] {
  const found: ArrayBuffer[] = [];
  const look = (x: unknown, depth: number): void => {
    if (x instanceof Float64Array || x instanceof Uint8Array) found.push(x.buffer as ArrayBuffer);
    else if (depth > 0 && typeof x === 'object' && x !== null)
      Object.values(x).forEach((part) => look(part, depth - 1));
  };
  look(value, 3);
  return found;
}
