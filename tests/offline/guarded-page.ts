// The built page in a browser under its strict policy, with everything noted that goes wrong in it.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type Page } from 'puppeteer-core';
import { afterAll, beforeAll, expect, inject } from 'vitest';
import type { PlanDocument, TableText } from '../../src/model/index.js';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import type { DeskView } from '../../components/desk/views.js';
import { openView } from './open-view.js';
import { serveFolder } from './served-folder.js';

export interface SavedFile {
  readonly type: string;
  readonly bytes: Uint8Array;
}

interface Watched {
  hacked?: unknown;
  violations: string[];
  saved: Blob[];
}

/** One browser for the tests of a file, with the built page served to it. */
export function guardedPage(): { open: () => Promise<Desk> } {
  let browser: Browser;
  let folder: string;
  let served: Awaited<ReturnType<typeof serveFolder>>;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'possession-fit-guarded-'));
    served = await serveFolder(inject('builtPage'));
    browser = await launchedBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
    await rm(folder, { recursive: true, force: true });
  });
  return {
    open: async () => {
      const context = await browser.createBrowserContext();
      const page = await newPage(context);
      const desk = new Desk(page, served.address, folder);
      await desk.begin();
      return desk;
    },
  };
}

/** A page with the desk in it, driven as a person does. */
export class Desk {
  readonly trouble: string[] = [];
  /** Addresses that the page asked for. */
  readonly asked: string[] = [];
  readonly page: Page;
  readonly address: string;
  readonly folder: string;

  constructor(page: Page, address: string, folder: string) {
    this.page = page;
    this.address = address;
    this.folder = folder;
  }

  async begin(): Promise<void> {
    const { page, trouble } = this;
    page.on('dialog', (dialog) => {
      trouble.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('pageerror', (error) => trouble.push(String(error)));
    page.on('error', (error) => trouble.push(`crashed: ${error.message}`));
    page.on('console', (message) => {
      if (message.type() === 'error') trouble.push(message.text());
    });
    page.on('request', (request) => this.asked.push(request.url()));
    await page.evaluateOnNewDocument(() => {
      const watch = window as unknown as Watched;
      watch.violations = [];
      watch.saved = [];
      addEventListener('securitypolicyviolation', (event: SecurityPolicyViolationEvent) =>
        watch.violations.push(`${event.violatedDirective} ${event.sample}`),
      );
      const create = URL.createObjectURL.bind(URL);
      URL.createObjectURL = (blob) => {
        if (blob instanceof Blob) watch.saved.push(blob);
        return create(blob);
      };
    });
    await page.goto(this.address);
    await this.figures();
  }

  /** Waits until the figures of the plan shown are worked out. */
  async figures(): Promise<void> {
    await this.page.waitForFunction(
      () => !!document.querySelector('possession-desk')?.figures?.results,
    );
  }

  async go(view: DeskView): Promise<void> {
    await openView(this.page, view);
  }

  /** Gives the page a file and waits until it says what it made of it. */
  async give(name: string, content: string | Uint8Array): Promise<void> {
    const path = join(this.folder, name);
    await writeFile(path, content);
    await this.go('files');
    await this.intoThisPlan();
    const input = (await this.page.waitForSelector('>>> possession-import >>> input[type=file]'))!;
    await input.uploadFile(path);
    await this.page.waitForFunction(
      (shown) => {
        const desk = document.querySelector('possession-desk')!.shadowRoot!;
        const inside = desk.querySelector('possession-import')!.shadowRoot!;
        const busy = inside.querySelector('progress, [aria-busy=true]');
        return (
          !busy &&
          [...inside.querySelectorAll('h3')].some((element) =>
            element.textContent?.startsWith(shown),
          )
        );
      },
      {},
      name,
    );
  }

  /** The plan shown takes the files, the sample too, where the page would put them into a new one. */
  private async intoThisPlan(): Promise<void> {
    await this.page.waitForSelector('>>> .where-to button');
    await this.page.evaluate(() => {
      const desk = document.querySelector('possession-desk')!.shadowRoot!;
      desk.querySelector<HTMLButtonElement>('.where-to button')!.click();
    });
  }

  /** Everything that the import says now. */
  said(): Promise<string> {
    return this.page.evaluate(() => {
      const desk = document.querySelector('possession-desk')!.shadowRoot!;
      return desk.querySelector('possession-import')!.shadowRoot!.textContent ?? '';
    });
  }

  /** Says how the file is read: the kind of table it is, or which sheet of a workbook holds it. */
  async choose(what: 'kind' | 'sheet', value: string): Promise<void> {
    await this.page.evaluate(
      (at, wanted) => {
        const desk = document.querySelector('possession-desk')!.shadowRoot!;
        const inside = desk.querySelector('possession-import')!.shadowRoot!;
        const select = inside.querySelectorAll<HTMLSelectElement>('.choices select')[at]!;
        select.value = wanted;
        select.dispatchEvent(new Event('change', { bubbles: true }));
      },
      what === 'kind' ? 0 : 1,
      value,
    );
    await this.page.waitForFunction(() => {
      const desk = document.querySelector('possession-desk')!.shadowRoot!;
      const { busy } = desk.querySelector('possession-import') as unknown as { busy: boolean };
      return !busy;
    });
  }

  /** Takes what was read into the plan, in place of the table of its kind. */
  async take(replace = true): Promise<void> {
    await this.page.waitForFunction(
      (whole) => {
        const desk = document.querySelector('possession-desk')!.shadowRoot!;
        const inside = desk.querySelector('possession-import')!.shadowRoot!;
        const choice = inside.querySelector<HTMLInputElement>('input[type=radio][value=replace]');
        if (whole && choice && !choice.checked) {
          choice.click();
          return false;
        }
        const button = inside.querySelector<HTMLButtonElement>('button.strong');
        if (!button || button.disabled) return false;
        button.click();
        return true;
      },
      {},
      replace,
    );
    await this.figures();
  }

  document(): Promise<PlanDocument> {
    return this.page.evaluate(
      () =>
        JSON.parse(JSON.stringify(document.querySelector('possession-desk')!.document)) as never,
    );
  }

  async table(kind: string): Promise<TableText> {
    const { tables } = await this.document();
    return (tables as unknown as Record<string, TableText>)[kind]!;
  }

  /** Waits until every change is in the browser's store. */
  async saved(): Promise<void> {
    await this.page.waitForFunction(
      () => document.querySelector('possession-desk')!.keeping.state?.kind === 'saved',
    );
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.figures();
  }

  /** Types into a cell of the sheet in sight. */
  async type(row: number, column: string, text: string): Promise<void> {
    await this.page.evaluate(
      async (at, name) => {
        const desk = document.querySelector('possession-desk')!.shadowRoot!;
        const sheet = desk.querySelector('possession-sheet')!;
        await sheet.updateComplete;
        sheet.goTo(at, name);
        sheet.shadowRoot!.querySelector<HTMLElement>('[role=grid]')!.focus();
      },
      row,
      column,
    );
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
  }

  /** Presses a button of the files view and gives what the page hands over to be saved. */
  async saves(label: string, count: number): Promise<SavedFile[]> {
    await this.page.evaluate(async (words) => {
      (window as unknown as Watched).saved = [];
      const element = document.querySelector('possession-desk')!;
      // Saving stands in the menu of the plan.
      element.menu = 'plan';
      await element.updateComplete;
      const desk = element.shadowRoot!;
      const all = [...desk.querySelectorAll<HTMLButtonElement>('button')];
      all.find((item) => item.textContent?.trim() === words)!.click();
      element.menu = '';
      await element.updateComplete;
    }, label);
    await this.page.waitForFunction(
      (wanted) => (window as unknown as Watched).saved.length >= wanted,
      {},
      count,
    );
    const files = await this.page.evaluate(async () =>
      Promise.all(
        (window as unknown as Watched).saved.map(async (blob) => {
          const reader = new FileReader();
          reader.readAsDataURL(blob);
          await new Promise((resolve) => (reader.onload = resolve));
          return { type: blob.type, url: reader.result as string };
        }),
      ),
    );
    return files.map(({ type, url }) => ({
      type,
      bytes: Uint8Array.from(Buffer.from(url.slice(url.indexOf(',') + 1), 'base64')),
    }));
  }

  /** Goes through every tab; the page answers throughout, nothing was lost, no script ran and no policy was broken. */
  async expectAlive(views: readonly DeskView[]): Promise<void> {
    for (const view of views) {
      await this.go(view);
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    const { hacked, violations, polluted } = await this.page.evaluate(() => {
      const watch = window as unknown as Watched;
      const plain = {} as Record<string, unknown>;
      return {
        hacked: watch.hacked,
        violations: watch.violations,
        polluted: plain['polluted'],
      };
    });
    expect({ hacked, violations, polluted, trouble: this.trouble }).toEqual({
      hacked: undefined,
      violations: [],
      polluted: undefined,
      trouble: [],
    });
    const outside = this.asked.filter(
      (url) => !/^(blob:|data:)/.test(url) && !url.startsWith(this.address),
    );
    expect(outside).toEqual([]);
  }

  async close(): Promise<void> {
    await this.page.browserContext().close();
  }
}
