/** Files import one another one way only: what two need of each other stands in a third. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

const FOLDERS = ['src', 'sheets'];
const ENDINGS = ['', '.ts', '/index.ts', '.svelte.ts', '.svelte'];

function filesOf(): Map<string, string> {
  const names = FOLDERS.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
  ).filter((name) => /\.(ts|svelte)$/.test(name));
  return new Map(names.map((name) => [name, readFileSync(name, 'utf8')]));
}

function imported(file: string, name: string, files: ReadonlyMap<string, string>): string[] {
  const path = name.startsWith('$lib')
    ? name.replace('$lib', 'src/lib')
    : name.startsWith('$sheets')
      ? name.replace('$sheets', 'sheets')
      : name.startsWith('.')
        ? normalize(join(dirname(file), name))
        : null;
  if (path === null) return [];
  return ENDINGS.map((ending) => path + ending)
    .filter((candidate) => files.has(candidate) && candidate !== file)
    .slice(0, 1);
}

/** Names on a way that leads back to its start, or null. */
function circle(graph: ReadonlyMap<string, readonly string[]>): string[] | null {
  const done = new Set<string>();
  const way: string[] = [];
  const walk = (file: string): string[] | null => {
    const at = way.indexOf(file);
    if (at >= 0) return [...way.slice(at), file];
    if (done.has(file)) return null;
    way.push(file);
    for (const next of graph.get(file) ?? []) {
      const found = walk(next);
      if (found) return found;
    }
    way.pop();
    done.add(file);
    return null;
  };
  for (const file of graph.keys()) {
    const found = walk(file);
    if (found) return found;
  }
  return null;
}

describe('imports', () => {
  const files = filesOf();
  const graph = new Map(
    [...files].map(([file, text]) => [
      file,
      [...text.matchAll(/(?:from|import)\s+'([^']+)'/g)].flatMap(([, name]) =>
        imported(file, name!, files),
      ),
    ]),
  );

  it('are read: most files import another of this project', () => {
    const tied = [...graph.values()].filter((to) => to.length > 0).length;
    expect(tied).toBeGreaterThan(0.7 * files.size);
  });
  it('a circle is noticed', () => {
    expect(
      circle(
        new Map([
          ['a', ['b']],
          ['b', ['c']],
          ['c', ['b']],
        ]),
      ),
    ).toEqual(['b', 'c', 'b']);
  });
  it('lead round nowhere', () => {
    expect(circle(graph)).toBeNull();
  });
});
