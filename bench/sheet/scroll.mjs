// `CHROME_PATH=$(which chromium) node bench/sheet/scroll.mjs`: frames of 50,000 rows x 20 columns beside an empty scroller.
// Then the time from keeping a typed cell to the frame that shows it. Seen on 2 busy cores: scroll p95 16.8 ms (empty
// scroller 16.7), edit median 24 ms, p95 63 ms; a frame is 16.7 ms of either.
import { withPage } from '../scroll/open.mjs';

await withPage('bench/sheet/index.html', async (page) => {
  console.log(await page.evaluate(() => globalThis.measure()));
  console.log('edit', await page.evaluate(() => globalThis.measureEdits()));
});
