/** The built site in Chromium: how fast an edit shows, how much script a first visit loads. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { BUILD, build } from '../../src/cli/install.mjs';
import { serve } from '../../src/cli/serve.mjs';
import { launch, openPage } from '../browser/browser';
import { editTimes } from './edit';
import { entry, type Entry } from './measure';

const BASE = '/some/place/';
const EDITS = 60;
const p95 = (limit: number) => ({ of: 'p95', limit }) as const;

/** Sheets whose edits are timed, and the blank that is edited. */
const EDITED = [
  { sheet: 'loop-balance', label: /^ambient air/i },
  { sheet: 'pump-and-restriction', label: /^voltage at the pump/i },
];

export async function browserEntries(): Promise<Entry[]> {
  build();
  const site = await serve({ folder: BUILD, base: BASE, port: 0 });
  const browser = await launch();
  try {
    return [...(await editEntries(browser, site.url)), ...(await loadEntries(browser, site.url))];
  } finally {
    await browser.close();
    await site.close();
  }
}

async function editEntries(browser: Browser, site: string): Promise<Entry[]> {
  const entries: Entry[] = [];
  for (const { sheet, label } of EDITED) {
    const watched = await openPage(browser);
    await watched.page.goto(`${site}sheets/${sheet}/`, { waitUntil: 'networkidle' });
    const times = await editTimes(watched.page, await blank(watched.page, label), EDITS);
    const values = (of: keyof (typeof times)[number]) => times.map((t) => t[of]);
    // Compute and render within one frame; on screen at the end of the next frame that begins.
    entries.push(
      entry({ name: 'edit-work-steady', of: sheet, unit: 'ms', aim: p95(16) }, values('work')),
      entry(
        { name: 'edit-to-paint-steady', of: sheet, unit: 'ms', aim: p95(33) },
        values('toPaint'),
      ),
    );
    await watched.close();
  }
  return entries;
}

/** The text box with that label, or else the first one of the sheet. */
async function blank(page: Page, label: RegExp) {
  const boxes = page.locator('input[type=text]:visible, input:not([type]):visible');
  const labelled = page.getByLabel(label).and(boxes);
  return (await labelled.count()) > 0 ? labelled.first() : boxes.first();
}

/** Script that each page asks for on a first visit, gzipped. */
async function loadEntries(browser: Browser, site: string): Promise<Entry[]> {
  const index = await openPage(browser);
  await index.page.goto(site, { waitUntil: 'networkidle' });
  const links = await index.page
    .locator('a[href]')
    .evaluateAll((list) => list.map((a) => (a as HTMLAnchorElement).href.replace(/[?#].*$/, '')));
  await index.close();
  const sheets = [...new Set(links)].filter((link) => link.startsWith(site) && link !== site);
  const entries: Entry[] = [];
  for (const page of [site, ...sheets]) {
    const of = page.slice(site.length).replace(/^sheets\/|\/$/g, '') || 'index';
    const kilobytes = await scriptKilobytes(browser, site, page);
    const aim = of === 'index' ? p95(250) : null;
    entries.push(entry({ name: 'first-load-kB', of, unit: 'kB', aim }, [kilobytes]));
  }
  return entries;
}

async function scriptKilobytes(browser: Browser, site: string, address: string): Promise<number> {
  const watched = await openPage(browser);
  await watched.page.goto(address, { waitUntil: 'networkidle' });
  await watched.close();
  const scripts = new Set(
    watched.requests
      .map((request) => request.replace(/[?#].*$/, ''))
      .filter((request) => request.startsWith(site) && /\.m?js$/.test(request)),
  );
  const bytes = [...scripts].map(
    (script) => gzipSync(readFileSync(join(BUILD, decodeURI(script.slice(site.length))))).length,
  );
  return bytes.reduce((sum, size) => sum + size, 0) / 1000;
}
