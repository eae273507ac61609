// `CHROME_PATH=$(which chromium) node bench/desk/memory.mjs [ROUNDS]`: another plan, then every view of the desk, again
// and again; what the page holds after a sweep of memory.
import { withPage } from '../scroll/open.mjs';

const rounds = Number(process.argv[2] ?? 100);

await withPage('bench/desk/memory.html', async (page) => {
  const session = await page.createCDPSession();
  for (let turn = 1; turn <= rounds; turn += 1) {
    await page.evaluate((at) => globalThis.measure(at), turn);
    if (turn !== 1 && turn % Math.ceil(rounds / 10) !== 0) continue;
    await session.send('HeapProfiler.collectGarbage');
    await session.send('HeapProfiler.collectGarbage');
    const { JSHeapUsedSize, Nodes, JSEventListeners } = await page.metrics();
    console.log(
      `round ${turn}: ${(JSHeapUsedSize / 1e6).toFixed(1)} MB, ${Nodes} nodes, ${JSEventListeners} listeners`,
    );
  }
});
