/** The built site in Chromium: how fast an edit shows, how much script a first visit loads. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { BUILD, build } from '../../src/cli/install.mjs';
import { serve } from '../../src/cli/serve.mjs';
import { launch, openPage } from '../browser/browser';
import { editTimes } from './edit';
import { entry, middle, type Entry } from './measure';

const BASE = '/some/place/';
const EDITS = 60;
const p95 = (limit: number) => ({ of: 'p95', limit }) as const;

/** Sheets whose edits are timed, and the blank that is edited, with the group it stands in. */
const EDITED = [
  { sheet: 'loop-balance', group: 'Site', label: /^ambient air/i },
  { sheet: 'exchangers', group: 'Front exchanger', label: /^rated heat/i },
  {
    sheet: 'pump-and-restriction',
    group: 'Hose, pump to charge cooler',
    label: /^pump to charge cooler: bore/i,
  },
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
  for (const { sheet, group, label } of EDITED) {
    const watched = await openPage(browser);
    await watched.page.goto(`${site}sheets/${sheet}/`, { waitUntil: 'networkidle' });
    const times = await editTimes(watched.page, blank(watched.page, group, label), EDITS);
    const values = (of: keyof (typeof times)[number]) => times.map((t) => t[of]);
    const median = (of: 'script' | 'style' | 'layout') => middle(values(of)).toFixed(1);
    const about = { of: sheet, unit: 'ms' } as const;
    entries.push(
      entry({ ...about, name: 'edit-work-steady', aim: p95(16) }, values('work')),
      entry(
        {
          ...about,
          name: 'edit-to-paint-steady',
          aim: p95(16),
          work: `script ${median('script')}, style ${median('style')}, layout ${median('layout')} ms`,
        },
        values('toPaint'),
        values('cpu'),
      ),
    );
    await watched.close();
  }
  return entries;
}

/** The text box with that label, of the loop as found where there are two. */
const blank = (page: Page, group: string, label: RegExp) =>
  page
    .getByRole('region', { name: group, exact: true })
    .getByRole('textbox', { name: label })
    .first();

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
