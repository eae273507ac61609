import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';

// The package as a stranger gets it: packed, unpacked into an empty project, and used. What it depends on is that of the
// project here; `npm run try-package` installs all of it from the registry.
const root = fileURLToPath(new URL('../../', import.meta.url));
let app: string;
let own: string;
let browser: Browser;
const servers: Server[] = [];

beforeAll(async () => {
  app = mkdtempSync(join(tmpdir(), 'possession-fit-packed-'));
  execFileSync('node', ['scripts/build-package.mjs'], { cwd: root, stdio: 'ignore' });
  const pack = ['pack', '--ignore-scripts', '--json', '--pack-destination', app];
  const said = execFileSync('npm', pack, {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [packed] = JSON.parse(said) as { filename: string }[];
  execFileSync('tar', ['xf', packed!.filename], { cwd: app });
  const modules = join(app, 'node_modules');
  own = join(modules, 'possession-fit');
  mkdirSync(modules);
  execFileSync('mv', [join(app, 'package'), own]);
  const { dependencies } = JSON.parse(readFileSync(join(own, 'package.json'), 'utf8')) as {
    dependencies: object;
  };
  // Of types only those that a project of its own would install.
  const more = ['@types/react', 'react', 'vue', 'typescript'];
  for (const name of [...Object.keys(dependencies), ...more]) {
    mkdirSync(join(modules, name, '..'), { recursive: true });
    symlinkSync(join(root, 'node_modules', name), join(modules, name));
  }
  writeFileSync(join(app, 'package.json'), '{ "type": "module" }');
  browser = await launchedBrowser();
});
afterAll(async () => {
  await browser?.close();
  for (const server of servers) server.close();
  if (app) rmSync(app, { recursive: true, force: true });
});

const node = (...words: string[]): string =>
  execFileSync('node', words, { cwd: app, encoding: 'utf8' });
const script = (text: string): string => node('--input-type=module', '-e', text);

/** Serves the unpacked package and the examples, with the page at `/`. */
async function serve(page: string, policy = ''): Promise<string> {
  const types: Record<string, string> = { js: 'text/javascript', css: 'text/css' };
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url!, 'http://x');
    response.setHeader('access-control-allow-origin', '*');
    const path = join(own, pathname);
    if (pathname === '/') {
      response.setHeader('content-type', 'text/html');
      if (policy) response.setHeader('content-security-policy', policy);
      response.end(page);
    } else if (existsSync(path)) {
      response.setHeader('content-type', types[path.split('.').at(-1)!] ?? 'text/plain');
      response.end(readFileSync(path));
    } else response.writeHead(404).end();
  });
  servers.push(server);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

/** What the ribbon of a page says of its windows, once it has any. */
async function ribbonOf(address: string): Promise<{ rows: string[]; wrong: string[] }> {
  const page = await newPage(browser);
  const wrong: string[] = [];
  page.on('pageerror', (error) => wrong.push(String(error)));
  page.on('console', (told) => {
    if (told.type() === 'error' && !told.text().includes('404')) wrong.push(told.text());
  });
  await page.goto(address);
  for (let tries = 0; tries < 1200; tries += 1) {
    const rows = await page.evaluate(() =>
      [
        ...(document
          .querySelector('possession-ribbon')
          ?.shadowRoot?.querySelectorAll('[role=option]') ?? []),
      ].map((element) => (element as HTMLElement).dataset['id']!),
    );
    if (rows.length > 0) return { rows, wrong };
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`no window was shown: ${wrong.join(' ')}`);
}

const twoTags = (from: string): string =>
  readFileSync(join(root, 'examples/two-tags.html'), 'utf8')
    .replace('../dist/browser', `${from}/dist/browser`)
    .replace('windows.csv work.csv', '/examples/windows.csv /examples/work.csv');
const strict =
  "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; worker-src 'self'; require-trusted-types-for 'script'; trusted-types lit-html possession-fit";

describe('the package, packed and unpacked into an empty project', () => {
  it('answers in Node by its name alone, without a page', () => {
    const said = script(`
      import { createInlineEngine, emptyPlan } from 'possession-fit';
      import { readFileSync } from 'node:fs';
      const engine = createInlineEngine();
      const files = ['windows', 'work'].map((name) => ({ name: name + '.csv', bytes: readFileSync('node_modules/possession-fit/examples/' + name + '.csv') }));
      const { document } = await engine.importFiles(files, emptyPlan('Fernley bank', 'Europe/London'));
      const { ledgers } = await engine.recompute(document);
      const plan = await engine.allocate(document, { first: 'key-dates' });
      console.log(JSON.stringify([...ledgers.map((one) => [one.window, one.grossMinutes]), plan.certificate.verified]));
    `);
    // 23:00 to 05:00, and Saturday 22:00 to Monday 04:00 on a weekend without a clock change.
    expect(JSON.parse(said)).toEqual([
      ['N1', 360],
      ['W1', 1800],
      // The independent check is there too, with the clock of its own.
      true,
    ]);
  });

  it('lays nothing open but its entries', () => {
    for (const inner of ['src/engine/index.js', 'dist/src/engine/index.js', 'cli'])
      expect(
        script(
          `import('possession-fit/${inner}').then(() => console.log('open'), (error) => console.log(error.code));`,
        ).trim(),
      ).toBe('ERR_PACKAGE_PATH_NOT_EXPORTED');
  });

  it('has a command that answers as the project does', () => {
    const words = ['usable', '--windows', join(root, 'examples/windows.csv'), '--json'];
    const bin = join(own, 'dist/cli.js');
    const { windows } = JSON.parse(node(bin, ...words, '--zone', 'Europe/London')) as {
      windows: { window: string; grossMinutes: number }[];
    };
    expect(windows.map((window) => [window.window, window.grossMinutes])).toEqual([
      ['N1', 360],
      ['W1', 1800],
    ]);
    expect(readFileSync(bin, 'utf8').startsWith('#!/usr/bin/env node\n')).toBe(true);
  });

  it('has with its command the code of every verb', () => {
    const file = (name: string): string => join(root, 'sample-csv', name);
    const work = ['--windows', file('windows.csv'), '--work', file('work.csv'), '--json'];
    const more: Record<string, readonly string[]> = {
      price: ['--prices', file('prices.json'), '--window', 'S01', '--minutes', '45'],
      book: ['--booking', file('booking.json')],
      people: ['--roster', file('roster.csv')],
      noise: ['--plant', file('plant-noise.csv')],
      lifting: ['--forecast', file('forecast.csv')],
    };
    const searched = new Set(['allocate', 'handback', 'price', 'summary', 'look-ahead']);
    for (const name of readdirSync(join(own, 'dist/schemas'))) {
      const verb = name.replace('.json', '');
      const short = searched.has(verb) ? ['--seconds', '0.1'] : [];
      const said = node(join(own, 'dist/cli.js'), verb, ...work, ...short, ...(more[verb] ?? []));
      const { required } = JSON.parse(readFileSync(join(own, 'dist/schemas', name), 'utf8')) as {
        required: string[];
      };
      expect(Object.keys(JSON.parse(said) as object), verb).toEqual(
        expect.arrayContaining(required),
      );
    }
    // The server's libraries are there in the project only.
    const notAFolder = join(app, 'package.json');
    const shared = spawnSync('node', [join(root, 'dist/cli.js'), 'share', '--folder', notAFolder]);
    expect(String(shared.stderr)).toContain(notAFolder);
  });

  it('has the JSON schema of each answer, which its own answer is as', () => {
    const { required } = JSON.parse(
      readFileSync(join(own, 'dist/schemas/usable.json'), 'utf8'),
    ) as { required: string[] };
    const answer = JSON.parse(
      node(
        join(own, 'dist/cli.js'),
        'usable',
        '--windows',
        join(own, 'examples/windows.csv'),
        '--json',
      ),
    ) as object;
    expect(required.sort()).toEqual(Object.keys(answer).sort());
    expect(readdirSync(join(own, 'dist/schemas')).length).toBe(11);
  });

  it('passes the compiler with the types of libraries checked too', () => {
    writeFileSync(
      join(app, 'consumer.tsx'),
      `import { createWorkerEngine, type Results } from 'possession-fit';
       import type { FitSelectEvent } from 'possession-fit/fit';
       import 'possession-fit/all';
       import type {} from 'possession-fit/react';
       import type {} from 'possession-fit/vue';
       export const engine = createWorkerEngine();
       export const shown = (found: Results) => (
         <possession-fit
           packages={found.packages}
           onpossession-fit-select={(event) => { const exact: FitSelectEvent = event; void exact.window; }}
         />
       );
       document.querySelector('possession-sheet')!.addEventListener('possession-table-change', (event) => event.label);
       // @ts-expect-error no such property
       export const wrong = <possession-fit pack={1} />;`,
    );
    writeFileSync(
      join(app, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          strict: true,
          skipLibCheck: false,
          noEmit: true,
          target: 'ES2022',
          lib: ['ES2023', 'DOM', 'DOM.Iterable'],
          module: 'NodeNext',
          jsx: 'react-jsx',
          types: [],
        },
        files: ['consumer.tsx'],
      }),
    );
    const compiler = ['node_modules/typescript/bin/tsc', '-p', '.'];
    expect(spawnSync('node', compiler, { cwd: app, encoding: 'utf8' }).stdout).toBe('');
  });

  it('shows a plan by two tags in a plain page, under a strict policy', async () => {
    const { rows, wrong } = await ribbonOf(await serve(twoTags(''), strict));
    expect(rows).toEqual(['N1', 'W1']);
    expect(wrong).toEqual([]);
  });

  it('does so from another server too', async () => {
    const far = await serve('');
    const { rows, wrong } = await ribbonOf(await serve(twoTags(far)));
    expect(rows).toEqual(['N1', 'W1']);
    expect(wrong).toEqual([]);
  });

  it('does so where the page allows no worker', async () => {
    const { rows } = await ribbonOf(
      await serve(twoTags(''), strict.replace("worker-src 'self'", "worker-src 'none'")),
    );
    expect(rows).toEqual(['N1', 'W1']);
  });

  it("feeds from a page's own table and back into it", async () => {
    const example = (name: string): string =>
      readFileSync(join(root, `examples/beside-a-table.${name}`), 'utf8');
    const address = await serve(
      example('html').replaceAll('../dist', '/dist').replaceAll('"beside', '"/examples/beside'),
    );
    await ribbonOf(address);
    const page = (await browser.pages()).at(-1)!;
    await page.setViewport({ width: 1000, height: 800 });
    // The end of the first night, an hour earlier in the page's own table.
    await page.evaluate(() => {
      const cell = document.querySelector('tbody td:nth-child(3)')!;
      cell.textContent = '2027-03-03 04:00';
      cell.dispatchEvent(new InputEvent('input', { bubbles: true }));
    });
    const gross = (): Promise<number> =>
      page.evaluate(
        () => document.querySelector('possession-ribbon')!.ledgers[0]?.grossMinutes ?? 0,
      );
    while ((await gross()) !== 300) await new Promise((done) => setTimeout(done, 50));
    // And a row emptied in the sheet, which the page's table follows.
    await page.evaluate(() =>
      document
        .querySelector('possession-sheet')!
        .shadowRoot!.querySelector<HTMLElement>('[role=grid]')!
        .focus(),
    );
    await page.keyboard.press('Delete');
    const first = (): Promise<string> =>
      page.evaluate(() => document.querySelector('tbody td')!.textContent);
    while ((await first()) !== '') await new Promise((done) => setTimeout(done, 50));
  });

  it('has beside each bundle the licences of what is in it', () => {
    for (const [name, some] of [
      ['possession-ribbon', ['lit-html', 'luxon', 'papaparse']],
      ['possession-core', ['lit-html', 'luxon', 'zod']],
      ['possession-fit', ['chart.js', 'idb', 'yjs']],
    ] as const) {
      const text = readFileSync(join(own, `dist/browser/${name}.licences.md`), 'utf8');
      const parts = text.split(/^## /m);
      for (const library of some) {
        // Some libraries are published without the text of their licence: those are named with its name alone.
        const part = parts.find((one) => one.startsWith(`${library} - `));
        expect(part).toMatch(/copyright/i);
        expect(part).toMatch(/permission|permitted/i);
      }
    }
  });

  it('points at no source map, and at no picture, that it does not have', () => {
    const files = readdirSync(own, { recursive: true, encoding: 'utf8' });
    for (const path of files.filter((file) => /^dist.*\.js$/.test(file)))
      expect(readFileSync(join(own, path), 'utf8'), path).not.toMatch(/^\/\/# sourceMappingURL/m);
    const readme = readFileSync(join(own, 'README.md'), 'utf8');
    for (const [, picture] of readme.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g))
      expect(files).toContain(picture);
  });
});
