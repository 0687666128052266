/** From an edit in a sheet to the painted frame that shows its result, in a real browser. */
import type { CDPSession, ElementHandle, Locator, Page } from 'playwright-core';

export interface EditTimes {
  /** Input event to painted frame, the wait for the frame included, ms. */
  readonly toPaint: number;
  /** Of that, what the page worked: handling the event, and making the frame, ms. */
  readonly work: number;
}

/** What the page's main thread did from before the edit until after its frame, ms. */
export interface EditWork {
  /** Time on the processor: waiting for other work on the machine is not in it. */
  readonly cpu: number;
  /** By the clock: running scripts, working out styles, working out places. */
  readonly script: number;
  readonly style: number;
  readonly layout: number;
}

/** Where the results of a sheet stand; the whole page where a sheet marks none. */
const RESULTS = '.headline, [data-result], output';

/** Edit `box` between neighbouring values and time each edit. */
export async function editTimes(
  page: Page,
  box: Locator,
  edits: number,
): Promise<(EditTimes & EditWork)[]> {
  // The runner's compiler wraps named functions in a helper that the page does not have.
  await page.evaluate('globalThis.__name ??= (f) => f');
  const values = neighbours(await box.inputValue());
  // Found once: looking for a label in a large page is work the page would be charged for.
  const input = (await box.elementHandle()) as ElementHandle<HTMLInputElement>;
  const times: (EditTimes & EditWork)[] = [];
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const warmUp = 8;
  for (let i = 0; i < warmUp + edits; i++) {
    await input.evaluate((element) => {
      element.focus();
      element.select();
    });
    // Armed before the edit is sent, asked after: two calls in flight have no order.
    const shown = await page.evaluateHandle(watchNextChange, RESULTS);
    const before = await counters(session);
    await page.keyboard.insertText(values[i % values.length]!);
    const time = await shown.evaluate(({ painted }) => painted);
    const after = await counters(session);
    await shown.dispose();
    const spent = (name: string) => 1000 * ((after.get(name) ?? NaN) - (before.get(name) ?? NaN));
    if (i < warmUp) continue;
    times.push({
      ...time,
      cpu: spent('ThreadTime'),
      script: spent('ScriptDuration'),
      style: spent('RecalcStyleDuration'),
      layout: spent('LayoutDuration'),
    });
  }
  await session.detach();
  return times;
}

/** Seconds the main thread has spent on each kind of work so far. */
async function counters(session: CDPSession): Promise<Map<string, number>> {
  const { metrics } = await session.send('Performance.getMetrics');
  return new Map(metrics.map(({ name, value }) => [name, value]));
}

/** Values near the one that stands there, its unit kept as typed. */
export function neighbours(text: string): string[] {
  const found = /^\s*(-?\d+(?:\.\d+)?)(.*)$/s.exec(text);
  if (!found) throw new Error(`"${text}" is not a number to edit`);
  const value = Number(found[1]);
  const unit = found[2] ?? '';
  return [1.01, 1.02, 0.99, 1.03, 0.98].map((f) => `${Number((value * f).toPrecision(4))}${unit}`);
}

/** Runs in the page: `painted` resolves when the first frame that shows the next edit's result is painted. */
function watchNextChange(results: string): { painted: Promise<EditTimes> } {
  const read = () => {
    const places = [...document.querySelectorAll(results)];
    return (places.length > 0 ? places : [document.body]).map((p) => p.textContent).join('|');
  };
  /** A message is delivered after what is queued before it: microtasks, or the frame being made. */
  const then = (run: () => void) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = run;
    channel.port2.postMessage(null);
  };
  const painted = new Promise<EditTimes>((done, fail) => {
    const tooLate = setTimeout(() => fail(new Error('no result changed within 3 s')), 3000);
    const onInput = (event: Event) => {
      const before = read();
      const start = event.timeStamp;
      let handled = 0;
      // The handler ends when the next message comes, or when the frame begins.
      then(() => (handled ||= performance.now() - start));
      let made = 0;
      const frame = () => {
        const began = performance.now();
        handled ||= began - start;
        const changed = read() !== before;
        then(() => {
          const ended = performance.now();
          made += ended - began;
          if (!changed) return;
          clearTimeout(tooLate);
          done({ toPaint: ended - start, work: handled + made });
        });
        if (!changed) requestAnimationFrame(frame);
      };
      requestAnimationFrame(frame);
    };
    addEventListener('input', onInput, { capture: true, once: true });
  });
  return { painted };
}
