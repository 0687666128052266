/**
 * `npm start`: from a fresh clone to the sheets in a browser.
 * --port N (else 4173 or the next free one), --base /sub/path/, --no-build (serve what is there).
 */
import { existsSync } from 'node:fs';
// As a whole: an old Node lacks parseArgs, and must still get as far as being told so.
import util from 'node:util';
import { BUILD, build, ensurePackages, requireNode, stop } from './install.mjs';

requireNode();
const { port, base, noBuild } = options();
ensurePackages();
if (!noBuild) build();
else if (!existsSync(BUILD)) stop('There is no build to serve; run without --no-build.');

// Imported late: the server leans on a package that may just have been installed.
const { serve } = await import('./serve.mjs');
const site = await serve({
  folder: BUILD,
  base,
  port: port ?? 4173,
  nextFree: port === undefined,
}).catch((/** @type {NodeJS.ErrnoException} */ error) =>
  stop(
    error.code === 'EADDRINUSE'
      ? `Port ${port} is taken; give another with --port, or leave it out.`
      : `Cannot serve: ${error.message}`,
  ),
);
console.log(`Soakline is at ${site.url}`);

for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => site.close().then(() => process.exit(0)));

/** What the command line asks for, or a clear refusal. */
function options() {
  try {
    const { values } = util.parseArgs({
      options: {
        port: { type: 'string' },
        base: { type: 'string', default: '/' },
        'no-build': { type: 'boolean', default: false },
      },
    });
    const port = values.port === undefined ? undefined : Number(values.port);
    if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65535))
      throw new Error(`--port ${values.port} is not a port`);
    // "/sub/path/", "sub/path" and "/" all come out with one slash at each end.
    const base = `/${values.base}/`.replace(/\/+/g, '/');
    return { port, base, noBuild: values['no-build'] };
  } catch (error) {
    return stop(
      `${/** @type {Error} */ (error).message}\nnpm start -- [--port N] [--base /sub/path/] [--no-build]`,
    );
  }
}
