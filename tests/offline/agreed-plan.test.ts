// A plan agreed on the built page, saved by its own buttons and read by the command line: the same figures on both sides.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cli } from '../helpers/cli.js';
import { guardedPage, type Desk } from './guarded-page.js';

const { open } = guardedPage();
const sample = (name: string): string => join('sample-csv', name);
const files = [
  ...['--windows', sample('windows.csv'), '--work', sample('work.csv')],
  ...['--resources', sample('resources.csv'), '--trains', sample('trains.csv')],
  ...['--rules', sample('rules/electrified-two-track.json'), '--zone', 'Europe/London'],
];

let folder: string;
beforeAll(async () => (folder = await mkdtemp(join(tmpdir(), 'possession-fit-agreed-'))));
afterAll(async () => rm(folder, { recursive: true, force: true }));

interface Figures {
  readonly plan: string;
  readonly handbacks: Record<string, readonly [number, string, number]>;
  readonly price: { readonly window: string; readonly minutes: number; readonly total: string };
}

/** Agrees the proposal with the mouse, as a person does. */
async function agree(desk: Desk): Promise<void> {
  const { page } = desk;
  await page.waitForFunction(
    () => document.querySelector('possession-desk')!.planning.proposal?.certificate.verified,
  );
  await page.waitForFunction(() => !document.querySelector('possession-desk')!.planning.busy);
  const summary = await page.waitForSelector('possession-desk >>> .agreed .accept > summary');
  await summary!.click();
  await page.type('possession-desk >>> .agreed .accept [name=by]', 'R. Olsen');
  const accept = await page.waitForSelector('possession-desk >>> .agreed .accept button.strong');
  await accept!.click();
  await page.waitForFunction(() => document.querySelector('possession-desk')!.planning.agreed);
}

/** What the page says of the agreed plan. */
async function figures(desk: Desk): Promise<Figures> {
  await desk.go('handback');
  await desk.page.waitForFunction(
    () => document.querySelector('possession-desk')!.outlooks.hasAllHandbacks,
  );
  await desk.go('cost');
  await desk.page.waitForFunction(() => document.querySelector('possession-desk')!.outlooks.price);
  return desk.page.evaluate(() => {
    const { planning, outlooks } = document.querySelector('possession-desk')!;
    return {
      plan: planning.agreed!.id,
      handbacks: Object.fromEntries(
        outlooks.handbacks.map((handback) => [
          handback.window,
          [
            handback.marginMinutes,
            handback.verdict,
            handback.simulation.outlook.onTime.probability,
          ] as const,
        ]),
      ),
      price: {
        window: outlooks.price!.at.window,
        minutes: outlooks.overrunMinutes,
        total: outlooks.price!.at.total,
      },
    };
  });
}

const told = (...words: string[]): unknown => {
  const done = cli(...words, '--json');
  expect({ code: done.code, errors: done.stderr.match(/^error.*/m) }).toEqual({
    code: 0,
    errors: null,
  });
  return JSON.parse(done.stdout);
};

describe('a plan agreed on the built page', () => {
  it('has the same handback and price figures on the command line, from each file that the page saves', async () => {
    const desk = await open();
    // As in a browser that has no window for saving: the file is handed over as a download.
    await desk.page.evaluate(() => void Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await agree(desk);
    const shown = await figures(desk);
    expect(Object.keys(shown.handbacks).length).toBeGreaterThan(5);
    for (const [label, name] of [
      ['As CSV', 'plan.csv'],
      ['As a workbook', 'plan.xlsx'],
      ['Save a file', 'plan.json'],
    ] as const) {
      const [file] = await desk.saves(label, 1);
      const path = join(folder, name);
      await writeFile(path, file!.bytes);
      const handback = told('handback', ...files, '--plan', path, '--runs', '10000') as {
        plan: { id: string; name: string; revision: number };
        windows: { window: string; marginMinutes: number; verdict: string; pOnTime: number }[];
      };
      expect(handback.plan, name).toMatchObject({ id: shown.plan, name: 'Plan 1', revision: 1 });
      expect(
        Object.fromEntries(
          handback.windows.map((item) => [
            item.window,
            [item.marginMinutes, item.verdict, item.pOnTime],
          ]),
        ),
        name,
      ).toEqual(shown.handbacks);
      const { window, minutes, total } = shown.price;
      const price = told(
        ...['price', ...files, '--prices', sample('prices.json'), '--plan', path],
        ...['--window', window, '--minutes', String(minutes)],
      ) as { total: number };
      expect(String(price.total), name).toBe(total);
    }
    await desk.close();
  });
});
