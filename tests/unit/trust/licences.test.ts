import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
// @ts-expect-error A script without types.
import * as script from '../../../scripts/licences.mjs';
import { root } from '../../helpers/cli.js';

interface Package {
  name: string;
  version: string;
  licence: string;
  ok: boolean;
}
const { isAllowed, runtimePackages, unpinned } = script as {
  isAllowed: (licence: unknown) => boolean;
  runtimePackages: (lock: unknown) => Package[];
  unpinned: (manifest: unknown) => string[];
};
const read = (name: string): unknown => JSON.parse(readFileSync(join(root, name), 'utf8'));

describe('licences', () => {
  it('of everything that ships are allowed, and every version is pinned', () => {
    const all = runtimePackages(read('package-lock.json'));
    const { dependencies } = read('package.json') as { dependencies: Record<string, string> };
    expect(all.map((item) => item.name)).toEqual(expect.arrayContaining(Object.keys(dependencies)));
    expect(all.filter((item) => !item.ok)).toEqual([]);
    expect(unpinned(read('package.json'))).toEqual([]);
  });

  it('are followed through packages that others bring, and refused when unknown', () => {
    const lock = {
      packages: {
        '': { dependencies: { a: '1.0.0' } },
        'node_modules/a': { version: '1.0.0', license: 'MIT', dependencies: { b: '^2' } },
        'node_modules/b': { version: '1.0.0', license: 'ISC' },
        'node_modules/a/node_modules/b': { version: '2.0.0', license: 'GPL-3.0' },
        'node_modules/c': { version: '1.0.0', license: 'GPL-3.0', dev: true },
      },
    };
    expect(runtimePackages(lock).map((item) => [item.name, item.version, item.ok])).toEqual([
      ['a', '1.0.0', true],
      ['b', '2.0.0', false],
    ]);
  });

  it('read as expressions', () => {
    expect(isAllowed('(MIT OR GPL-3.0)')).toBe(true);
    expect(isAllowed('MIT AND GPL-3.0')).toBe(false);
    expect(isAllowed(undefined)).toBe(false);
    expect(unpinned({ dependencies: { a: '^1.0.0', b: '1.0.0' } })).toEqual(['a ^1.0.0']);
  });
});
