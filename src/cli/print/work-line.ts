// A line that says how long the work has gone on, while this thread is busy and can say nothing itself.
import { Worker } from 'node:worker_threads';
import { wipeLine } from './output.js';

/** Nothing is said of work that is done within this. */
const quietMs = 1000;

// Runs beside the work. It writes to the file descriptor itself: a stream would wait for the busy thread.
const teller = `
  const { workerData: { fd, what, quietMs, began } } = require('node:worker_threads');
  const { writeSync } = require('node:fs');
  const say = () => {
    const seconds = Math.round((Date.now() - began) / 1000);
    try { writeSync(fd, '\\r' + what + ': ' + seconds + ' s so far'); } catch {}
  };
  setTimeout(() => { say(); setInterval(say, quietMs); }, quietMs);
`;

/**
 * Tells of work that takes over a second, on one line that is wiped at its end.
 *
 * @param fd The file descriptor of a terminal; undefined: nothing is told.
 * @returns Ends it, when the work is done.
 */
export function workLine(what: string, fd: number | undefined): () => Promise<void> {
  if (fd === undefined) return async () => undefined;
  const began = Date.now();
  const worker = new Worker(teller, { eval: true, workerData: { fd, what, quietMs, began } });
  worker.unref();
  return async () => {
    await worker.terminate();
    if (Date.now() - began > quietMs) process.stderr.write(wipeLine);
  };
}
