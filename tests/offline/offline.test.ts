import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import { serveFolder } from './served-folder.js';

let browser: Browser;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'possession-fit-offline-'));
  await cp(inject('builtPage'), folder, { recursive: true });
  browser = await launchedBrowser();
});

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Words on the screen, those inside elements too. */
const words = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const read = (node: Node): string => {
      if (node instanceof HTMLStyleElement || node instanceof HTMLScriptElement) return '';
      if (node instanceof Text) return node.data;
      const inner = node instanceof Element && node.shadowRoot ? read(node.shadowRoot) : '';
      return inner + [...node.childNodes].map(read).join(' ');
    };
    return read(document.body);
  });

/** Waits until the page shows the sample plan with its windows worked out. */
async function workedOut(page: Page): Promise<string> {
  for (;;) {
    const text = await words(page);
    if (text.includes('Marl Vale') && /usable/i.test(text)) return text;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

const kept = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });

/** A tab in the background draws no frames: it is looked at by a timer. */
const beats = { polling: 100 };

/** Waits until the page shows a forecast of a shift. */
const inShift = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => {
    const desk = document.querySelector('possession-desk');
    const shown = desk?.shadowRoot?.querySelector('possession-handback')?.shadowRoot;
    return desk?.shift.live && shown?.querySelector('.advice .say') ? true : false;
  }, beats);

/** Presses the first button of the shift that begins with these words. */
const press = (page: Page, words: string): Promise<unknown> =>
  page.waitForFunction(
    (begins) => {
      const desk = document.querySelector('possession-desk')!.shadowRoot!;
      const shown = desk.querySelector('possession-handback')!.shadowRoot!;
      const all = [...shown.querySelectorAll<HTMLButtonElement>('[part=record]')];
      const found = all.find(
        (element) => !element.disabled && element.textContent?.trim().startsWith(begins),
      );
      found?.click();
      return found !== undefined;
    },
    beats,
    words,
  );

describe('the built page', () => {
  // The outside check is the browser's own reading of the manifest and of the pictures.
  it('can be installed: the browser finds no fault in its manifest, and its icons are what they say', async () => {
    const server = await serveFolder(folder);
    const page = await newPage(browser);
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (/Content Security Policy|Manifest/i.test(message.text())) complaints.push(message.text());
    });
    await page.goto(server.address);
    const session = await page.createCDPSession();
    const found = (await session.send('Page.getAppManifest')) as {
      url: string;
      errors: unknown[];
      data: string;
    };
    expect(found.errors).toEqual([]);
    expect(found.url).toBe(`${server.address}app.webmanifest`);
    const { installabilityErrors } = (await session.send('Page.getInstallabilityErrors')) as {
      installabilityErrors: { errorId: string }[];
    };
    expect(installabilityErrors.map((error) => error.errorId)).not.toContain(
      'manifest-missing-suitable-icon',
    );
    const { icons } = JSON.parse(found.data) as { icons: { src: string; sizes: string }[] };
    for (const { src, sizes } of icons.filter((icon) => icon.src.endsWith('.png'))) {
      const size = await page.evaluate(async (address) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        return `${image.naturalWidth}x${image.naturalHeight}`;
      }, src);
      expect(size).toBe(sizes);
    }
    const worker = await readFile(join(folder, 'service-worker.js'), 'utf8');
    for (const { src } of icons) expect(worker).toContain(src.slice(2));
    expect(complaints).toEqual([]);
    await page.close();
    await server.close();
  });

  it('shows a file that the device opens with it, before anything is taken', async () => {
    const server = await serveFolder(folder);
    const page = await newPage(browser);
    await page.evaluateOnNewDocument(() => {
      Object.defineProperty(window, 'launchQueue', {
        value: {
          setConsumer: (take: (launched: object) => void) => {
            const text = 'window,start,end\nOpened,2027-03-06 22:00,2027-03-07 06:00\n';
            take({ files: [{ getFile: async () => new File([text], 'opened.csv') }] });
          },
        },
      });
    });
    await page.goto(server.address);
    await page.waitForFunction(
      () => {
        const desk = document.querySelector('possession-desk')?.shadowRoot;
        const shown = desk?.querySelector('possession-import')?.shadowRoot?.textContent ?? '';
        return shown.includes('opened.csv');
      },
      { polling: 100 },
    );
    await page.close();
    await server.close();
  });

  it('lists every built file for its offline copy', async () => {
    const worker = await readFile(join(folder, 'service-worker.js'), 'utf8');
    expect(worker).toContain('index.html');
    expect(worker).toMatch(/assets\/engine-[\w-]+\.js/);
  });

  it('works after its server is gone, with the shift log, and worker and policy without a complaint', async () => {
    const server = await serveFolder(folder);
    const page = await newPage(browser);
    const complaints: string[] = [];
    page.on('pageerror', (error) => complaints.push(String(error)));
    page.on('console', (message) => {
      if (/Content Security Policy/i.test(message.text())) complaints.push(message.text());
    });
    await page.goto(server.address);
    const before = await workedOut(page);
    await kept(page);
    const log = JSON.stringify([{ at: 1_810_000_000_000, note: 'Line blocked' }]);
    await page.evaluate(
      (text) => localStorage.setItem('possession-fit/shift/Marl Vale renewals, 2027/W1', text),
      log,
    );
    await server.close();
    await expect(fetch(server.address)).rejects.toThrow();

    await page.reload();
    const after = await workedOut(page);
    expect(after).toMatch(/usable/i);
    expect(after.length).toBeGreaterThan(before.length / 2);
    expect(await page.evaluate(() => Object.values(localStorage))).toContain(log);
    expect(complaints).toEqual([]);
    await page.close();
  });

  it('keeps a live shift in step over two tabs, and is back in it without a server, a press or a search', async () => {
    const server = await serveFolder(folder);
    // A search that nobody asked for is to be long enough to be seen.
    const page = await newPage(browser, 1);
    await page.goto(server.address);
    await workedOut(page);
    await kept(page);
    const follow = async (): Promise<void> => {
      await (await page.waitForSelector('>>> #tab-handback'))!.click();
      await page.waitForFunction(() => {
        const desk = document.querySelector('possession-desk')!.shadowRoot!;
        const all = [...desk.querySelectorAll<HTMLButtonElement>('.bar button')];
        const shift = all.find((element) => element.textContent?.includes('During the shift'));
        if (!shift || shift.disabled) return false;
        if (shift.getAttribute('aria-pressed') !== 'true') shift.click();
        return true;
      });
    };
    const entries = (of: Page): Promise<number> =>
      of.evaluate(() => document.querySelector('possession-desk')!.shift.log.length);
    await follow();
    // A second tab of the same plan opens in the shift by itself.
    const other = await newPage(browser);
    await other.goto(server.address);
    await inShift(other);
    await server.close();
    await page.bringToFront();
    await press(page, 'Started');
    expect(await entries(page)).toBe(1);
    // The other tab hears of it without a press, a reload or a beat of its own clock.
    await other.waitForFunction(
      () => document.querySelector('possession-desk')!.shift.log.length === 1,
      beats,
    );
    await press(other, 'Finished');
    await page.waitForFunction(
      () => document.querySelector('possession-desk')!.shift.log.length === 2,
      beats,
    );
    await other.close();

    // Loaded anew without a server the page is back in the shift without a press and without a search.
    await page.evaluateOnNewDocument(() => {
      const watch = window as unknown as { searched: boolean };
      watch.searched = false;
      const look = (): void => {
        const { planning } = document.querySelector('possession-desk') ?? {};
        if (planning?.progress ?? planning?.draft) watch.searched = true;
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await page.reload();
    await inShift(page);
    expect(await entries(page)).toBe(2);
    expect(await page.evaluate(() => (window as unknown as { searched: boolean }).searched)).toBe(
      false,
    );
    await page.close();
  });

  it('tells of a newer version and takes it only when asked', async () => {
    const server = await serveFolder(folder);
    const page = await newPage(browser);
    await page.goto(server.address);
    await kept(page);
    const path = join(folder, 'service-worker.js');
    const worker = await readFile(path, 'utf8');
    await writeFile(path, worker.replace(/version:"[0-9a-f]+"/, 'version:"newer"'));
    const waiting = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      // However long the machine takes to keep all files: only the test's own limit ends this.
      while (!registration.waiting) await new Promise((resolve) => setTimeout(resolve, 50));
      return registration.active !== registration.waiting;
    });
    expect(waiting).toBe(true);
    expect(await page.evaluate(() => caches.keys())).toHaveLength(2);
    const taken = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const changed = new Promise((resolve) =>
        navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true }),
      );
      registration.waiting!.postMessage('take-over');
      await changed;
      return registration.waiting === null;
    });
    expect(taken).toBe(true);
    await page.close();
    await server.close();
  });
});
