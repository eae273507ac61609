import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { elementFolders, makeManifest } from '../../scripts/manifest.mjs';
import { packageExports } from '../../scripts/package-entries.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const about = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as {
  readonly exports: object;
  readonly private?: boolean;
};
const manifest = makeManifest();
const read = (path: string): string => readFileSync(root + path, 'utf8');

describe('the entries of the package', () => {
  it('are those by intent, and it can be published', () => {
    expect(about.exports).toEqual(packageExports());
    expect(about.private).toBeUndefined();
  });

  it('lead to modules that are there', () => {
    for (const target of Object.values(packageExports())) {
      if (typeof target === 'string') continue;
      const source = target.default.replace('./dist/', '').replace(/\.js$/, '.ts');
      expect(existsSync(root + source), source).toBe(true);
    }
  });

  it('need no package that one who installs it does not get', () => {
    const { dependencies } = about as { readonly dependencies?: object };
    const given = Object.keys(dependencies ?? {});
    const files = ['src', 'components'].flatMap((room) =>
      readdirSync(root + room, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => `${room}/${name}`),
    );
    const missing = files.flatMap((path) =>
      [
        ...read(path).matchAll(
          /^(?:import|export)(?! type)[^;]*? from '([^'.][^']*)'|import\('([^'.][^']*)'\)/gm,
        ),
      ]
        .map(([, fixed, later]) => (fixed ?? later)!)
        .filter((name) => !name.startsWith('node:'))
        .filter((name) => !given.some((one) => name === one || name.startsWith(`${one}/`)))
        .map((name) => `${path}: ${name}`),
    );
    expect(missing).toEqual([]);
  });

  it('have every element in all and in classes', () => {
    for (const name of elementFolders()) {
      expect(read('components/all.ts')).toContain(`'./${name}/define.js'`);
      expect(read('components/classes.ts')).toContain(`'./${name}/${name}.js'`);
    }
  });

  it('give each element with the types of its events', () => {
    for (const { declarations } of manifest.modules)
      for (const { tagName, events } of declarations)
        for (const event of tagName ? events : [])
          expect(
            read(`components/${tagName!.replace('possession-', '')}/define.ts`),
            `${tagName} ${event.name}`,
          ).toMatch(new RegExp(`export type \\{ (\\w+, )*${event.type!.text}\\b`));
  });

  it.each(elementFolders())('claim no attribute that %s does not observe', async (name) => {
    const seen = (await import(`../../components/${name}/${name}.ts`)) as Record<
      string,
      { readonly observedAttributes?: readonly string[] }
    >;
    const declared = manifest.modules
      .flatMap((one) => one.declarations)
      .find((one) => one.tagName === `possession-${name}`)!;
    const claimed = declared.members.flatMap((one) =>
      'attribute' in one && typeof one.attribute === 'string' ? [one.attribute] : [],
    );
    expect(claimed.sort()).toEqual([...(seen[declared.name]!.observedAttributes ?? [])].sort());
  });
});
