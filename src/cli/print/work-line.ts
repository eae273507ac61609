// A progress line with the elapsed time, written by another thread while this one is busy.
import { Worker } from 'node:worker_threads';
import { wipeLine } from './output.js';

/** Work shorter than this shows no progress line. */
const quietMs = 1000;

// Runs in a worker. It writes to the file descriptor directly, as a stream would wait for the busy thread.
const workerSource = `
  const { workerData: { fd, what, quietMs, began } } = require('node:worker_threads');
  const { writeSync } = require('node:fs');
  const say = () => {
    const seconds = Math.round((Date.now() - began) / 1000);
    try { writeSync(fd, '\\r' + what + ': ' + seconds + ' s so far'); } catch {}
  };
  setTimeout(() => { say(); setInterval(say, quietMs); }, quietMs);
`;

/**
 * Shows progress of work that takes over a second, on one line that is erased at the end.
 *
 * @param fd The file descriptor of a terminal; undefined: no progress is shown.
 * @returns A function that removes the line; call it when the work is done.
 */
export function workLine(what: string, fd: number | undefined): () => Promise<void> {
  if (fd === undefined) return async () => undefined;
  const began = Date.now();
  const worker = new Worker(workerSource, { eval: true, workerData: { fd, what, quietMs, began } });
  worker.unref();
  return async () => {
    await worker.terminate();
    if (Date.now() - began > quietMs) process.stderr.write(wipeLine);
  };
}
