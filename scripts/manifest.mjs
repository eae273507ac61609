// Writes custom-elements.json, the description of every element for editors and catalogues, and docs/elements.md from it.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { create, ts } from '@custom-elements-manifest/analyzer/index.js';
import { litPlugin } from '@custom-elements-manifest/analyzer/src/features/framework-plugins/lit/lit.js';
import { format, resolveConfig } from 'prettier';
import { elementDocs } from './element-docs.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const byName = (one, other) => (one.name < other.name ? -1 : one.name > other.name ? 1 : 0);

/** Where a source file stands in the package that is published. */
const published = (path) => `dist/${path.replace(/^\//, '').replace(/\.ts$/, '.js')}`;

/** Folders of components with an element: those with a define module. */
export function elementFolders() {
  return readdirSync(join(root, 'components'))
    .filter((name) => existsSync(join(root, 'components', name, 'define.ts')))
    .sort();
}

/** Custom properties that every element reads, as `components/shared/tokens.ts` sets them: name and default. */
export function tokens() {
  const text = readFileSync(join(root, 'components/shared/tokens.ts'), 'utf8');
  const found = text.matchAll(/var\(\s*(--possession-[a-z-]+),\s*([^;]+?)\s*\);/g);
  return [...found].map(([, name, value]) => ({ name, default: value.replace(/\s+/g, ' ') }));
}

/** The manifest, schema 1, of all elements and events. Paths are those of the published package. */
export function makeManifest() {
  const paths = readdirSync(join(root, 'components'), { recursive: true })
    .map((path) => `components/${path.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith('.ts'))
    .sort();
  const sources = new Map(
    paths.map((path) => [
      path,
      ts.createSourceFile(
        path,
        readFileSync(join(root, path), 'utf8'),
        ts.ScriptTarget.ES2022,
        true,
      ),
    ]),
  );
  const made = create({
    modules: [...sources.values()],
    plugins: litPlugin(),
    context: { dev: false },
  });
  const shared = tokens();
  const modules = [];
  for (const module of made.modules) {
    const declarations = (module.declarations ?? [])
      .filter((one) => one.customElement || one.superclass?.name === 'Event')
      .map((one) =>
        one.customElement
          ? element(one, shared, typeSources(sources.get(module.path)))
          : { ...one, members: fields(one), superclass: { name: 'Event' } },
      );
    const exports = (module.exports ?? []).filter(
      (one) =>
        one.kind === 'custom-element-definition' ||
        declarations.some((declared) => declared.name === one.name),
    );
    if (declarations.length + exports.length === 0) continue;
    modules.push({
      kind: module.kind,
      path: published(module.path),
      declarations,
      exports: exports.map((one) => ({
        ...one,
        declaration: {
          ...one.declaration,
          module: published(one.declaration.module ?? module.path),
        },
      })),
    });
  }
  return { schemaVersion: '1.0.0', readme: 'README.md', modules };
}

/** What a page may use of an element: no private member, no hook of the base class. */
function element(declared, shared, sourceOf) {
  const own = declared.cssProperties ?? [];
  return {
    ...declared,
    members: [...fields(declared, sourceOf), ...methods(declared)],
    // A dispatchEvent adds an entry without a proper name; the doc comment has the names.
    events: (declared.events ?? [])
      .filter((one) => one.name?.startsWith('possession-'))
      .sort(byName),
    cssParts: declared.cssParts ?? [],
    cssProperties: [...own, ...shared.filter((one) => own.every((has) => has.name !== one.name))],
  };
}

const open = (member) =>
  !member.static && (member.privacy ?? 'public') === 'public' && !member.name.startsWith('#');

function fields(declared, sourceOf = new Map()) {
  return (declared.members ?? [])
    .filter((one) => one.kind === 'field' && open(one))
    .map((one) => {
      const named = [...new Set((one.type?.text ?? '').match(/[A-Z]\w+/g) ?? [])];
      const references = named
        .filter((name) => sourceOf.has(name))
        .map((name) => ({ name, module: sourceOf.get(name) }));
      return references.length > 0 ? { ...one, type: { ...one.type, references } } : one;
    });
}

const hooks = new Set(['render', 'connectedCallback', 'disconnectedCallback', 'createRenderRoot']);

function methods(declared) {
  return (declared.members ?? []).filter(
    (one) => one.kind === 'method' && open(one) && !hooks.has(one.name),
  );
}

/** From which published module each type that a file imports comes. */
function typeSources(source) {
  const found = new Map();
  for (const one of source.statements) {
    if (!ts.isImportDeclaration(one) || !one.importClause?.namedBindings) continue;
    const from = one.moduleSpecifier.text;
    if (!from.startsWith('.') || !ts.isNamedImports(one.importClause.namedBindings)) continue;
    const path = join(dirname(source.fileName), from).replaceAll('\\', '/');
    for (const name of one.importClause.namedBindings.elements)
      found.set(name.name.text, published(path));
  }
  return found;
}

/** The two files as they should be, by their path from the root of the project. */
export async function manifestFiles() {
  const manifest = makeManifest();
  return {
    'custom-elements.json': `${JSON.stringify(manifest, null, 2)}\n`,
    'docs/elements.md': await format(elementDocs(manifest, tokens()), {
      ...(await resolveConfig(join(root, 'docs/elements.md'))),
      parser: 'markdown',
    }),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [path, text] of Object.entries(await manifestFiles())) {
    writeFileSync(join(root, path), text);
    console.log(`written: ${path}`);
  }
