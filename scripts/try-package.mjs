// npm run try-package: packs, installs from the registry into fresh projects, and uses it there: in Node, in a plain page,
// with Vite and TypeScript, React and Vue, each looked at in Chromium. It needs a network and some minutes.
import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';
import { launch } from 'puppeteer-core';
import { findBrowser } from './find-browser.mjs';
import { install, root } from './install.mjs';
import { nodeProgram, projects } from './try-package/projects.mjs';

install();
const folder = mkdtempSync(join(tmpdir(), 'possession-fit-try-'));
const quietly = (command, args, cwd) =>
  execFileSync(command, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });

const packed = () => {
  quietly('node', ['scripts/build-package.mjs'], root);
  const told = quietly(
    'npm',
    ['pack', '--ignore-scripts', '--json', '--pack-destination', folder],
    root,
  );
  return join(folder, JSON.parse(told)[0].filename);
};

/** A project of its own with the package installed, and the example beside its page. */
function projectOf({ name, installs, files }, archive) {
  const own = join(folder, name.replaceAll(' ', '-'));
  mkdirSync(join(own, 'public'), { recursive: true });
  writeFileSync(join(own, 'package.json'), '{ "type": "module", "private": true }');
  for (const [path, text] of Object.entries(files)) writeFileSync(join(own, path), text);
  quietly(
    'npm',
    [
      'install',
      '--ignore-scripts',
      '--no-audit',
      '--no-fund',
      '--loglevel=error',
      archive,
      ...installs,
    ],
    own,
  );
  for (const path of ['windows.csv', 'work.csv'])
    for (const place of ['', 'public'])
      copyFileSync(join(own, 'node_modules/possession-fit/examples', path), join(own, place, path));
  return own;
}

const types = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.csv': 'text/csv',
};

function served(site, policy) {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://x');
    const path = join(site, normalize(pathname === '/' ? '/index.html' : pathname));
    if (!existsSync(path) || !statSync(path).isFile()) return response.writeHead(404).end();
    response.setHeader('content-type', types[extname(path)] ?? 'text/plain');
    if (policy) response.setHeader('content-security-policy', policy);
    return response.end(readFileSync(path));
  });
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(server)));
}

/** The windows that the ribbon of a page shows, and what went wrong on it. */
async function shownOn(browser, site, policy) {
  const server = await served(site, policy);
  const page = await browser.newPage();
  const wrong = [];
  page.on('pageerror', (error) => wrong.push(String(error)));
  page.on('console', (told) => {
    if (told.type() === 'error' && !told.text().includes('404')) wrong.push(told.text());
  });
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  const rows = await page
    .waitForFunction(
      () => {
        const shown = document.querySelector('possession-ribbon')?.shadowRoot;
        const all = [...(shown?.querySelectorAll('[role=option]') ?? [])];
        return all.length > 0 && all.map((one) => one.dataset.id);
      },
      { polling: 100, timeout: 120_000 },
    )
    .then((found) => found.jsonValue())
    .catch((error) => [...wrong, String(error)]);
  await page.close();
  server.close();
  return { rows, wrong };
}

/** Kilobytes gzipped of a bundled page: its own scripts, and the engine that its worker runs. */
function sizeOf(site) {
  const assets = readdirSync(join(site, 'assets')).filter((name) => name.endsWith('.js'));
  const sum = (some) =>
    some.reduce((all, name) => all + gzipSync(readFileSync(join(site, 'assets', name))).length, 0);
  const engine = assets.filter((name) => name.startsWith('worker'));
  const kilo = (bytes) => `${Math.round(bytes / 1000)} kB`;
  return `page ${kilo(sum(assets.filter((name) => !engine.includes(name))))}, engine ${kilo(sum(engine))} gzipped, all parts`;
}

const expected = JSON.stringify(['N1', 'W1']);
let failed = false;
const tell = (name, isGood, more) => {
  failed ||= !isGood;
  console.log(`${isGood ? 'ok ' : 'NO '} ${name}: ${more}`);
};

const browser = await launch({
  executablePath: await findBrowser(),
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
});
try {
  const archive = packed();
  const inNode = projectOf(
    { name: 'Node', installs: [], files: { 'try.mjs': nodeProgram } },
    archive,
  );
  const said = quietly('node', ['try.mjs'], inNode).trim();
  const { windows, verified } = JSON.parse(said);
  tell('Node', JSON.stringify(windows) === expected && verified, said);
  const bin = quietly(
    'npx',
    ['possession-fit', 'usable', '--windows', 'windows.csv', '--json'],
    inNode,
  );
  tell('the command', JSON.parse(bin).windows.length === 2, 'usable of two windows');
  for (const project of projects) {
    const own = projectOf(project, archive);
    if (project.builds) {
      quietly('npx', ['tsc', '-p', '.'], own);
      quietly('npx', ['vite', 'build', '--base', './', '--logLevel', 'error'], own);
    }
    const site = project.builds ? join(own, 'dist') : own;
    const { rows, wrong } = await shownOn(browser, site, project.policy);
    const isGood = JSON.stringify(rows) === expected && wrong.length === 0;
    const size = project.builds ? `; ${sizeOf(site)}` : '';
    tell(
      project.name,
      isGood,
      `${rows.join(' ')}${wrong.length > 0 ? `; ${wrong.join(' ')}` : ''}${size}`,
    );
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = failed ? 1 : 0;
