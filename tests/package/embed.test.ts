import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import { angularBundled } from './angular-bundle.js';
import { bundled } from './example-bundle.js';

const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; require-trusted-types-for 'script'";
const plainPage = readFileSync(new URL('../../examples/plain.html', import.meta.url), 'utf8');
const framePage =
  '<!doctype html><html lang="en"><title>Test</title><div id="app"></div><app-root></app-root><script type="module" src="./plain.js"></script></html>';

let browser: Browser;
beforeAll(async () => {
  browser = await launchedBrowser();
});
afterAll(() => browser?.close());

/** Waits until something holds in the page; not `waitForFunction`, which the policy forbids to make its code. */
async function until(page: Page, holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await page.evaluate(holds)) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`it never came that ${holds.toString()}`);
}

/** A page with an example in it, under a policy that forbids inline code and strings as code. */
async function opened(html: string, script: string): Promise<{ page: Page; wrong: string[] }> {
  const page = await newPage(browser);
  const wrong: string[] = [];
  page.on('pageerror', (error) => wrong.push(String(error)));
  page.on('console', (told) => {
    if (told.type() === 'error') wrong.push(told.text());
  });
  await page.setRequestInterception(true);
  page.on('request', (request) => {
    const { pathname } = new URL(request.url());
    if (pathname === '/')
      void request.respond({
        contentType: 'text/html',
        headers: { 'content-security-policy': policy },
        body: html,
      });
    else if (pathname === '/plain.js')
      void request.respond({ contentType: 'text/javascript', body: script });
    else void request.respond({ status: 204 });
  });
  await page.goto('https://example.test/');
  await until(
    page,
    () => !!document.querySelector('possession-fit')?.shadowRoot?.querySelector('tbody td'),
  ).catch((error: unknown) => {
    throw new Error(`${String(error)} ${wrong.join(' ')}`);
  });
  return { page, wrong };
}

/** Clicks something inside an element and gives what the page then says. */
function toldAfter(page: Page, tag: string, inside: string): Promise<string> {
  return page.evaluate(
    async (name, selector) => {
      document.querySelector(name)!.shadowRoot!.querySelector<HTMLElement>(selector)!.click();
      await new Promise((done) => setTimeout(done, 100));
      return document.querySelector('#told')!.textContent.trim();
    },
    tag,
    inside,
  );
}

describe.each([
  ['plain', 'examples/plain.js', plainPage, bundled],
  ['React', 'examples/react.tsx', framePage, bundled],
  ['Vue', 'examples/vue.ts', framePage, bundled],
  ['Angular', 'examples/angular.ts', framePage, angularBundled],
])('the %s example', (_, entry, html, bundle) => {
  it('gives the elements their data and hears what a person does', async () => {
    const { page, wrong } = await opened(html, await bundle(entry));
    const given = await page.evaluate(() => ({
      rows: document.querySelector('possession-sheet')!.table.rows.length,
      packages: document.querySelector('possession-fit')!.packages.map((summary) => summary.id),
      ledger: document.querySelector('possession-ledger')!.ledger?.window,
    }));
    expect(given).toEqual({ rows: 2, packages: ['Deck', 'Drains'], ledger: 'N1' });

    const cell = 'td[data-row="0"][data-column="1"]';
    expect(await toldAfter(page, 'possession-fit', cell)).toBe('Deck in W1');
    const shown = await page.evaluate(
      () => document.querySelector('possession-ledger')!.ledger?.window,
    );
    expect(shown).toBe('W1');
    expect(await toldAfter(page, 'possession-ledger', '.step')).toBe('row gross of W1');

    // A typed cell: the table goes out with the event and comes back in with what follows from it.
    await page.evaluate(() =>
      document
        .querySelector('possession-sheet')!
        .shadowRoot!.querySelector<HTMLElement>('[role=grid]')!
        .focus(),
    );
    await page.keyboard.press('Delete');
    await until(
      page,
      () =>
        document.querySelector('possession-sheet')!.table.rows[0]![0] === '' &&
        document.querySelector('possession-fit')!.windows.length === 1,
    );
    expect(wrong).toEqual([]);
    await page.close();
  });
});
