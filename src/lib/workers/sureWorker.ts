/** The thread that draws loops: works in short spells, so that a newer question or a stop is heard. */
import { doubts, FULL, sidesOf, sureness, surenessKey } from '$lib/job/sure/sureness';
import type { SureAnswer, SureAsked, SureStop } from './sureMessages';

/** Longest spell of work without listening, ms. */
const SPELL = 40;

let latest = 0;

type Say<A = SureAnswer> = A extends unknown ? Omit<A, 'number'> : never;

addEventListener('message', ({ data }: MessageEvent<SureAsked | SureStop>) => {
  if (data.kind === 'stop') latest++;
  else void serve(data);
});

async function serve(asked: SureAsked): Promise<void> {
  const { number, job, duty } = asked;
  latest = number;
  const say = (answer: Say) => postMessage({ ...answer, number } as SureAnswer);
  const sides = new Map(sidesOf(job).map((side) => [surenessKey(side), side]));
  const tasks = [
    ...asked.draw.map((key) => ({ key, what: 'draws' as const })),
    ...asked.doubt.map((key) => ({ key, what: 'doubts' as const })),
  ];
  try {
    for (const { key, what } of tasks) {
      const side = sides.get(key);
      if (!side) continue;
      const alike = tasks.filter((task) => task.what === what);
      const before = alike.findIndex((task) => task.key === key);
      const progress = (done: number) =>
        say({ kind: 'progress', what, share: (before + done) / alike.length });
      if (what === 'draws') {
        const value = await inSpells(sureness(side, FULL), number, progress);
        if (latest !== number) return;
        say({ kind: 'draws', key, value: value! });
      } else {
        const value = await inSpells(doubts(side, duty, FULL), number, progress);
        if (latest !== number) return;
        say({ kind: 'doubts', key, duty, value: value! });
      }
    }
    say({ kind: 'done' });
  } catch {
    say({ kind: 'refused' });
  }
}

/** Drive work to its end; undefined where another question came first. */
async function inSpells<T>(
  work: Generator<number, T>,
  number: number,
  progress: (share: number) => void,
): Promise<T | undefined> {
  let heard = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - heard < SPELL) continue;
    progress(step.value);
    await new Promise((resolve) => setTimeout(resolve));
    if (latest !== number) return undefined;
    heard = performance.now();
  }
}
