import type { Page } from 'puppeteer-core';
import { placeOf, viewsOf, type DeskView } from '../../components/desk/views.js';

/** Opens a view of the desk as a person does: its place, then the way to look at it. */
export async function openView(page: Page, view: DeskView): Promise<void> {
  const place = placeOf(view);
  await (await page.waitForSelector(`>>> #tab-${place}`))!.click();
  if (viewsOf[place].length > 1) await (await page.waitForSelector(`>>> #tab-${view}`))!.click();
}
