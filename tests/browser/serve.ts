/** Serves the site for the browser tests: as built, by a plain static server, under a sub-path. */
import { existsSync } from 'node:fs';
import type { TestProject } from 'vitest/node';
import { BUILD, build } from '../../src/cli/install.mjs';
import { serve } from '../../src/cli/serve.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built site is served; ends with a slash. */
    site: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync(BUILD)) build();
  const site = await serve({ folder: BUILD, base: '/some/place/', port: 0 });
  project.provide('site', site.url);
  return site.close;
}
