// Three people at the built page, each in a browser of their own, and the server as its verb runs it.
import { type Page } from 'puppeteer-core';
import { describe, expect, it } from 'vitest';
import { guardedPage, type Desk } from './guarded-page.js';
import { says, sharingServer } from './sharing-server.js';

const pages = guardedPage();
const server = sharingServer();

const titled = (page: Page, text: string): Promise<unknown> =>
  page.waitForFunction(
    (wanted) =>
      document.querySelector('possession-desk')!.document?.tables.windows.rows[0]?.[1] === wanted,
    {},
    text,
  );

const title = (page: Page, text: string): Promise<void> =>
  page.evaluate((typed) => {
    const steps = [{ cells: [{ row: 0, column: 1, text: typed }] }];
    document
      .querySelector('possession-desk')!
      .change({ table: 'windows', steps }, 'title of a window');
  }, text);

describe('a plan that three people share', () => {
  it('is the same for all, read only where the token says so, over a server that was killed', async () => {
    const tokens = server.tokens();
    const desks: Desk[] = [await pages.open(), await pages.open(), await pages.open()];
    const [one, two, reader] = desks.map(({ page }) => page) as [Page, Page, Page];
    await server.ask(one, 'Mara', tokens.write, 'share');
    await says(one, 'Shared');
    await server.openFromThere(two, 'Jon', tokens.write);
    await says(one, 'Shared: 1 other here');
    await server.openFromThere(reader, 'Ida', tokens.read);
    await says(reader, 'Shared, read only: 2 others here');
    const panel = await reader.evaluate(async () => {
      const desk = document.querySelector('possession-desk')!;
      desk.menu = 'plan';
      await desk.updateComplete;
      const text = desk.shadowRoot!.querySelector('#menu')!.textContent.replaceAll(/\s+/g, ' ');
      desk.menu = '';
      return text;
    });
    expect(panel).toContain('What the others change comes here');
    expect(panel).not.toContain('What is changed here goes to the others');
    await title(two, 'typed by Jon');
    await Promise.all([titled(one, 'typed by Jon'), titled(reader, 'typed by Jon')]);
    await title(reader, 'typed by Ida');
    const told = await reader.evaluate(
      () =>
        document.querySelector('possession-desk')!.shadowRoot!.querySelector('.trouble')!
          .textContent,
    );
    expect(told).toContain('shared with you to read');
    server.kill();
    await Promise.all([says(one, 'Away'), says(two, 'Away')]);
    await title(one, 'while it was away');
    await server.again();
    await Promise.all([one, two, reader].map((page) => titled(page, 'while it was away')));
    await one.evaluate(() => document.querySelector('possession-desk')!.undo());
    await titled(two, 'typed by Jon');
    for (const page of [one, two, reader]) {
      const where = await page.evaluate(() => location.href);
      for (const token of Object.values(tokens)) expect(where).not.toContain(token);
    }
    await two.reload();
    // The others are heard of one after the other.
    await says(two, 'Shared: 2 others here');
  });
});
