/** The pages of a folder printed: the built site in a headless Chromium, opened with the job's file. */
import { chromium, type Page } from 'playwright-core';
import { ARGS } from '../chromium.mjs';
import { BUILD, say } from '../install.mjs';
import { serve } from '../serve.mjs';

export interface Print {
  readonly name: string;
  readonly bytes: Buffer;
}

interface Wanted {
  /** Path of the browser. */
  readonly chromium: string;
  /** Path of the job's file. */
  readonly path: string;
  /** Sheets of the folder in its order. */
  readonly slugs: readonly string[];
}

/** A slow machine takes minutes over a hundred pages, ms. */
const PATIENCE = 900_000;
/** For the other threads to work out every sheet; the bands of all plots take half a minute of one core, ms. */
const SETTLES = 600_000;

/** The whole folder, then every sheet by itself. */
export async function* printFolder({ chromium: executablePath, path, slugs }: Wanted) {
  const site = await serve({ folder: BUILD, base: '/', port: 0 });
  try {
    const browser = await chromium.launch({ executablePath, args: ARGS });
    try {
      const context = await browser.newContext();
      const page = await context.newPage();
      page.setDefaultTimeout(PATIENCE);
      await openFolder(page, site.url, path);
      say('Printing ...');
      yield* prints(page, slugs);
    } finally {
      await browser.close();
    }
  } finally {
    await site.close();
  }
}

/** Open the job by its file, as a person does, and go to its folder without loading the page anew. */
async function openFolder(page: Page, url: string, path: string): Promise<void> {
  await page.goto(url);
  const main = page.locator('main[data-job]');
  const before = await main.getAttribute('data-job');
  await page.locator('input[type=file]').setInputFiles(path);
  await page.waitForFunction(
    (id) => document.querySelector<HTMLElement>('main')?.dataset.job !== id,
    before,
  );
  await page.locator('main a[href*="folder"]').first().click();
  await page.locator('[data-gathered="whole"]').waitFor();
}

async function* prints(page: Page, slugs: readonly string[]): AsyncGenerator<Print> {
  await drawn(page);
  yield { name: 'folder.pdf', bytes: await pdf(page) };
  const sheets = page.locator('main > .sheet');
  if ((await sheets.count()) !== slugs.length) throw new Error('the page lacks sheets of the job');
  for (const [i, slug] of slugs.entries()) {
    await page.evaluate((only) => {
      const all = document.querySelectorAll<HTMLElement>('main > .cover, main > .sheet');
      // The cover comes first.
      all.forEach((part, at) => (part.style.display = at === only + 1 ? '' : 'none'));
    }, i);
    yield { name: `${String(i + 1).padStart(2, '0')}-${slug}.pdf`, bytes: await pdf(page) };
  }
}

/**
 * Everything worked out, as the page's own button waits for it, and drawn for paper with every picture.
 * Nothing arrives after that: one print shows what the other does.
 */
async function drawn(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => void (document.documentElement.dataset.printed = 'yes');
  });
  await page.getByRole('button', { name: 'Print the folder' }).click();
  const asked = () => 'printed' in document.documentElement.dataset;
  await page.waitForFunction(asked, undefined, { timeout: SETTLES }).catch(() => {
    throw new Error('a sheet is still being worked out and cannot be printed.');
  });
  await page.evaluate(async () => {
    dispatchEvent(new Event('beforeprint'));
    await document.fonts.ready;
    await Promise.all([...document.images].map((image) => image.decode().catch(() => undefined)));
  });
}

/** A renderer short of memory may fail once. */
async function pdf(page: Page): Promise<Buffer> {
  const print = () => page.pdf({ preferCSSPageSize: true });
  try {
    return await print();
  } catch {
    return await print();
  }
}
