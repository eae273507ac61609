import type { Engine } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';

/** An engine for many elements over the same documents: what one has asked is not worked out again for the next. */
export function answeredOnce(engine: Engine): Engine {
  const answers = new WeakMap<PlanDocument, Map<string, unknown>>();
  /** Nobody's leaving ends the work: the others wait for it too. */
  const once = <Answer>(
    document: PlanDocument,
    question: readonly [string, ...unknown[]],
    work: () => Promise<Answer>,
  ): Promise<Answer> => {
    const known = answers.get(document) ?? new Map<string, unknown>();
    answers.set(document, known);
    const key = JSON.stringify(question);
    if (!known.has(key)) known.set(key, work());
    return known.get(key) as Promise<Answer>;
  };
  return {
    ...engine,
    recompute: (document) => once(document, ['recompute'], () => engine.recompute(document)),
    allocate: (document, options) =>
      once(document, ['allocate', options], () => engine.allocate(document, options)),
    handback: (document, request) =>
      once(document, ['handback', request], () => engine.handback(document, request)),
  };
}
