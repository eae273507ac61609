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

const filesIn = (room: string): readonly string[] =>
  readdirSync(root + room, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${room}/${name}`);

/** Packages that a module loads, now or later, and that are not given. */
const missingIn = (path: string, given: readonly string[]): readonly string[] =>
  [
    ...read(path).matchAll(
      /^(?:import|export)(?! type)[^;]*? from '([^'.][^']*)'|import\('([^'.][^']*)'\)/gm,
    ),
  ]
    .map(([, fixed, later]) => (fixed ?? later)!)
    .filter((name) => !name.startsWith('node:'))
    .filter((name) => !given.some((text) => name === text || name.startsWith(`${text}/`)))
    .map((name) => `${path}: ${name}`);

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
    const isServer = (path: string): boolean => path.startsWith('src/share/');
    const missing = ['src', 'components']
      .flatMap(filesIn)
      .filter((path) => !isServer(path))
      .flatMap((path) => missingIn(path, given));
    expect(missing).toEqual([]);
  });

  it('hold nothing of the server of sharing, whose packages are asked for by its verb', () => {
    const { exclude } = JSON.parse(read('tsconfig.build.json')) as {
      readonly exclude: readonly string[];
    };
    expect(exclude).toContain('src/share');
    const reached = ['src', 'components']
      .flatMap(filesIn)
      .filter((path) => !/^src\/(share|cli)\//.test(path))
      .filter((path) => /from '[^']*\/share\/(index|server|shelf|gate)\.js'/.test(read(path)));
    expect(reached).toEqual([]);
    const { dependencies, peerDependencies, peerDependenciesMeta } = about as {
      readonly dependencies?: object;
      readonly peerDependencies?: object;
      readonly peerDependenciesMeta?: Record<string, { readonly optional?: boolean }>;
    };
    const peers = Object.keys(peerDependencies ?? {});
    for (const name of peers) expect(peerDependenciesMeta?.[name]?.optional, name).toBe(true);
    const given = [...Object.keys(dependencies ?? {}), ...peers];
    // What joins several servers is loaded by --redis alone, which says how to install it.
    expect(filesIn('src/share').flatMap((path) => missingIn(path, given))).toEqual([
      'src/share/joined.ts: @hocuspocus/extension-redis',
      'src/share/joined.ts: ioredis',
    ]);
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
      .flatMap((module) => module.declarations)
      .find((declaration) => declaration.tagName === `possession-${name}`)!;
    const claimed = declared.members.flatMap((member) =>
      'attribute' in member && typeof member.attribute === 'string' ? [member.attribute] : [],
    );
    expect(claimed.sort()).toEqual([...(seen[declared.name]!.observedAttributes ?? [])].sort());
  });
});
