// The log of a shift on a phone on site and at the control desk: what is written on the one stands on the other.
import type { Page } from 'puppeteer-core';
import { describe, expect, it } from 'vitest';
import { guardedPage } from './guarded-page.js';
import { says, sharingServer } from './sharing-server.js';

const pages = guardedPage();
const server = sharingServer();

/** Goes into the shift of the first window that the plan uses. */
async function intoShift(page: Page): Promise<void> {
  await page.evaluate(() => document.querySelector('possession-desk')!.show('handback'));
  await page.waitForFunction(() => {
    const desk = document.querySelector('possession-desk')!;
    return !desk.planning.busy && desk.outlooks.handbacks.length > 0;
  });
  await page.evaluate(() => {
    const desk = document.querySelector('possession-desk')!;
    desk.picked.pick({ window: desk.outlooks.handbacks[0]!.window });
    desk.requestUpdate();
  });
  const button = await page.waitForSelector('possession-desk >>> .bar button:not(:disabled)');
  await button!.evaluate((element) => element.click());
  await page.waitForSelector('possession-desk >>> form.note');
}

/** Writes a note down as a person does. Returns when, by the clock of the machine. */
const write = (page: Page, note: string): Promise<number> =>
  page.evaluate((words) => {
    const form = document
      .querySelector('possession-desk')!
      .shadowRoot!.querySelector('possession-handback')!
      .shadowRoot!.querySelector<HTMLFormElement>('form.note')!;
    form.querySelector('input')!.value = words;
    form.requestSubmit();
    return Date.now();
  }, note);

/** Waits until a note is drawn in the log. Returns when, by the clock of the machine. */
const drawn = (page: Page, note: string): Promise<number> =>
  page
    .waitForFunction(
      (words) => {
        const log = document
          .querySelector('possession-desk')!
          .shadowRoot!.querySelector('possession-handback')!
          .shadowRoot!.querySelector('.log');
        return log?.textContent?.includes(words) ? Date.now() : false;
      },
      { polling: 'raf' },
      note,
    )
    .then((handle) => handle.jsonValue() as Promise<number>);

describe('the log of a shift', () => {
  it('stands on the desk as it is written on the phone, and the other way about', async () => {
    const [{ page: desk }, { page: phone }] = [await pages.open(), await pages.open()];
    await desk.setViewport({ width: 1440, height: 900 });
    await phone.setViewport({ width: 390, height: 844 });
    await server.ask(desk, 'Mara', server.tokens().write, 'share');
    await says(desk, 'Shared');
    await server.openFromThere(phone, 'Jon', server.tokens().write);
    await intoShift(desk);
    await intoShift(phone);
    const delays: number[] = [];
    for (let turn = 1; turn <= 6; turn += 1) {
      const [from, to] = turn % 2 === 0 ? [desk, phone] : [phone, desk];
      const note = `note ${turn} of the shift`;
      const there = drawn(to, note);
      const at = await write(from, note);
      delays.push((await there) - at);
    }
    expect(delays).toHaveLength(6);
    // For whoever runs this by hand: how fast it is decides nothing here.
    console.log(`from writing to the other screen, ms: ${delays.join(', ')}`);
  });
});
