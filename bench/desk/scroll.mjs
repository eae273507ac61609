// `CHROME_PATH=$(which chromium) node bench/desk/scroll.mjs`: the ribbon and the map of verdicts of large plans beside an
// empty scroller: times between frames, what the page's thread works for each, and what one edit takes of it once its
// figures are known.
import { frameWork } from '../scroll/frame-work.mjs';
import { withPage } from '../scroll/open.mjs';

const sizes = [
  [500, 250],
  [5_000, 40],
];
const scrolls = [
  ['empty', 'scrollTop'],
  ['ribbon', 'scrollTop'],
  ['map', 'scrollTop'],
  ['map', 'scrollLeft'],
];
const text = ({ median, p95, max }) =>
  `median ${median.toFixed(1)}, p95 ${p95.toFixed(1)}, most ${max.toFixed(1)} ms`;

await withPage('bench/desk/index.html', async (page) => {
  for (const [windows, packages] of sizes) {
    const pairs = await page.evaluate((w, p) => globalThis.prepare(w, p), windows, packages);
    console.log(`${windows} windows, ${pairs} pairs`);
    for (const [what, axis] of scrolls) {
      await page.evaluate((one) => globalThis.place(one), what);
      const between = await page.evaluate((one) => globalThis.scroll(one), axis);
      const work = await frameWork(page, () =>
        page.evaluate((one) => globalThis.scroll(one), axis),
      );
      console.log(`  ${what} ${axis}: between frames ${text(between)}; work ${text(work)}`);
    }
    for (const what of ['ribbon', 'map'])
      console.log(
        `  ${what}, one edit:`,
        text(await page.evaluate((one) => globalThis.measure(one), what)),
      );
  }
});
