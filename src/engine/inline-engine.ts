import { answers, type Asked } from './answers.js';
import { Session } from './incremental/session.js';
import type { Engine } from './types.js';
import { methodsBy } from './verbs.js';

/**
 * An engine in this thread: for tests, servers and the inside of a worker. A search stops at once only where the
 * signal can change while it runs, so pages use the worker engine.
 */
export function createInlineEngine(): Engine {
  let ended = false;
  const session = new Session();
  return {
    ...methodsBy(async ({ verb, args, signal, onProgress }) => {
      // Work starts in a later turn, so that a caller sees the same order of events as with a worker.
      await Promise.resolve();
      if (ended) throw new Error('the engine was disposed of');
      signal?.throwIfAborted();
      const answer = answers[verb] as (asked: Asked, ...args: readonly unknown[]) => unknown;
      return answer({ stopped: () => signal?.aborted ?? false, onProgress, session }, ...args);
    }),
    dispose() {
      ended = true;
    },
  };
}
