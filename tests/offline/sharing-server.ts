// The server of sharing as its verb runs it, and what a person does at the built page to share a plan on it.
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll } from 'vitest';
import { root } from '../helpers/cli.js';

interface Tokens {
  readonly read: string;
  readonly write: string;
}

/** A server for the tests of a file. */
export function sharingServer() {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-shared-'));
  let server: ChildProcess;
  let address = '';
  let tokens: Tokens;

  async function start(port: string): Promise<void> {
    server = spawn('node', ['scripts/cli.mjs', 'share', '--folder', folder, '--port', port], {
      cwd: root,
    });
    let out = '';
    for (const stream of [server.stdout!, server.stderr!])
      stream.on('data', (data) => (out += String(data)));
    while (!out.includes('Ctrl+C')) await new Promise((done) => setTimeout(done, 50));
    address = /ws:\/\/127\.0\.0\.1:\d+/.exec(out)![0];
    tokens = JSON.parse(readFileSync(join(folder, 'tokens.json'), 'utf8')) as Tokens;
  }

  beforeAll(() => start('0'));
  afterAll(() => {
    server?.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });

  /** Fills the form under the name of the plan in and presses one of its buttons. */
  async function ask(
    page: Page,
    name: string,
    token: string,
    act: string,
    through = address,
  ): Promise<void> {
    await page.evaluate(
      async (who, where, word, value) => {
        const desk = document.querySelector('possession-desk')!;
        const inside = desk.shadowRoot!;
        inside.querySelector<HTMLElement>('.plan-name')!.click();
        await desk.updateComplete;
        // What shows the sharing is loaded when the menu is opened.
        while (!inside.querySelector('form.share'))
          await new Promise((done) => setTimeout(done, 20));
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
      through,
      token,
      act,
    );
  }

  /** Opens the one plan that the server has. */
  async function openFromThere(
    page: Page,
    name: string,
    token: string,
    through = address,
  ): Promise<void> {
    await ask(page, name, token, 'look', through);
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

  return {
    ask,
    openFromThere,
    tokens: () => tokens,
    port: () => Number(new URL(address).port),
    kill: () => server.kill('SIGKILL'),
    again: () => start(new URL(address).port),
  };
}

/** Waits until the head of the desk says so. */
export const says = (page: Page, text: string): Promise<unknown> =>
  page.waitForFunction(
    (wanted) =>
      document
        .querySelector('possession-desk')!
        .shadowRoot!.querySelector('.tools')
        ?.textContent?.includes(wanted),
    {},
    text,
  );
