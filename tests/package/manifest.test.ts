import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  elementFolders,
  makeManifest,
  manifestFiles,
  tokens,
  type Declaration,
} from '../../scripts/manifest.mjs';

const root = new URL('../../', import.meta.url);
const manifest = makeManifest();
const files = await manifestFiles();
const declared = manifest.modules.flatMap((module) => module.declarations);
const elements = new Map(
  declared.flatMap((declaration) =>
    declaration.tagName ? [[declaration.tagName, declaration]] : [],
  ),
);
const folders = elementFolders().filter((name) =>
  existsSync(new URL(`components/${name}/${name}.ts`, root)),
);
const element = (name: string): Declaration => elements.get(`possession-${name}`)!;
const names = (list: readonly { readonly name: string }[]): string[] =>
  list.map((item) => item.name);

/** All code of one element's folder. */
function codeOf(name: string): string {
  return readdirSync(new URL(`components/${name}/`, root))
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(new URL(`components/${name}/${file}`, root), 'utf8'))
    .join('\n');
}

describe('the manifest of the elements', () => {
  it('follows schema 1 and finds the elements', () => {
    expect(manifest.schemaVersion).toBe('1.0.0');
    expect(folders).toContain('sheet');
    expect([...elements.keys()].sort()).toEqual(folders.map((name) => `possession-${name}`));
  });

  it.each(folders)('says what %s is and where it is defined', (name) => {
    expect(element(name).summary, `@summary of ${name}`).toBeTruthy();
    const defining = manifest.modules.find(
      (module) => module.path === `dist/components/${name}/define.js`,
    );
    expect(defining?.exports).toContainEqual(
      expect.objectContaining({
        kind: 'custom-element-definition',
        name: `possession-${name}`,
        declaration: {
          name: element(name).name,
          module: `dist/components/${name}/${name}.js`,
        },
      }),
    );
  });

  it.each(folders)('has every reactive property of %s, with its type', async (name) => {
    const seen = (await import(`../../components/${name}/${name}.ts`)) as Record<string, unknown>;
    const made = seen[element(name).name] as { properties?: Record<string, { state?: boolean }> };
    const reactive = Object.entries(made.properties ?? {}).filter(([, how]) => !how.state);
    const fields = element(name).members.filter((member) => member.kind === 'field');
    for (const [property] of reactive)
      expect(fields.find((field) => field.name === property)?.type?.text, property).toBeTruthy();
  });

  it.each(folders)('has every part of %s', (name) => {
    const drawn = [...codeOf(name).matchAll(/\bpart="([a-z -]+)"/g)].flatMap((item) =>
      item[1]!.split(' '),
    );
    if (codeOf(name).includes('cautionList(')) drawn.push('cautions');
    expect(names(element(name).cssParts)).toEqual(expect.arrayContaining([...new Set(drawn)]));
  });

  it.each(folders)('has every event that %s sends, and its class', (name) => {
    const sent = [...codeOf(name).matchAll(/dispatchEvent\(\s*new (\w+)\(/g)].map(
      (item) => item[1]!,
    );
    const types = element(name).events.map((event) => event.type?.text);
    expect(types).toEqual(expect.arrayContaining([...new Set(sent)]));
    for (const event of element(name).events)
      expect(names(declared), event.name).toContain(event.type?.text);
  });

  it.each(folders)('has every custom property that %s reads', (name) => {
    const read = [...codeOf(name).matchAll(/var\(\s*(--possession-[a-z-]+)/g)].map(
      (item) => item[1]!,
    );
    const told = names(element(name).cssProperties);
    expect(told).toEqual(expect.arrayContaining([...new Set([...read, ...names(tokens())])]));
  });

  it('finds every token', () => {
    const text = ['tokens', 'base']
      .map((name) => readFileSync(new URL(`components/shared/${name}.ts`, root), 'utf8'))
      .join('');
    const read = new Set(
      [...text.matchAll(/var\(\s*(--possession-[a-z-]+)/g)].map((item) => item[1]),
    );
    expect(read.size).toBeGreaterThan(30);
    expect(tokens().map((token) => token.name)).toEqual([...read]);
  });

  it.each(['custom-elements.json', 'docs/elements.md'])(
    '%s is up to date; if not: npm run manifest',
    (path) => {
      const kept = readFileSync(new URL(path, root), 'utf8');
      expect(kept === files[path], 'run npm run manifest').toBe(true);
    },
  );
});
