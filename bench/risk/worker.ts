/** The simulation in a browser's worker: `in-browser.mjs` starts it. */
import { measure } from './measure.js';

const page = globalThis as unknown as { postMessage(line: string): void };
measure(
  () => performance.now(),
  (line) => page.postMessage(line),
);
page.postMessage('done');
