import { launch, type Browser, type BrowserContext, type Page } from 'puppeteer-core';
import { findBrowser } from '../../scripts/find-browser.mjs';

/** A browser without a screen that asks nobody for anything but the pages it is given. */
export async function launchedBrowser(): Promise<Browser> {
  return launch({
    executablePath: await findBrowser(),
    // Only the test runner ends what hangs: how fast the machine is must not decide.
    protocolTimeout: 0,
    timeout: 0,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** A new page that waits as long as it takes for what it is asked. */
export async function newPage(owner: Browser | BrowserContext): Promise<Page> {
  const page = await owner.newPage();
  page.setDefaultTimeout(0);
  return page;
}
