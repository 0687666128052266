/**
 * What a fresh clone lacks: a recent Node, the packages, a build, and (for the tests) a Chromium.
 * Plain Node: this runs before any package is there.
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';

export const ROOT = resolve(import.meta.dirname ?? '.', '../..');
export const BUILD = join(ROOT, 'build');

/** A line for the person waiting; standard output is kept for results. @param {string} line */
export function say(line) {
  process.stderr.write(`${line}\n`);
}

/** Stop with a clear line. @param {string} line @returns {never} */
export function stop(line) {
  say(line);
  process.exit(1);
}

/** Refuse a Node older than package.json asks for. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  stop(
    `Soakline needs Node 20.19 or newer; this is ${process.versions.node}. See https://nodejs.org`,
  );
}

/** `npm ci`, when the packages are absent or not the ones of package-lock.json. */
export function ensurePackages() {
  if (packagesMatchLock()) return;
  say('Installing packages ...');
  runQuietly(['npm', 'ci', '--no-audit', '--no-fund'], 'npm ci did not work');
}

/**
 * npm leaves a record of what it installed. Its date alone misleads (a checkout renews the date of
 * package-lock.json), so the entries are compared; optional ones may be absent on this machine.
 */
function packagesMatchLock() {
  const record = join(ROOT, 'node_modules/.package-lock.json');
  if (!existsSync(record)) return false;
  const wanted = readPackages(join(ROOT, 'package-lock.json'));
  const present = readPackages(record);
  return Object.entries(wanted).every(
    ([path, { version, optional }]) =>
      path === '' || (present[path] ? present[path].version === version : optional === true),
  );
}

/** @param {string} file @returns {Record<string, { version?: string, optional?: boolean }>} */
function readPackages(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages;
}

/** Build the site into build/. */
export function build() {
  say('Building ...');
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  runQuietly([process.execPath, vite, 'build'], 'the build did not work');
}

/** What a build is made of. */
const MADE_OF = [
  'src',
  'sheets',
  'static',
  'package-lock.json',
  'vite.config.ts',
  'svelte.config.js',
];

/** Whether build/ is there and nothing it is made of was changed since. */
export function isBuilt() {
  const page = join(BUILD, 'index.html');
  return (
    existsSync(page) && MADE_OF.every((part) => isOlder(join(ROOT, part), statSync(page).mtimeMs))
  );
}

/** @param {string} path @param {number} than @returns {boolean} */
function isOlder(path, than) {
  const found = statSync(path);
  return (
    found.mtimeMs <= than &&
    (!found.isDirectory() || readdirSync(path).every((name) => isOlder(join(path, name), than)))
  );
}

/** Path of a Chromium: the one CHROMIUM names, else the first on the path. @returns {string | null} */
export function findChromium() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
  return names.map(onPath).find((path) => path !== null) ?? null;
}

/** A Chromium, installed if this is Debian or Ubuntu and we may; otherwise stop and say what to do. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0 && onPath('apt-get')) {
    say('Installing Chromium ...');
    runQuietly(['apt-get', 'update'], 'apt-get update did not work');
    runQuietly(['apt-get', 'install', '-y', 'chromium'], 'Chromium could not be installed');
    const installed = findChromium();
    if (installed) return installed;
  }
  return stop(
    'The browser tests need Chromium. Install it (Debian, Ubuntu: sudo apt-get install chromium) ' +
      'or set CHROMIUM to the path of a Chromium or Chrome, then run again.',
  );
}

/** @param {string} name @returns {string | null} */
function onPath(name) {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    try {
      accessSync(join(folder, name), constants.X_OK);
      return join(folder, name);
    } catch {
      // not in this folder
    }
  }
  return null;
}

/**
 * Run a command; its output is shown only when it fails.
 * @param {[string, ...string[]]} command @param {string} complaint
 */
function runQuietly([name, ...args], complaint) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const shell = process.platform === 'win32' && name === 'npm';
  const ran = spawnSync(name, args, { cwd: ROOT, env, encoding: 'utf8', shell });
  if (ran.status === 0) return;
  stop([ran.stdout, ran.stderr, ran.error?.message, complaint].filter(Boolean).join('\n'));
}
