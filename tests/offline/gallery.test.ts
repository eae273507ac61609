// The gallery as it is built and served beside the desk, under the page's own policy.
import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'puppeteer-core';
import { parseAst } from 'vite';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import * as core from '../../src/index.js';
import { packageExports } from '../../scripts/package-entries.mjs';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';
import { serveFolder } from './served-folder.js';

const axe = new URL('../../node_modules/axe-core/axe.min.js', import.meta.url);
const manifest = new URL('../../custom-elements.json', import.meta.url);

/** Each of these speaks of a whole page, and this one shows an element many times and a desk, which is a page of its own. */
const ofOnePage = ['landmark-unique', 'landmark-main-is-top-level', 'landmark-no-duplicate-main'];

const folder = inject('builtPage');
let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let page: Page;
const wrong: string[] = [];

beforeAll(async () => {
  served = await serveFolder(folder);
  browser = await launchedBrowser();
  page = await newPage(browser);
  page.on('pageerror', (error) => wrong.push(String(error)));
  page.on('console', (told) => {
    if (told.type() === 'error') wrong.push(told.text());
  });
  await page.setViewport({ width: 1280, height: 900 });
  await page.goto(`${served.address}gallery.html`);
  await until(() => document.querySelector('figure') !== null);
  await everyOneShown();
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
});

/** Not `waitForFunction`, which the policy forbids to make its code. */
async function until(holds: () => boolean): Promise<void> {
  while (!(await page.evaluate(holds))) await new Promise((done) => setTimeout(done, 100));
}

/** Looks at one place after the other, as a reader who scrolls does, until each has its element and its data. */
async function everyOneShown(): Promise<void> {
  const places = await page.$$('.ground');
  for (const place of places) {
    await place.evaluate((element) => element.scrollIntoView());
    while ((await place.evaluate((element) => element.getAttribute('aria-busy'))) !== 'false')
      await new Promise((done) => setTimeout(done, 50));
  }
}

/** A look at the page with axe: without what a selector names, by some rules or all but some. */
interface Look {
  readonly without?: string;
  readonly runOnly?: readonly string[];
  readonly rules?: Readonly<Record<string, { readonly enabled: boolean }>>;
}

const off = (rules: readonly string[]): NonNullable<Look['rules']> =>
  Object.fromEntries(rules.map((rule) => [rule, { enabled: false }]));

const faultsOf = ({ without, ...how }: Look): Promise<string[]> =>
  page.evaluate(
    async (left, options) => {
      const { axe: tool } = globalThis as unknown as {
        axe: { run: (of: object, how: object) => Promise<{ violations: Violation[] }> };
      };
      const { violations } = await tool.run(left ? { exclude: [[left]] } : document, {
        ...options,
        // What passes is not written out, node by node.
        resultTypes: ['violations'],
      });
      return violations.flatMap((violation) =>
        violation.nodes.map(
          (node) => `${violation.id}: ${node.target.flat().join(' ')} ${node.failureSummary}`,
        ),
      );
    },
    without,
    how,
  );

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown[]; readonly failureSummary?: string }[];
}

const codes = (): Promise<string[]> =>
  page.$$eval('section[id^="possession-"] pre', (all) =>
    all.map((element) => element.textContent ?? ''),
  );

describe('the gallery', () => {
  it('shows every element of the manifest, and each with a plan, with nothing and with cells gone wrong', async () => {
    const { modules } = JSON.parse(await readFile(manifest, 'utf8')) as {
      modules: { declarations: { tagName?: string }[] }[];
    };
    const tags = modules.flatMap((module) =>
      module.declarations.flatMap((two) => two.tagName ?? []),
    );
    const shown = await page.evaluate(() =>
      [...document.querySelectorAll('section[id^="possession-"]')].map((section) => ({
        tag: section.id,
        alive: [...section.querySelectorAll('.ground')].map((ground) => {
          const element = ground.querySelector(section.id)!;
          return [
            ground.getAttribute('data-state'),
            (element.shadowRoot?.textContent ?? '').trim() !== '' ||
              element.children.length > 0 ||
              element.matches(':defined'),
          ];
        }),
      })),
    );
    expect(shown.map((item) => item.tag).sort()).toEqual(tags.sort());
    for (const { tag, alive } of shown) {
      expect(alive.length, tag).toBeGreaterThanOrEqual(tag === 'possession-desk' ? 1 : 6);
      expect(
        alive.every(([, isSo]) => isSo),
        tag,
      ).toBe(true);
    }
  });

  it('says of no element that it could not be worked out, and breaks no policy', async () => {
    const said = await page.$$eval('.sent', (all) =>
      all.map((element) => element.textContent ?? ''),
    );
    expect(said.filter((text) => text.startsWith('Not worked out'))).toEqual([]);
    expect(wrong).toEqual([]);
  });

  it('shows an element with a plan otherwise than one with nothing', async () => {
    const same = await page.evaluate(() => {
      const words = (section: Element, state: string): string =>
        section.querySelector(`.ground[data-state="${state}"]`)?.querySelector(section.id)
          ?.shadowRoot?.innerHTML ?? '';
      return [...document.querySelectorAll('section[id^="possession-"]')]
        .filter((element) => words(element, 'With a plan') === words(element, 'With nothing yet'))
        .map((element) => element.id);
    });
    // This one draws nothing but what is inside it.
    expect(same).toEqual(['possession-document']);
  });

  it('has no fault that axe finds in light', async () => {
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: 'light' }]);
    await page.evaluate(await readFile(axe, 'utf8'));
    expect(await faultsOf({ rules: off([...ofOnePage, 'region']) })).toEqual([]);
    // Where the page puts its own parts; of what stands in the elements it takes a third of all the time.
    expect(await faultsOf({ without: '.ground', runOnly: ['region'] })).toEqual([]);
  });

  it('gives code that is code, with imports that the package has', async () => {
    const entries = packageExports() as Record<string, unknown>;
    const all = await codes();
    const scripts = all.flatMap(
      (text) => /<script type="module">\n([^]*)\n<\/script>/.exec(text)?.[1] ?? [],
    );
    expect(scripts.length).toBeGreaterThan(12);
    for (const script of scripts)
      for (const statement of parseAst(script).body) {
        if (statement.type !== 'ImportDeclaration') continue;
        const from = String(statement.source.value);
        expect(Object.keys(entries)).toContain(from.replace('possession-fit', '.'));
        if (from !== 'possession-fit') continue;
        for (const specifier of statement.specifiers)
          expect(core).toHaveProperty(specifier.local.name);
      }
  });

  it('takes a token that is typed into every element, and gives it as a style sheet', async () => {
    await page.type('input[name="--possession-radius"]', '11px');
    const found = await page.evaluate(() => {
      const ribbon = document.querySelector('possession-ribbon')!.shadowRoot!;
      return {
        radius: getComputedStyle(ribbon.querySelector('button')!).borderTopLeftRadius,
        told: document.querySelector('.chosen pre')?.textContent,
      };
    });
    expect(found.radius).toBe('11px');
    expect(found.told).toContain('--possession-radius: 11px;');
    await page.click('button[type=reset]');
    expect(await page.$eval('.chosen', (element) => element.textContent)).toContain(
      'Nothing is changed',
    );
  });

  it.each([390, 320])('does not run out of a screen %i wide', async (width) => {
    await page.setViewport({ width, height: 800 });
    const { scrollWidth } = await page.evaluate(() => ({
      scrollWidth: document.documentElement.scrollWidth,
    }));
    expect(scrollWidth).toBeLessThanOrEqual(width);
  });

  // The last look at this page: axe reads all of it whatever it is asked of, so what it need not look at is taken away.
  it('has no fault that axe finds in dark, in its colours, which alone are others, with a plan', async () => {
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: 'dark' }]);
    await page.setViewport({ width: 1280, height: 900 });
    await page.$$eval('.ground:not([data-state="With a plan"])', (all) => {
      for (const ground of all) ground.remove();
    });
    expect(await faultsOf({ runOnly: ['color-contrast'] })).toEqual([]);
  });

  it('opens without a network once the desk was opened', async () => {
    const own = await serveFolder(folder);
    const context = await browser.createBrowserContext();
    const second = await newPage(context);
    await second.goto(own.address);
    await second.evaluate(async () => void (await navigator.serviceWorker.ready));
    await own.close();
    await second.goto(`${own.address}gallery.html`);
    await second.waitForSelector('h1');
    expect(await second.title()).toBe('The elements of possession-fit');
    await context.close();
  });
});
