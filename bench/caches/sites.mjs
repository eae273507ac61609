// Every cache of the core, and how to make it forget: found by what a weak map is made with, and named where it is a class.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Weak maps that keep what is known of a thing by its identity alone: not caches, as nothing could work it out again. */
const identities = ['src/plan/', 'src/share/', 'src/tables/kinds/work-reading.ts'];

/** @type {readonly (readonly [file: string, from: string, to: string])[]} */
const classes = [
  ['src/engine/incremental/memo.ts', 'if (!this.#from ||', 'if (true || !this.#from ||'],
  ['src/edits/list-memo.ts', 'key === this.#key ?', 'key !== key ?'],
  ['src/tables/kinds/row-cache.ts', 'const made = holds ?', 'const made = false && holds ?'],
  ['src/tables/plan-cache.ts', 'if (kept && sameItems', 'if (false && kept && sameItems'],
  ['src/tables/plan-cache.ts', 'if (before && sameItems', 'if (false && before && sameItems'],
  [
    'src/tables/plan-cache.ts',
    '      before &&\n      sameContext',
    '      false && before &&\n      sameContext',
  ],
  [
    'src/engine/incremental/fit-cache.ts',
    'gridOf({ packages, windows }, this.#grid,',
    'gridOf({ packages, windows }, noPairs,',
  ],
  [
    'src/engine/incremental/package-cache.ts',
    'if (activities === this.#activities && leftOut === this.#leftOut) return;',
    '',
  ],
  [
    'src/engine/incremental/site-cache.ts',
    'if (this.#last?.document === document) return this.#last.read;',
    '',
  ],
  [
    'src/planner/problem/usable-times.ts',
    'let known = own.get(longerBy);',
    'let known = undefined;',
  ],
  [
    'src/planner/problem/usable-times.ts',
    'let known = this.#shared.get(key);',
    'let known = undefined;',
  ],
  ['src/planner/fit/alike.ts', 'this.#known.get(likeness) ?? []', '[]'],
];

/** A weak map that keeps nothing. */
const forgetful =
  '(class { get() {} has() { return false; } set() { return this; } delete() { return false; } })';

/**
 * @param {string} root Folder of the project.
 * @returns {{ name: string, file: string, changed: string }[]} Each cache, with the text of its file when it keeps nothing.
 * @throws {Error} Where a place named above is no longer in its file.
 */
export function caches(root) {
  const found = [];
  const files = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => `src/${path}`)
    .sort();
  for (const file of files) {
    if (identities.some((part) => file.startsWith(part))) continue;
    const text = readFileSync(join(root, file), 'utf8');
    for (const match of text.matchAll(/new WeakMap\b(?=[<(])/g)) {
      const line = text.slice(0, match.index).split('\n').length;
      const changed = `${text.slice(0, match.index)}new ${forgetful}${text.slice(match.index + match[0].length)}`;
      // What stands between the angle brackets is a type, and goes on being one.
      found.push({ name: `${file}:${line}`, file, changed });
    }
  }
  for (const [file, from, to] of classes) {
    const text = readFileSync(join(root, file), 'utf8');
    const at = text.indexOf(from);
    if (at < 0) throw new Error(`bench/caches/sites.mjs: "${from}" is no longer in ${file}`);
    const line = text.slice(0, at).split('\n').length;
    found.push({ name: `${file}:${line}`, file, changed: text.replace(from, to) });
  }
  return found;
}
