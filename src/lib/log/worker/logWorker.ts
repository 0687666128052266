/** The thread that holds the log: questions in, answers out. Reading can be stopped between two pieces. */
import { LogError } from '../errors';
import { readFile } from '../readStream';
import type { Answer, Question, Stop, Talk } from './messages';
import { LogSession } from './session';

/** The log open now; a new one takes its place only once it is read whole. */
let session: LogSession | null = null;
const reading = new Map<number, AbortController>();

const send = (answer: Answer, move: Transferable[] = []) =>
  (postMessage as (message: Answer, move: Transferable[]) => void)(answer, move);

addEventListener('message', async ({ data }: MessageEvent<Question | Stop>) => {
  const { id } = data;
  if (data.kind === 'stop') {
    reading.get(id)?.abort();
    return;
  }
  try {
    const value = data.kind === 'open' ? await open(id, data.ask) : answer(data);
    send({ id, kind: 'done', value }, buffersOf(value));
  } catch (thrown) {
    const failure =
      thrown instanceof LogError
        ? { code: thrown.code, message: thrown.message, facts: thrown.facts }
        : { code: 'fault' as const, message: String(thrown), facts: {} };
    send({ id, kind: 'failed', failure });
  }
});

async function open(id: number, { file, name, withoutHeader }: Talk['open']['ask']) {
  const stop = new AbortController();
  reading.set(id, stop);
  try {
    const log = await readFile(file, {
      withoutHeader,
      signal: stop.signal,
      progress: ({ bytes, rows }) => send({ id, kind: 'progress', bytes, rows }),
    });
    session = new LogSession(log, { name, size: file.size });
    return session.opened();
  } finally {
    reading.delete(id);
  }
}

function answer(question: Exclude<Question, { kind: 'open' }>) {
  if (!session) throw new LogError('empty', 'No log is open.');
  switch (question.kind) {
    case 'map':
      return session.map(question.ask.assigned);
    case 'view':
      return session.view(question.ask.from, question.ask.to, question.ask.pixels);
    case 'events':
      return session.events();
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
