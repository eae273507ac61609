// The simulation in a worker of Chromium, by the clock. Run by hand: node bench/risk/in-browser.mjs
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import puppeteer from 'puppeteer-core';
import { findBrowser } from '../../scripts/find-browser.mjs';

const { outputFiles } = await build({
  entryPoints: [fileURLToPath(new URL('worker.ts', import.meta.url))],
  bundle: true,
  write: false,
  format: 'esm',
});
const server = createServer((request, response) => {
  const script = request.url === '/worker.js';
  response.setHeader('content-type', script ? 'text/javascript' : 'text/html');
  response.end(script ? outputFiles[0].contents : '<!doctype html><title>bench</title>');
});
await new Promise((ready) => server.listen(0, '127.0.0.1', ready));

const browser = await puppeteer.launch({
  executablePath: await findBrowser(),
  args: ['--no-sandbox'],
});
try {
  const page = await browser.newPage();
  page.on('console', (message) => console.log(message.text()));
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  console.log(await browser.version());
  await page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const worker = new Worker('/worker.js', { type: 'module' });
        worker.onerror = (event) => reject(new Error(event.message));
        worker.onmessage = ({ data }) => (data === 'done' ? resolve() : console.log(data));
      }),
  );
} finally {
  await browser.close();
  server.close();
}
