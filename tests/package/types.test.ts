import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { makeManifest } from '../../scripts/manifest.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const { modules } = makeManifest();
const sourceOf = (path: string): string => `./${path.replace(/^dist\//, '')}`;
const declared = modules.flatMap((module) =>
  module.declarations.map((declaration) => ({ ...declaration, from: sourceOf(module.path) })),
);
const elements = declared.filter((element) => element.tagName);
const events = new Map(
  elements.flatMap((element) => element.events.map((event) => [event.name, event.type!.text])),
);
const eventClass = (name: string): (typeof declared)[number] =>
  declared.find((element) => element.name === name)!;

/** What a consumer writes: each tag and each event used by its name alone, with every field. */
function consumer(): string {
  const lines = ['declare const host: HTMLElement;'];
  for (const { name, from, tagName } of elements) {
    lines.push(`import '${from.replace(/[^/]+$/, 'define.js')}';`);
    lines.push(`import type { ${name} } from '${from}';`);
    lines.push(`export const a${name}: ${name} = document.querySelector('${tagName}')!;`);
    lines.push(`export const b${name}: ${name} = document.createElement('${tagName}');`);
  }
  for (const [event, name] of events) {
    const { from, members } = eventClass(name);
    lines.push(`import type { ${name} as E${lines.length} } from '${from}';`);
    const own = members.map((field) => `void event.${field.name};`).join(' ');
    lines.push(
      `host.addEventListener('${event}', (event) => { const exact: E${lines.length - 1} = event; void exact; ${own} });`,
    );
  }
  return lines.join('\n');
}

/** What the compiler says of each of some files that stand at the root of the project: one program has them all. */
function faultsOf(files: Readonly<Record<string, string>>): Record<string, string[]> {
  const read = ts.readConfigFile(`${root}tsconfig.json`, (path) => ts.sys.readFile(path));
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, root);
  const codes = new Map(Object.entries(files).map(([name, code]) => [root + name, code]));
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (path) => codes.has(path) || fileExists(path);
  host.getSourceFile = (path, version, ...rest) => {
    const code = codes.get(path);
    return code === undefined
      ? getSourceFile.call(host, path, version, ...rest)
      : ts.createSourceFile(path, code, version, true);
  };
  const program = ts.createProgram([...codes.keys()], options, host);
  const told = (name: string): string[] =>
    ts
      .getPreEmitDiagnostics(program, program.getSourceFile(root + name))
      .map((diagnostic) => ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
  return Object.fromEntries(Object.keys(files).map((name) => [name, told(name)]));
}

/** Names of the events that code adds to the map of the page's events. */
function mapped(): string[] {
  return readdirSync(`${root}components`, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .flatMap((path) => {
      const text = readFileSync(`${root}components/${path}`, 'utf8');
      return [...text.matchAll(/\[(\w+)\.type\]: \1;/g)].map((item) => item[1]!);
    });
}

describe('types for a consumer', () => {
  const faults = faultsOf({
    'consumer.ts': consumer(),
    'wrong.ts': `import './components/fit/define.js';
      document.querySelector('possession-fit')!.addEventListener('possession-fit-select', (event) => event.pack);`,
  });

  it('name every tag and every event, with its fields', () => {
    expect(elements.length).toBeGreaterThan(15);
    expect(faults['consumer.ts']).toEqual([]);
  });

  it('refuse a field that an event does not have', () => {
    expect(faults['wrong.ts']).toEqual([
      expect.stringContaining("Property 'pack' does not exist on type 'FitSelectEvent'"),
    ]);
  });

  it('every event of the map is one that an element is said to send', () => {
    expect(mapped().length).toBeGreaterThan(20);
    expect([...new Set(events.values())]).toEqual(expect.arrayContaining(mapped()));
  });
});
