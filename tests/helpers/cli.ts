import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  MessageChannel,
  receiveMessageOnPort,
  Worker,
  type MessagePort,
} from 'node:worker_threads';
import { buildSync } from 'esbuild';
import { nodeBundle } from '../../scripts/bundle-cli.mjs';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface CliRun {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command line as a script would, in the project folder and a process of its own. */
export function cliProcess(...words: string[]): CliRun {
  const done = spawnSync('node', ['scripts/cli.mjs', ...words], { cwd: root, encoding: 'utf8' });
  return { code: done.status, stdout: done.stdout, stderr: done.stderr };
}

interface CliThread {
  readonly port: MessagePort;
  readonly done: Int32Array;
}
let thread: CliThread | undefined;

/** Bundles the command line once for all tests of this process. */
function cliThread(): CliThread {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-cli-'));
  const outfile = join(folder, 'cli-thread.mjs');
  buildSync({
    entryPoints: [join(root, 'tests/helpers/cli-thread.ts')],
    outfile,
    ...nodeBundle,
  });
  const { port1: port, port2 } = new MessageChannel();
  const done = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(outfile, { workerData: { port: port2, done }, transferList: [port2] });
  worker.unref();
  port.unref();
  return { port, done };
}

/**
 * Runs a command line in the project folder and waits for it, in a thread that is kept: starting a process took longer
 * than most answers. What is of the process itself (pipes, signals, standard input) is tried by `cliProcess`.
 */
export function cli(...words: string[]): CliRun {
  thread ??= cliThread();
  Atomics.store(thread.done, 0, 0);
  thread.port.postMessage(words);
  // The call that woke up for the answer before may reach a wait for this one: it is over only when the thread says so.
  while (Atomics.load(thread.done, 0) === 0)
    if (Atomics.wait(thread.done, 0, 0, 600_000) === 'timed-out')
      throw new Error(`no answer to: ${words.join(' ')}`);
  return (receiveMessageOnPort(thread.port) as { message: CliRun }).message;
}

/** Writes texts or bytes to files in a folder of their own, which goes with the run, and gives their paths. */
export function files<T extends Record<string, string | Uint8Array>>(
  texts: T,
): { [K in keyof T]: string } {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-'));
  return Object.fromEntries(
    Object.entries(texts).map(([name, text]) => {
      const path = join(folder, name);
      writeFileSync(path, text);
      return [name, path];
    }),
  ) as { [K in keyof T]: string };
}
