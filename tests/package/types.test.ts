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

/** What the compiler says of a file that stands at the root of the project. */
function faultsOf(code: string): string[] {
  const read = ts.readConfigFile(`${root}tsconfig.json`, (path) => ts.sys.readFile(path));
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, root);
  const path = `${root}consumer.ts`;
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (name) => name === path || fileExists(name);
  host.getSourceFile = (name, version, ...rest) =>
    name === path
      ? ts.createSourceFile(name, code, version, true)
      : getSourceFile.call(host, name, version, ...rest);
  const program = ts.createProgram([path], options, host);
  return ts
    .getPreEmitDiagnostics(program, program.getSourceFile(path))
    .map((diagnostic) => ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
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
  it('name every tag and every event, with its fields', () => {
    expect(elements.length).toBeGreaterThan(15);
    expect(faultsOf(consumer())).toEqual([]);
  });

  it('refuse a field that an event does not have', () => {
    const wrong = `import './components/fit/define.js';
      document.querySelector('possession-fit')!.addEventListener('possession-fit-select', (event) => event.pack);`;
    expect(faultsOf(wrong)).toEqual([
      expect.stringContaining("Property 'pack' does not exist on type 'FitSelectEvent'"),
    ]);
  });

  it('every event of the map is one that an element is said to send', () => {
    expect(mapped().length).toBeGreaterThan(20);
    expect([...new Set(events.values())]).toEqual(expect.arrayContaining(mapped()));
  });
});
