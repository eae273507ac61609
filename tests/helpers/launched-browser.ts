import { launch, type Browser, type BrowserContext, type Page } from 'puppeteer-core';
import { findBrowser } from '../../scripts/find-browser.mjs';
import type { Request } from '../../src/engine/protocol.js';

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

/**
 * A new page that waits as long as it takes for what it is asked.
 *
 * @param effort Part of the usual work that each search for a plan takes. A page plans whatever it is shown, which with all
 * of the work costs three times what it takes to show itself; none of these tests is about how good a plan is.
 */
export async function newPage(owner: Browser | BrowserContext, effort = 0.05): Promise<Page> {
  const page = await owner.newPage();
  page.setDefaultTimeout(0);
  if (effort < 1) await page.evaluateOnNewDocument(searchLess, effort);
  return page;
}

/** Run in the page: what it asks a worker of the engine to plan is to take less work. */
function searchLess(effort: number): void {
  const send = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message: Request, ...rest: never[]): void {
    const isSearch = message.kind === 'call' && message.verb === 'allocate';
    const asked = isSearch
      ? { ...message, args: message.args.with(1, { ...(message.args[1] as object), effort }) }
      : message;
    send.call(this, asked, ...rest);
  };
}
