// A host that serves the page in another language than the file has: the language holds on later visits too, which the
// service worker answers, and without a network.
import type { Browser } from 'puppeteer-core';
import { afterAll, beforeAll, inject, it } from 'vitest';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import { serveFolder } from './served-folder.js';

let browser: Browser;

beforeAll(async () => {
  browser = await launchedBrowser();
});
afterAll(() => browser?.close());

it('the page takes the language that its host serves, on every visit and without a network', async () => {
  let served = 'de';
  const host = await serveFolder(inject('builtPage'), (page) =>
    page.replace('<html lang="en">', `<html lang="${served}">`),
  );
  const page = await newPage(browser);
  const speaks = (language: string, words: string): Promise<unknown> =>
    page.waitForFunction(
      (lang, text) =>
        document.documentElement.lang === lang &&
        document.querySelector('possession-desk')?.shadowRoot?.textContent?.includes(text),
      { polling: 100 },
      language,
      words,
    );
  await page.goto(host.address);
  await speaks('de', 'Programm');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  const controlled = (): Promise<unknown> =>
    page.waitForFunction(() => navigator.serviceWorker.controller !== null, { polling: 100 });
  await controlled();
  // The file that is kept may be another's: one in English is put in its place, as an earlier install would have left it.
  await page.evaluate(async () => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        if (!request.url.endsWith('index.html')) continue;
        const { headers } = (await cache.match(request))!;
        const text = await (await cache.match(request))!.text();
        await cache.put(request, new Response(text.replace('lang="de"', 'lang="en"'), { headers }));
      }
    }
  });
  await page.reload();
  await speaks('de', 'Programm');

  // The host changes its mind: the page hears of it.
  served = 'en';
  await page.reload();
  await speaks('en', 'Programme');
  served = 'de';
  await page.reload();
  await speaks('de', 'Programm');

  await host.close();
  await page.reload();
  await speaks('de', 'Programm');
  await page.close();
});
