/** Every page for everyone: WCAG 2.2 AA by rule, in both themes, on a phone and on a desk. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { SHEETS } from '$sheets/abouts';
import { axe, type Kept } from './browser';
import { blank, isRefused } from './sheet';
import { visits } from './visit';

const visit = visits();
const PLACES = ['', ...SHEETS.map(({ slug }) => `sheets/${slug}/`), 'folder/'];
/** Each width once, each theme once: contrast hangs on the theme, layout on the width. */
const VIEWS = [
  { width: 390, colorScheme: 'dark' },
  { width: 820, colorScheme: null },
  { width: 1440, colorScheme: 'light' },
] as const;
/** The folder is the sheets once more, each checked on its own page: here its own part is. */
const PART: Readonly<Record<string, string>> = { 'folder/': '.cover' };

/** The demonstration has a candidate; refused texts on both sides put errors on the sheets. */
async function withErrors(): Promise<Kept> {
  const page = await visit('sheets/pump-and-restriction/', { width: 390 });
  for (const side of ['as found', 'candidate'] as const) {
    const bore = blank(page, 'Pump to first core: bore', side);
    await bore.fill('8 gpm');
    await expect.poll(() => isRefused(bore)).toBe(true);
  }
  const head = page.getByRole('textbox', { name: 'Head, row 2' }).first();
  await head.fill('19 ft');
  return page.context().storageState();
}

/** Pages longer than the window that can be moved sideways as a whole. */
const sideways = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });

/**
 * Scroll through once, so that everything that waits for the reader is drawn. A line is typeset a task
 * after it is in sight and measured by the frame after that: whoever is gone by then leaves it unmeasured.
 * @param stay - for so long at each window at least, ms
 */
async function readThrough(page: Page, stay: number): Promise<void> {
  await page.evaluate(async (stay) => {
    const framed = () => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done)));
    const passed = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));
    for (let y = 0; y < document.body.scrollHeight; y += innerHeight) {
      scrollTo(0, y);
      // A frame may not come to a page that is not in front.
      for (let i = 0; i < 3; i++) await Promise.race([framed(), passed(250)]);
      await passed(stay);
    }
    scrollTo(0, 0);
  }, stay);
}

/** Identifiers that stand more than once: a label or a description would lead astray. */
const twice = (page: Page) =>
  page.evaluate(() => {
    const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
    return ids.filter((id, i) => ids.indexOf(id) !== i);
  });

/** A renderer that answers nothing any more: what was asked of it comes neither to an end nor to an error. */
class NoAnswer extends Error {}
const PATIENCE = 80_000;

async function inTime<T>(what: string, asked: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new NoAnswer(`no answer: ${what}`)), PATIENCE);
  });
  try {
    return await Promise.race([asked, late]);
  } finally {
    clearTimeout(timer);
  }
}

describe('every page', () => {
  let kept: Kept | undefined;

  async function look(place: string): Promise<void> {
    kept ??= await withErrors();
    const page = await inTime('to be drawn', visit(place, { width: 390, kept }));
    const readAll = async (stay: number) => {
      if (!(place in PART)) await inTime('to be read through', readThrough(page, stay));
    };
    await readAll(0);
    expect(await twice(page)).toEqual([]);
    for (const { width, colorScheme } of VIEWS) {
      await inTime('another width', page.setViewportSize({ width, height: 900 }));
      expect(await inTime('its width', sideways(page)), `${width} px`).toBe(0);
      if (!colorScheme) continue;
      await inTime('another theme', page.emulateMedia({ colorScheme }));
      // What overflows is told to the keyboard by an observer, of what has been in sight since: a frame
      // later, on a busy machine more.
      const until = Date.now() + 60_000;
      for (let stay = 50; ; stay *= 2) {
        const broken = await inTime('which rules it breaks', axe(page, PART[place]));
        if (broken.length === 0) break;
        if (Date.now() > until) expect(broken, `${width} px, ${colorScheme}`).toEqual([]);
        await readAll(Math.min(stay, 400));
      }
    }
  }

  it.each(PLACES)(
    '/%s keeps WCAG 2.2 AA and never scrolls sideways',
    { timeout: 420_000 },
    async (place) => {
      try {
        await look(place);
      } catch (thrown) {
        // Once in some hundred pages Chromium falls silent on a loaded machine; a page of ours that hangs does so again.
        if (!(thrown instanceof NoAnswer)) throw thrown;
        console.warn(`/${place}: ${thrown.message}; opened once more`);
        await look(place);
      }
    },
  );
});
