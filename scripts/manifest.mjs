// Writes custom-elements.json, the description of every element for editors and catalogues, and docs/elements.md from it.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { create, ts } from '@custom-elements-manifest/analyzer/index.js';
import { litPlugin } from '@custom-elements-manifest/analyzer/src/features/framework-plugins/lit/lit.js';
import { format } from 'oxfmt';
import { elementDocs } from './element-docs.mjs';
import { reactTypes, vueTypes } from './framework-types.mjs';

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

/** Tags of the elements that have German words. */
const germanElements = () =>
  elementFolders()
    .filter((name) => existsSync(join(root, 'components', name, 'strings.de.ts')))
    .map((name) => `possession-${name}`);

/**
 * Custom properties that every element reads: name, default, meaning and, but for the font, the syntax of a value (CSS
 * Properties and Values API). They are read from `components/shared/tokens.ts` and its doc comment.
 */
export function tokens() {
  const text = readFileSync(join(root, 'components/shared/tokens.ts'), 'utf8');
  const meanings = new Map(
    [...text.matchAll(/^ \* - `([a-z-]+)`: (.+)$/gm)].map(([, name, meaning]) => [name, meaning]),
  );
  const found = [
    ...text.matchAll(/var\(--possession-([a-z-]+),\s*([^;]+?)\);/g),
    [null, 'font', 'inherit'],
  ];
  return found.map(([, name, value]) => {
    const description = meanings.get(name);
    if (!description) throw new Error(`tokens.ts does not say what ${name} is for`);
    return {
      name: `--possession-${name}`,
      default: value.replaceAll('--_', '--possession-'),
      description,
      ...(name !== 'font' && { syntax: /\d(rem|px)$/.test(value) ? '<length>' : '<color>' }),
    };
  });
}

let made;
/** The manifest, schema 1, of all elements and events, worked out once. Paths are those of the published package. */
export const makeManifest = () => (made ??= workOutManifest());

function workOutManifest() {
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
  const analysed = create({
    modules: [...sources.values()],
    plugins: litPlugin(),
    context: { dev: false },
  });
  const shared = tokens();
  const modules = [];
  for (const module of analysed.modules) {
    const declarations = (module.declarations ?? [])
      .filter((one) => one.customElement || one.superclass?.name === 'Event')
      .map((one) =>
        one.customElement
          ? element(
              one,
              shared,
              typeSources(sources.get(module.path)),
              reactiveOf(sources.get(module.path)),
            )
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
function element(declared, shared, sourceOf, reactive) {
  const own = declared.cssProperties ?? [];
  return {
    ...declared,
    members: [
      ...fields(declared, sourceOf).flatMap((field) => forPages(field, reactive)),
      ...methods(declared),
    ],
    attributes: (declared.attributes ?? []).filter((one) => reactive.get(one.fieldName)?.attribute),
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

/**
 * The reactive properties of the class in a file that are not its own state, by name, with whether they are attributes
 * too. The analyzer takes every one for an attribute, and what is set on a field for a field.
 */
function reactiveOf(source) {
  const found = new Map();
  const visit = (node) => {
    if (ts.isPropertyDeclaration(node) && node.name.getText(source) === 'properties')
      for (const one of node.initializer.properties ?? []) {
        if (!ts.isPropertyAssignment(one)) continue;
        const how = one.initializer.getText(source);
        if (!/state:\s*true/.test(how))
          found.set(one.name.getText(source), { attribute: !/attribute:\s*false/.test(how) });
      }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** A field as a page may use it; none where it is the element's own business. */
function forPages({ attribute, reflects, ...field }, reactive) {
  const how = reactive.get(field.name);
  if (!how && !field.readonly) return [];
  if (!how?.attribute) return [field];
  return [{ ...field, ...(attribute && { attribute }), ...(reflects && { reflects }) }];
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

/** The files as they should be, by their path from the root of the project. */
export async function manifestFiles() {
  const manifest = makeManifest();
  const options = JSON.parse(readFileSync(join(root, '.oxfmtrc.json'), 'utf8'));
  const formatted = async (path, text) => ({ [path]: (await format(path, text, options)).code });
  return {
    ...(await formatted('components/frameworks/react.ts', reactTypes(manifest))),
    ...(await formatted('components/frameworks/vue.ts', vueTypes(manifest))),
    'custom-elements.json': `${JSON.stringify(manifest, null, 2)}\n`,
    ...(await formatted('docs/elements.md', elementDocs(manifest, tokens(), germanElements()))),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [path, text] of Object.entries(await manifestFiles())) {
    writeFileSync(join(root, path), text);
    console.log(`written: ${path}`);
  }
