// Parts of the page that a host does not send, or sends late: the desk comes up all the same and says what is missing and
// what follows from it. The files are withheld by the server, as the requests of workers cannot be held up in the browser.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'puppeteer-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { defaultStrings as english } from '../../components/desk/strings.js';
import { strings as german } from '../../components/desk/strings.de.js';
import { defaultStrings as bookingWords } from '../../components/booking/strings.js';
import { defaultStrings as handbackWords } from '../../components/handback/strings.js';
import { linkOf } from '../../components/store/share-link.js';
import { emptyPlan } from '../../src/model/index.js';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import { openView } from './open-view.js';
import { serveFolder } from './served-folder.js';

let browser: Browser;
let context: BrowserContext;
let page: Page;
let host: Awaited<ReturnType<typeof serveFolder>>;
/** What the host says of a file: by the beginning of its name. */
let has: (path: string) => boolean | Promise<boolean>;
let language = 'en';

beforeAll(async () => {
  browser = await launchedBrowser();
  host = await serveFolder(
    inject('builtPage'),
    (text) => text.replace('<html lang="en">', `<html lang="${language}">`),
    (path) => has(path),
  );
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});
beforeEach(async () => {
  has = () => true;
  language = 'en';
  context = await browser.createBrowserContext();
  page = await newPage(context);
  // What the page keeps of itself would stand in for what the host does not send.
  await page.evaluateOnNewDocument(() =>
    Object.defineProperty(navigator, 'serviceWorker', { value: undefined }),
  );
});
afterEach(() => context.close());

/** Whether a file is one of those named so; the page must have one, else nothing would be withheld. */
function isNamed(name: string): (path: string) => boolean {
  const files = readdirSync(join(inject('builtPage'), 'assets'));
  expect(files.filter((file) => file.startsWith(`${name}-`))).not.toEqual([]);
  return (path) => path.startsWith(`/assets/${name}-`);
}

const withoutFile = (name: string): void => {
  const isLacking = isNamed(name);
  has = (path) => !isLacking(path);
};

const says = (words: string): Promise<unknown> =>
  page.waitForFunction(
    (text) => {
      const desk = document.querySelector('possession-desk')?.shadowRoot;
      const seen = [...(desk?.querySelectorAll('.view, .tools') ?? [])];
      return seen.some((part) => part.textContent?.replace(/\s+/g, ' ').includes(text));
    },
    { polling: 100 },
    words,
  );

/** Waits until the figures of a plan are shown. */
const shows = (plan: string): Promise<unknown> =>
  page.waitForFunction(
    (name) => {
      const desk = document.querySelector('possession-desk');
      return desk?.figures?.results && desk.document?.name === name && !desk.opening;
    },
    { polling: 100 },
    plan,
  );

/** Presses the first such button of an element of the desk, once it is there. */
const press = (element: string, button: string): Promise<unknown> =>
  page.waitForFunction(
    (within, wanted) => {
      const desk = document.querySelector('possession-desk')!.shadowRoot!;
      const shown = desk.querySelector(within)?.shadowRoot;
      const found = shown?.querySelector<HTMLButtonElement>(wanted);
      found?.click();
      return found !== null && found !== undefined;
    },
    { polling: 100 },
    element,
    button,
  );

const sample = 'Marl Vale renewals, 2027';

/** A message with an address of a file in it, as far as the address. */
const upToWhy = (message: (why: string) => string): string => message('#').split('#')[0]!;

describe('a page without what keeps plans', () => {
  it.each([
    ['en', english],
    ['de', german],
  ] as const)(
    'shows the sample and says that nothing is kept, in %s, after changes too',
    async (lang, words) => {
      language = lang;
      withoutFile('opening');
      await page.goto(host.address);
      await shows(sample);
      await says(words.files.save['not-loaded']);
      await says(words.saveFile);
      await page.evaluate(() => {
        const desk = document.querySelector('possession-desk')!;
        desk.change({ part: ['name'], from: desk.document!.name, value: 'Another name' }, 'name');
      });
      await shows('Another name');
      await says(words.files.save['not-loaded']);
    },
  );

  it('does not reload for a newer version, which would lose what is not kept, and says so', async () => {
    withoutFile('opening');
    await page.goto(host.address);
    await shows(sample);
    await page.evaluate(() => {
      const desk = document.querySelector('possession-desk')!;
      desk.newer = () => Object.assign(window, { reloaded: true });
    });
    await says(english.newer);
    await page.evaluate((words) => {
      const desk = document.querySelector('possession-desk')!.shadowRoot!;
      const all = [...desk.querySelectorAll<HTMLButtonElement>('.news button')];
      all.find((button) => button.textContent?.trim() === words)!.click();
    }, english.reload);
    await says(english.notReloaded);
    expect(
      await page.evaluate(() => (window as unknown as { reloaded?: boolean }).reloaded),
    ).toBeUndefined();
  });

  it('tells whoever had a plan here that another is shown; the plan is there once the file is', async () => {
    await page.goto(host.address);
    await shows(sample);
    await page.evaluate(async () => {
      const desk = document.querySelector('possession-desk')!;
      desk.change({ part: ['name'], from: desk.document!.name, value: 'Night of my own' }, 'name');
      await desk.keeping.flush();
    });
    withoutFile('opening');
    await page.reload();
    await shows(sample);
    await says(upToWhy(english.cannotReadKept));
    has = () => true;
    await page.reload();
    await shows('Night of my own');
  });

  it('says that the plan of a link is not shown, and shows it when it is loaded anew', async () => {
    const link = await linkOf(emptyPlan('Of a link', 'Europe/London'), host.address);
    withoutFile('opening');
    await page.goto(link.url!);
    await shows(sample);
    await says(upToWhy(english.cannotOpenLink));
    has = () => true;
    await page.reload();
    await shows('Of a link');
  });
});

describe('a page that waits long for what keeps plans', () => {
  it('says so, and what was begun meanwhile stays and is kept', async () => {
    let send!: (sent: boolean) => void;
    const held = new Promise<boolean>((resolve) => (send = resolve));
    const isHeld = isNamed('opening');
    has = (path) => (isHeld(path) ? held : true);
    await page.goto(host.address);
    await says(english.openingLate);
    await page.evaluate(async () => {
      const desk = document.querySelector('possession-desk')!;
      await desk.adopt({ ...desk.blank(), name: 'Begun meanwhile' });
    });
    send(true);
    await page.waitForFunction(
      () => document.querySelector('possession-desk')!.keeping.state?.kind === 'saved',
      { polling: 100 },
    );
    await shows('Begun meanwhile');
  });
});

describe('a page without another of its files', () => {
  it('begins with an empty plan where the sample is missing', async () => {
    withoutFile('sample-plan');
    await page.goto(host.address);
    await shows('Untitled plan');
    await says(upToWhy(english.cannotLoadParts));
  });

  it('says that parts are missing', async () => {
    // The elements of all views but the first.
    withoutFile('define');
    await page.goto(host.address);
    await shows(sample);
    await says(upToWhy(english.cannotLoadParts));
  });

  it('tells of the menu, and opens it once it can be loaded', async () => {
    let file = '';
    const isMenu = isNamed('menu-view');
    has = (path) => {
      if (isMenu(path)) file = path;
      return !isMenu(path);
    };
    await page.goto(host.address);
    await shows(sample);
    const open = async (): Promise<void> =>
      page.evaluate(() => {
        document.querySelector('possession-desk')!.menu = 'help';
      });
    await open();
    await says(upToWhy(english.notDone));
    has = () => true;
    // A browser may remember that a module could not be loaded; the words say to load the page anew then.
    const forgets = await page.evaluate(
      `import(${JSON.stringify(file)}).then(() => true, () => false)`,
    );
    if (!forgets) {
      await page.goto(host.address);
      await shows(sample);
    }
    // The page itself asks for the menu ahead: whoever asks beside it may get that answer once more.
    await page.waitForFunction(
      () => {
        const desk = document.querySelector('possession-desk')!;
        desk.menu ||= 'help';
        return desk.shadowRoot!.querySelector('#menu');
      },
      { polling: 100 },
    );
  });

  it('tells of the words of reasons once, and asks for them no more by itself', async () => {
    let asked = 0;
    const isWords = isNamed('sentences');
    has = (path) => {
      if (!isWords(path)) return true;
      asked += 1;
      return false;
    };
    await page.goto(host.address);
    await shows(sample);
    await openView(page, 'cost');
    await says(upToWhy(english.notDone));
    const before = asked;
    for (const view of ['plan', 'cost', 'booking', 'cost'] as const) await openView(page, view);
    expect(asked).toBe(before);
  });

  it.each([
    ['handback', 'possession-handback', 'button.calendar', 'cut-off-events', handbackWords],
    ['booking', 'possession-booking', 'button.save', 'booking-calendar', bookingWords],
  ] as const)(
    'tells of what makes the calendar file of %s',
    async (view, tag, button, file, words) => {
      withoutFile(file);
      await page.goto(host.address);
      await shows(sample);
      await openView(page, view);
      await press(tag, button);
      await page.waitForFunction(
        (name, told) => {
          const desk = document.querySelector('possession-desk')!.shadowRoot!;
          const shown = desk.querySelector(name)!.shadowRoot!;
          return shown.querySelector('[role=alert].problem')?.textContent?.includes(told);
        },
        { polling: 100 },
        tag,
        upToWhy(words.noCalendar),
      );
    },
  );

  it('tells of what explains a figure', async () => {
    withoutFile('explanations');
    await page.goto(host.address);
    await shows(sample);
    await openView(page, 'handback');
    await press('possession-handback', 'button.plain');
    await says(upToWhy(english.notDone));
  });
});
