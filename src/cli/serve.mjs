/** A plain static server for build/, at the root or under a sub-path. */
import { existsSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';

/**
 * @param {{ folder: string, base: string, port: number, nextFree?: boolean }} options
 *   `base` begins and ends with a slash; `nextFree` tries the ports after `port` when it is taken.
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export async function serve({ folder, base, port, nextFree = false }) {
  const files = sirv(folder, { etag: true, gzip: true, brotli: true });
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://localhost');
    /** @param {string} place */
    const redirect = (place) => response.writeHead(302, { location: place + url.search }).end();
    if (`${url.pathname}/` === base) return redirect(base);
    if (!url.pathname.startsWith(base)) {
      // A visitor at the bare address finds the way; anything else is honestly not here.
      if (url.pathname === '/') return redirect(base);
      return response.writeHead(404).end('Not found');
    }
    const path = url.pathname.slice(base.length);
    // Pages link to each other with relative addresses, which need the closing slash of the folder.
    if (path && !path.endsWith('/') && existsSync(join(folder, decode(path), 'index.html')))
      return redirect(`${url.pathname}/`);
    request.url = `/${path}${url.search}`;
    files(request, response, () => {
      response.writeHead(404).end('Not found');
    });
  });
  const used = await listen(server, port, nextFree);
  return {
    url: `http://localhost:${used}${base}`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

/** @param {string} path */
function decode(path) {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/**
 * @param {import('node:http').Server} server @param {number} port @param {boolean} nextFree
 * @returns {Promise<number>} the port taken
 */
function listen(server, port, nextFree) {
  return new Promise((done, fail) => {
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      if (error.code !== 'EADDRINUSE' || !nextFree || port >= 65535) return fail(error);
      listen(server, port + 1, nextFree).then(done, fail);
    });
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      done(typeof address === 'object' && address ? address.port : port);
    });
  });
}
