// Finds a Chromium to test with, or brings one: CHROME_PATH, an installed one, Debian's package, an npm build.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from './install.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

function installed() {
  if (process.env.CHROME_PATH && existsSync(process.env.CHROME_PATH))
    return process.env.CHROME_PATH;
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)));
  return [...onPath, ...places].find((path) => existsSync(path));
}

function quietly(command, args, options = {}) {
  return (
    spawnSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'], ...options }).status === 0
  );
}

function fromDebian() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get'))
    return undefined;
  console.log("No browser found: installing Debian's chromium …");
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  quietly('apt-get', ['update', '-qq'], { env });
  quietly(
    'apt-get',
    ['install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'],
    { env },
  );
  return installed();
}

async function fromNpm() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  console.log('No browser found: fetching a Chromium build from the npm registry …');
  const folder = join(root, 'node_modules/.cache/possession-fit/browser');
  mkdirSync(folder, { recursive: true });
  const args = [
    'install',
    '--no-save',
    '--no-audit',
    '--no-fund',
    '--prefix',
    folder,
    '@sparticuz/chromium@143.0.4',
  ];
  if (!quietly('npm', args)) return undefined;
  // It unpacks the shared libraries it needs only where it believes it runs as a cloud function.
  process.env.AWS_EXECUTION_ENV ??= 'AWS_Lambda_nodejs20.x';
  const entry = join(folder, 'node_modules/@sparticuz/chromium/build/esm/index.js');
  if (!existsSync(entry)) return undefined;
  const { default: chromium } = await import(pathToFileURL(entry).href);
  return chromium.executablePath();
}

/** @returns {Promise<string>} The path of a browser that exists. Ends the process, saying what to do, where there is none. */
export async function findBrowser() {
  const found = installed() ?? fromDebian() ?? (await fromNpm());
  if (found) return found;
  console.error(
    'No Chromium or Chrome was found, and none could be installed here.\n' +
      'Install one (Debian and Ubuntu: "apt-get install chromium" as root; macOS and Windows: Google Chrome)\n' +
      'or set CHROME_PATH to the program, then run "npm test" again.',
  );
  process.exit(1);
}
