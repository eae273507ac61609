import { launch, type Browser } from 'puppeteer-core';
import { findBrowser } from '../../scripts/find-browser.mjs';

/** A browser without a screen that asks nobody for anything but the pages it is given. */
export async function launchedBrowser(): Promise<Browser> {
  return launch({
    executablePath: await findBrowser(),
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
