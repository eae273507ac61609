// A page left in the moment of an edit: nothing typed is lost, and it can be undone.
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import { serveFolder } from './served-folder.js';

const rounds = Number(process.env['LEFT_AT_ONCE'] ?? 12);
let browser: Browser;

beforeAll(async () => {
  browser = await launchedBrowser();
});

afterAll(() => browser?.close());

const ready = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () =>
      (document.querySelector('possession-desk')?.document?.tables.windows.rows.length ?? 0) > 0,
  );

/** Renames the first window, as the desk does for whatever is typed, and leaves within the milliseconds given. */
const editAndLeave = (page: Page, title: string, ms: number): Promise<void> =>
  page.evaluate(
    (text, wait) => {
      const desk = document.querySelector('possession-desk')!;
      const steps = [{ cells: [{ row: 0, column: 1, text }] }];
      desk.change({ table: 'windows', steps }, 'Rename a window');
      return new Promise<void>((resolve) => setTimeout(resolve, wait));
    },
    title,
    ms,
  );

const titleOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(
    () => document.querySelector('possession-desk')!.document!.tables.windows.rows[0]![1],
  );

describe('a page left in the moment of an edit', () => {
  it(`loses none of ${rounds} edits, by reload or by closing`, async () => {
    const server = await serveFolder(inject('builtPage'));
    let page = await newPage(browser);
    await page.goto(server.address);
    await ready(page);
    for (let round = 0; round < rounds; round += 1) {
      const title = `Night ${round}`;
      await editAndLeave(page, title, (round * 41) % 250);
      if (round % 2 === 0) await page.reload();
      else {
        await page.close();
        page = await newPage(browser);
        await page.goto(server.address);
      }
      await ready(page);
      expect(await titleOf(page)).toBe(title);
    }
    await page.close();
    await server.close();
  });
});
