import type { BareSession } from './incremental/bare-session.js';
import type { Session } from './incremental/session.js';
import type { AnswerOf, ArgumentsOf, Verb } from './verbs.js';

/** What an answer may use beside its arguments. */
export interface Asked {
  /** Whether the caller wants no answer any more. */
  stopped(): boolean;
  /** Tells of the way, in the shape that the verb promises; absent when nobody listens. */
  readonly onProgress: ((progress: unknown) => void) | undefined;
  /** What is known of the documents asked about before. */
  readonly session: Session | BareSession;
}

export type Answers<Verbs extends Verb> = {
  readonly [V in Verbs]: (
    asked: Asked,
    ...args: ArgumentsOf<V>
  ) => AnswerOf<V> | Promise<AnswerOf<V>>;
};

/**
 * What a page asks first: `recompute` answers every edit, and a page reads its files. Only what `recompute` needs is loaded
 * from the start, so that a page shows its figures sooner; `answers` has the other verbs.
 */
export const firstAnswers: Answers<'recompute' | 'importFiles'> = {
  recompute: (asked, document) => asked.session.recompute(document, asked.onProgress),
  async importFiles(asked, files, document) {
    const { importFiles } = await import('./import/import-files.js');
    return importFiles(files, document, asked.onProgress);
  },
};
