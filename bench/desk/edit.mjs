// `CHROME_PATH=$(which chromium) node bench/desk/edit.mjs`: from a changed cell to the frame that shows it, and to the
// frame that shows every figure that follows, in the desk with its worker, beside two frames with nothing to do.
import { withPage } from '../scroll/open.mjs';

await withPage('bench/desk/edit.html', async (page) => {
  console.dir(await page.evaluate(() => globalThis.measure(500, 250)), { depth: 4 });
});
