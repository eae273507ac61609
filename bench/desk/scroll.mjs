// `CHROME_PATH=$(which chromium) node bench/desk/scroll.mjs`: the ribbon and the map of verdicts of a large plan beside an
// empty scroller (frames), and what one edit takes of the main thread once its figures are known.
import { withPage } from '../scroll/open.mjs';

await withPage('bench/desk/index.html', async (page) => {
  for (const [windows, packages] of [
    [500, 250],
    [5_000, 40],
  ])
    console.dir(await page.evaluate((w, p) => globalThis.measure(w, p), windows, packages), {
      depth: 4,
    });
});
