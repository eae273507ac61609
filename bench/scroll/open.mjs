import { fileURLToPath } from 'node:url';
import puppeteer from 'puppeteer-core';
import { createServer } from 'vite';

/** Opens a page of the repository in a browser, from source. `use` is given the page; all is closed after it. */
export async function withPage(path, use) {
  const server = await createServer({
    configFile: false,
    root: fileURLToPath(new URL('../..', import.meta.url)),
    // A page that is loaded again in the middle would lose what it has measured.
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
    optimizeDeps: { entries: [path, 'src/engine/answers.ts'] },
    logLevel: 'error',
  });
  await server.listen();
  const browser = await puppeteer.launch({
    executablePath: process.env.CHROME_PATH,
    args: ['--no-sandbox', '--disable-gpu'],
  });
  const page = await browser.newPage();
  page.on('pageerror', (error) => console.error(error));
  // A busy machine takes long to serve so many modules.
  page.setDefaultTimeout(300_000);
  await page.setViewport({ width: 1920, height: 700 });
  const { port } = server.httpServer.address();
  await page.goto(`http://127.0.0.1:${port}/${path}`);
  await page.waitForFunction(() => typeof globalThis.measure === 'function');
  await use(page);
  await browser.close();
  await server.close();
}
