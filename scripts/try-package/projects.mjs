// What strangers make of the package: five small projects, each with what it installs and its files.

const page = (body, head = '') =>
  `<!doctype html><html lang="en"><meta charset="utf-8" /><title>Try</title>${head}<body>${body}</body></html>\n`;

const compiler = (more = {}) =>
  JSON.stringify({
    compilerOptions: {
      strict: true,
      // The types of the package are checked too.
      skipLibCheck: false,
      noEmit: true,
      target: 'ES2022',
      lib: ['ES2023', 'DOM', 'DOM.Iterable'],
      module: 'ESNext',
      moduleResolution: 'Bundler',
      types: [],
      ...more,
    },
    include: ['main.ts', 'main.tsx'],
  });

const elements = "import 'possession-fit/document';\nimport 'possession-fit/ribbon';\n";
const typescript = 'typescript@6.0.3';
const vite = 'vite@8.3.8';

/** Pages show the ribbon of the package's own example. `builds`: it is compiled and bundled first. */
export const projects = [
  {
    name: 'no bundler',
    installs: [],
    // Where the package itself asks for these, nothing else may be needed.
    policy:
      "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; worker-src 'self'; require-trusted-types-for 'script'; trusted-types lit-html possession-fit",
    files: {
      'index.html': page(
        '<possession-document src="windows.csv work.csv" zone="Europe/London"><possession-ribbon></possession-ribbon></possession-document>',
        '<script type="module" src="node_modules/possession-fit/dist/browser/possession-core.js"></script>',
      ),
    },
  },
  {
    name: 'Vite with TypeScript',
    builds: true,
    installs: [vite, typescript],
    files: {
      'index.html': page('<script type="module" src="./main.ts"></script>'),
      'main.ts': `${elements}
const ribbon = document.createElement('possession-ribbon');
const holder = document.createElement('possession-document');
holder.src = 'windows.csv work.csv';
holder.zone = 'Europe/London';
holder.append(ribbon);
document.body.append(holder);
`,
      'tsconfig.json': compiler(),
    },
  },
  {
    name: 'React',
    builds: true,
    installs: [
      vite,
      typescript,
      'react@19.3.1',
      'react-dom@19.3.1',
      '@types/react@19.3.0',
      '@types/react-dom@19.3.0',
    ],
    files: {
      'index.html': page('<main></main><script type="module" src="./main.tsx"></script>'),
      'main.tsx': `${elements}import type {} from 'possession-fit/react';
import { createRoot } from 'react-dom/client';

createRoot(document.querySelector('main')!).render(
  <possession-document src="windows.csv work.csv" zone="Europe/London">
    <possession-ribbon />
  </possession-document>,
);
`,
      'tsconfig.json': compiler({ jsx: 'react-jsx' }),
    },
  },
  {
    name: 'Vue',
    builds: true,
    installs: [vite, typescript, 'vue@3.5.45'],
    files: {
      'index.html': page('<main></main><script type="module" src="./main.ts"></script>'),
      'main.ts': `${elements}import type {} from 'possession-fit/vue';
import { createApp, h } from 'vue';

createApp(() =>
  h('possession-document', { src: 'windows.csv work.csv', zone: 'Europe/London' }, [
    h('possession-ribbon'),
  ]),
).mount('main');
`,
      'tsconfig.json': compiler(),
    },
  },
];

/** In Node: the example planned and checked; prints how many windows there are and whether the check found the plan good. */
export const nodeProgram = `
import { readFileSync } from 'node:fs';
import { createInlineEngine, emptyPlan } from 'possession-fit';
const engine = createInlineEngine();
const files = ['windows.csv', 'work.csv'].map((name) => ({ name, bytes: readFileSync('node_modules/possession-fit/examples/' + name) }));
const { document } = await engine.importFiles(files, emptyPlan('Try', 'Europe/London'));
const { ledgers } = await engine.recompute(document);
const plan = await engine.allocate(document, { first: 'key-dates' });
console.log(JSON.stringify({ windows: ledgers.map((one) => one.window), verified: plan.certificate.verified }));
`;
