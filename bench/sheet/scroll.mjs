// `CHROME_PATH=$(which chromium) node bench/sheet/scroll.mjs`: frames of 50,000 rows x 20 columns beside an empty scroller.
// Then the time from keeping a typed cell to the frame that shows it. Seen on 2 busy cores: scroll p95 16.8 ms (empty
// scroller 16.7), edit median 24 ms, p95 63 ms; a frame is 16.7 ms of either.
import { fileURLToPath } from 'node:url';
import puppeteer from 'puppeteer-core';
import { createServer } from 'vite';

const server = await createServer({
  configFile: false,
  root: fileURLToPath(new URL('../..', import.meta.url)),
  server: { host: '127.0.0.1', port: 0 },
  logLevel: 'error',
});
await server.listen();
const browser = await puppeteer.launch({
  executablePath: process.env.CHROME_PATH,
  args: ['--no-sandbox', '--disable-gpu'],
});
const page = await browser.newPage();
await page.setViewport({ width: 1920, height: 700 });
const { port } = server.httpServer.address();
await page.goto(`http://127.0.0.1:${port}/bench/sheet/index.html`);
await page.waitForFunction(() => typeof globalThis.measure === 'function');
console.log(await page.evaluate(() => globalThis.measure()));
console.log('edit', await page.evaluate(() => globalThis.measureEdits()));
await browser.close();
await server.close();
