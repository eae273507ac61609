// Three people at the built page, each in a browser of their own, and the server as its verb runs it.
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../helpers/cli.js';
import { guardedPage, type Desk } from './guarded-page.js';

const pages = guardedPage();
const folder = mkdtempSync(join(tmpdir(), 'possession-fit-shared-'));
let server: ChildProcess;
let address = '';
let tokens: { readonly read: string; readonly write: string };

async function start(port: string): Promise<void> {
  server = spawn('node', ['scripts/cli.mjs', 'share', '--folder', folder, '--port', port], {
    cwd: root,
  });
  let out = '';
  for (const stream of [server.stdout!, server.stderr!])
    stream.on('data', (data) => (out += String(data)));
  while (!out.includes('Ctrl+C')) await new Promise((done) => setTimeout(done, 50));
  address = /ws:\/\/127\.0\.0\.1:\d+/.exec(out)![0];
  tokens = JSON.parse(readFileSync(join(folder, 'tokens.json'), 'utf8')) as typeof tokens;
}

beforeAll(() => start('0'));
afterAll(() => {
  server?.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

/** Fills the form under the name of the plan in and presses one of its buttons. */
async function ask(page: Page, name: string, token: string, act: string): Promise<void> {
  await page.evaluate(
    async (who, where, word, value) => {
      const desk = document.querySelector('possession-desk')!;
      const inside = desk.shadowRoot!;
      inside.querySelector<HTMLElement>('.plan-name')!.click();
      await desk.updateComplete;
      // What shows the sharing is loaded when the menu is opened.
      while (!inside.querySelector('form.share')) await new Promise((done) => setTimeout(done, 20));
      const form = inside.querySelector<HTMLFormElement>('form.share')!;
      const fill = (field: string, text: string): void => {
        form.querySelector<HTMLInputElement>(`[name=${field}]`)!.value = text;
      };
      fill('who', who);
      fill('address', where);
      fill('token', word);
      form.requestSubmit(form.querySelector<HTMLButtonElement>(`[value=${value}]`));
    },
    name,
    address,
    token,
    act,
  );
}

const chip = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      document
        .querySelector('possession-desk')!
        .shadowRoot!.querySelector('button.kept')
        ?.textContent?.trim() ?? '',
  );

/** Waits until the head of the desk says so. */
const says = (page: Page, text: string): Promise<unknown> =>
  page.waitForFunction(
    (wanted) =>
      document
        .querySelector('possession-desk')!
        .shadowRoot!.querySelector('.tools')
        ?.textContent?.includes(wanted),
    {},
    text,
  );

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

async function openFromThere(page: Page, name: string, token: string): Promise<void> {
  await ask(page, name, token, 'look');
  const open = await page.waitForFunction(() =>
    [
      ...document
        .querySelector('possession-desk')!
        .shadowRoot!.querySelectorAll<HTMLButtonElement>('form.share + div li button'),
    ].find((element) => element.textContent.trim() === 'Open'),
  );
  await (open.asElement() as unknown as { click(): Promise<void> }).click();
  await says(page, 'Shared');
}

describe('a plan that three people share', () => {
  it('is the same for all, read only where the token says so, over a server that was killed', async () => {
    const desks: Desk[] = [await pages.open(), await pages.open(), await pages.open()];
    const [one, two, reader] = desks.map(({ page }) => page) as [Page, Page, Page];
    await ask(one, 'Mara', tokens.write, 'share');
    await says(one, 'Shared');
    await openFromThere(two, 'Jon', tokens.write);
    await says(one, 'Shared: 1 other here');
    await openFromThere(reader, 'Ida', tokens.read);
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
    server.kill('SIGKILL');
    await Promise.all([says(one, 'Away'), says(two, 'Away')]);
    await title(one, 'while it was away');
    await start(new URL(address).port);
    await Promise.all([one, two, reader].map((page) => titled(page, 'while it was away')));
    await one.evaluate(() => document.querySelector('possession-desk')!.undo());
    await titled(two, 'typed by Jon');
    for (const page of [one, two, reader]) {
      const where = await page.evaluate(() => location.href);
      for (const token of Object.values(tokens)) expect(where).not.toContain(token);
    }
    await two.reload();
    await says(two, 'Shared');
    expect(await chip(two)).toBe('Shared: 2 others here');
  });
});
