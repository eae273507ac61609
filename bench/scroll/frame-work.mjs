/**
 * Milliseconds of processor time that the page's own thread works on each frame while something is done: script, style,
 * layout, painting and handing over. Unlike the times between frames it does not grow when other programs want the processor.
 */
export async function frameWork(page, act) {
  await page.tracing.start({ categories: ['cc', 'devtools.timeline'] });
  await act();
  const { traceEvents } = JSON.parse(new TextDecoder().decode(await page.tracing.stop()));
  const main = traceEvents.find(
    (one) => one.name === 'thread_name' && one.args.name === 'CrRendererMain',
  );
  const times = traceEvents
    .filter(
      (one) =>
        one.ph === 'X' &&
        one.name === 'ProxyMain::BeginMainFrame' &&
        one.tid === main.tid &&
        one.pid === main.pid,
    )
    .map((one) => (one.tdur ?? 0) / 1_000)
    .sort((a, b) => a - b);
  const at = (share) => times[Math.min(times.length - 1, Math.floor(share * times.length))];
  return { frames: times.length, median: at(0.5), p95: at(0.95), max: times.at(-1) };
}
