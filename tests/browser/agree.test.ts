/** After an edit no part of a sheet lags behind: two frames later all say what a fresh page says. */
import { describe, expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { settled } from './sheet';
import { drawn, visits } from './visit';

const visit = visits();

/**
 * A sheet, a blank of it, and what is typed there: edits that change numbers, not which lines there
 * are. A line that an edit adds has its numbers put in once it is found to be near the reader.
 */
const EDITS = [
  ['loop-balance', 'Ambient air', '71 °F'],
  ['exchangers', 'Rated heat', '31000 Btu/h'],
  ['pump-and-restriction', 'Voltage at the pump', '10.7 V'],
  ['fans-and-face-airflow', 'Voltage at the fans', '11.1 V'],
] as const;

interface Said {
  readonly words: string;
  readonly spoken: (string | null)[];
  readonly drawn: (string | null)[];
}

/** In the page: everything the sheet says in words and numbers, and every line its drawings have. */
const reader = (page: Page) =>
  page.evaluateHandle(() => (): Said => {
    const main = document.querySelector('main')!;
    const all = (selector: string) => [...main.querySelectorAll(selector)];
    return {
      words: main.textContent.replace(/\s+/g, ' '),
      spoken: all('[aria-label]').map((e) => e.getAttribute('aria-label')),
      drawn: all('svg[role="img"] path').map((path) => path.getAttribute('d')),
    };
  });

const said = async (page: Page): Promise<Said> =>
  page.evaluate((read) => read(), await reader(page));

/** Type `text` in one event, as when it is pasted, and read the sheet once two frames are painted. */
const typed = async (page: Page, box: Locator, text: string): Promise<Said> =>
  box.evaluate(
    async (input, { text, read }) => {
      (input as HTMLInputElement).value = text;
      input.dispatchEvent(new Event('input', { bubbles: true }));
      const frame = () => new Promise((next) => requestAnimationFrame(next));
      await frame();
      await frame();
      await new Promise<void>((painted) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => painted();
        port2.postMessage(null);
      });
      return read();
    },
    { text, read: await reader(page) },
  );

/** Runs in the page: bands come from another thread once it is done; here it never answers. */
function silenceThreads() {
  window.Worker = class extends EventTarget {
    postMessage() {}
    terminate() {}
  } as unknown as typeof Worker;
}

describe('two frames after an edit', () => {
  it.each(EDITS)('all of %s agrees with a fresh page', async (sheet, label, text) => {
    // So tall that nothing is away from the reader.
    const page = await visit(`sheets/${sheet}/`, { height: 12_000 });
    await page.addInitScript(silenceThreads);
    await page.reload();
    await drawn(page);
    const box = page.getByRole('textbox', { name: new RegExp(`^${label}(, as found)?$`) }).first();
    await box.focus();
    await expect.poll(async () => (await said(page)).drawn.length).toBeGreaterThan(0);
    await settled(page);
    const before = await said(page);
    const after = await typed(page, box, text);
    expect(after.words).not.toBe(before.words);
    expect(after.drawn).not.toEqual(before.drawn);

    await page.reload();
    await drawn(page);
    await expect.poll(async () => (await said(page)).drawn.length).toBe(after.drawn.length);
    await settled(page);
    expect(await said(page)).toEqual(after);
  });
});
