/** Chromium for the browser tests and the bench. */
import { createRequire } from 'node:module';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { ARGS } from '../../src/cli/chromium.mjs';
import { findChromium } from '../../src/cli/install.mjs';

export async function launch(): Promise<Browser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('no Chromium; `npm test` installs it or says how');
  return chromium.launch({ executablePath, args: ARGS });
}

/** What a browser keeps of a site: here, the jobs. */
export type Kept = Awaited<ReturnType<BrowserContext['storageState']>>;

export interface View {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
  /** Left by an earlier visit; nothing unless given. */
  readonly kept?: Kept;
}

/** A page and everything it asked for or complained about. */
export interface Watched {
  readonly page: Page;
  /** Address of every request, blob: and data: included. */
  readonly requests: string[];
  /** Text of every console error and uncaught exception. */
  readonly errors: string[];
  close(): Promise<void>;
}

/** A fresh page with storage of its own. Requests are recorded from the first one on. */
export async function openPage(browser: Browser, view: View = {}): Promise<Watched> {
  const { width = 1280, height = 800, colorScheme = 'light', kept } = view;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme,
    ...(kept && { storageState: kept }),
  });
  const requests: string[] = [];
  const errors: string[] = [];
  // On the context: workers and pages opened from the page are watched as well.
  context.on('request', (request) => requests.push(request.url()));
  context.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  context.on('weberror', (error) => errors.push(String(error.error())));
  const page = await context.newPage();
  return { page, requests, errors, close: () => context.close() };
}

/** @throws when any request went to a host other than the site's. */
export function assertNoForeignRequests(watched: Watched, site: string): void {
  const home = new URL(site).origin;
  const isForeign = (address: string) =>
    !['data:', 'blob:', 'about:'].includes(new URL(address).protocol) &&
    new URL(address).origin !== home;
  const foreign = watched.requests.filter(isForeign);
  if (foreign.length > 0) throw new Error(`requests to other hosts:\n${foreign.join('\n')}`);
}

/** WCAG 2.2, levels A and AA, and everything they build on. */
const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Broken rules of WCAG 2.2 AA, one line for each place; empty when there are none.
 * @param part - selector of the part to look at; the whole page unless given
 */
export async function axe(page: Page, part?: string): Promise<string[]> {
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
  const violations = await page.evaluate(
    async ({ tags, part }) => {
      const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
      const results = await axe.run(
        // Letters of a typeset formula share the ink around them and are hidden from assistive
        // technology; there are thousands.
        { ...(part && { include: [[part]] }), exclude: [['.katex-html']] },
        // Naming every place that is right would take most of the time.
        { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] },
      );
      return results.violations.flatMap((rule) =>
        rule.nodes.map((node) => `${rule.id}: ${node.target.join(' ')} (${rule.help})`),
      );
    },
    { tags: WCAG_22_AA, part },
  );
  return violations;
}
