// Runs command lines one after another in a thread: what a process of its own would write, without starting one.
import { workerData, type MessagePort } from 'node:worker_threads';
import { main } from '../../src/cli/main.js';

const { port, done } = workerData as { port: MessagePort; done: Int32Array };

/** Keeps what is written to a stream until it is asked for. */
function kept(stream: NodeJS.WriteStream): () => string {
  const pieces: string[] = [];
  stream.write = (piece: string | Uint8Array, ...rest: unknown[]): boolean => {
    pieces.push(String(piece));
    const written = rest.at(-1);
    if (typeof written === 'function') process.nextTick(written);
    return true;
  };
  return () => pieces.splice(0).join('');
}
const stdout = kept(process.stdout);
const stderr = kept(process.stderr);
// Its help names the command as `npm run cli` does.
process.argv[1] = 'cli.mjs';

port.on('message', (words: readonly string[]) => {
  void main(words)
    .catch((error: unknown) => {
      process.stderr.write(error instanceof Error ? error.stack! : String(error));
      return 1;
    })
    .then((code) => {
      process.stdout.removeAllListeners('error');
      port.postMessage({ code, stdout: stdout(), stderr: stderr() });
      Atomics.store(done, 0, 1);
      Atomics.notify(done, 0);
    });
});
