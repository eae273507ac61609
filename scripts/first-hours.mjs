// What a plain page with a plan and its ribbon loads until usable hours are shown, as a browser asks for it.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { launch } from 'puppeteer-core';
import { findBrowser } from './find-browser.mjs';
import { root } from './install.mjs';

const page = (bundle) => `<!doctype html>
<link rel="icon" href="data:," />
<script type="module" src="${bundle}.js"></script>
<possession-document src="windows.csv work.csv" zone="Europe/London">
  <possession-ribbon></possession-ribbon>
</possession-document>`;

/** What finds verdicts: no ribbon waits for it. */
const laterPart = /\/src\/engine\/incremental\/fit-cache\.ts$/;

/**
 * Opens the page of a bundle in a browser, on the tables of `examples`. What finds verdicts is kept back until hours are
 * shown, so that the answer does not hang on which of the two comes first.
 *
 * @param files The bundle as Vite tells of it, by name of file.
 * @returns The names of the files that were asked for by then, of the engine's worker too, each once.
 */
export async function filesUntilHours(bundle, files) {
  const asked = new Set();
  const kept = [];
  let shown = false;
  const server = createServer(({ url }, answer) => {
    const name = url.slice(1);
    const file = files.get(name);
    if (name === '') answer.setHeader('content-type', 'text/html').end(page(bundle));
    else if (name.endsWith('.csv')) answer.end(readFileSync(join(root, 'examples', name)));
    else if (!file) answer.writeHead(404).end();
    else {
      const give = () =>
        answer
          .writeHead(200, { 'content-type': 'text/javascript', 'cache-control': 'max-age=600' })
          .end(file.code);
      if (!shown && Object.keys(file.modules).some((module) => laterPart.test(module)))
        kept.push(give);
      else {
        if (!shown) asked.add(name);
        give();
      }
    }
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  const browser = await launch({
    executablePath: await findBrowser(),
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    const opened = await browser.newPage();
    await opened.goto(`http://127.0.0.1:${server.address().port}/`);
    await opened.waitForFunction(() => {
      const ribbon = document.querySelector('possession-ribbon');
      const [first] = ribbon.ledgers ?? [];
      const row = ribbon.shadowRoot?.querySelector('[role=option]');
      const text = row?.textContent.replaceAll(/\s+/g, ' ');
      return first && text?.includes(`Usable: ${first.usableMinutes / 60} h`);
    });
    shown = true;
    for (const give of kept) give();
  } finally {
    await browser.close();
    server.close();
  }
  return [...asked];
}
