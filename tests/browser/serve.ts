/**
 * Serves the site for the browser tests: as built, by a plain static server, under a sub-path.
 * With SITE_URL set, e.g. to a running `vite dev`, the tests go there instead and nothing is built.
 */
import { existsSync } from 'node:fs';
import type { TestProject } from 'vitest/node';
import { BUILD, build } from '../../src/cli/install.mjs';
import { serve } from '../../src/cli/serve.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the site is served; ends with a slash. */
    site: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const running = process.env.SITE_URL;
  if (running) {
    project.provide('site', running.replace(/\/*$/, '/'));
    return () => Promise.resolve();
  }
  if (!existsSync(BUILD)) build();
  const site = await serve({ folder: BUILD, base: '/some/place/', port: 0 });
  project.provide('site', site.url);
  return site.close;
}
