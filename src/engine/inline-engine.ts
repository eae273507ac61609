import { engineWith } from './engine-with.js';
import { Session } from './incremental/session.js';
import type { Engine } from './types.js';

/**
 * An engine in this thread: for tests and servers. A search stops at once only where the
 * signal can change while it runs, so pages use the worker engine.
 */
export function createInlineEngine(): Engine {
  return engineWith(new Session());
}
