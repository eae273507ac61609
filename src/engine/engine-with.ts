import type { PlanDocument } from '../model/index.js';
import { firstAnswers, type Asked } from './first-answers.js';
import type { BareSession } from './incremental/bare-session.js';
import type { Session } from './incremental/session.js';
import type { Engine } from './types.js';
import { methodsBy, verbs } from './verbs.js';

/** An engine in this thread that keeps what it knows of documents in a session. */
export function engineWith(session: Session | BareSession): Engine {
  let ended = false;
  return {
    ...methodsBy(async ({ verb, args, signal, onProgress }) => {
      const answers = verb in firstAnswers ? firstAnswers : (await import('./answers.js')).answers;
      const { document: at } = verbs[verb];
      // Work starts in a later turn, so that a caller sees the same order of events as with a worker.
      await (at < 0 ? undefined : session.prepare(args[at] as PlanDocument));
      if (ended) throw new Error('the engine was disposed of');
      signal?.throwIfAborted();
      const answer = answers[verb as keyof typeof answers] as (
        asked: Asked,
        ...args: readonly unknown[]
      ) => unknown;
      return answer({ stopped: () => signal?.aborted ?? false, onProgress, session }, ...args);
    }),
    dispose() {
      ended = true;
    },
  };
}
