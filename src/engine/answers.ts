import {
  allocate,
  replan,
  shortNotice,
  type AllocateOptions as SearchOptions,
} from '../schedule/index.js';
import { exportTable, exportTables } from '../tables/index.js';
import { sitePlan } from './site-plan.js';
import { accountOf } from './account.js';
import { bookOf } from './book.js';
import { handbackOf } from './handback.js';
import { importFiles } from './import-files.js';
import { optionsOf } from './options.js';
import { liftingOf } from './lifting.js';
import { noiseOf } from './noise.js';
import { peopleOf } from './people.js';
import { priceOf } from './price.js';
import type { Session } from './incremental/session.js';
import { ruleChange } from './rule-change.js';
import type { AllocateOptions, Progress } from './types.js';
import type { AnswerOf, ArgumentsOf, Verb } from './verbs.js';

/** What an answer may use beside its arguments. */
export interface Asked {
  /** Whether the caller wants no answer any more. */
  stopped(): boolean;
  /** Tells of the way, in the shape that the verb promises; absent when nobody listens. */
  readonly onProgress: ((progress: unknown) => void) | undefined;
  /** What is known of the documents asked about before. */
  readonly session: Session;
}

/** How each verb is answered, whichever engine was asked. */
export const answers: {
  readonly [V in Verb]: (
    asked: Asked,
    ...args: ArgumentsOf<V>
  ) => AnswerOf<V> | Promise<AnswerOf<V>>;
} = {
  recompute: (asked, document) => asked.session.recompute(document, asked.onProgress),
  importFiles: (asked, files, document) => importFiles(files, document, asked.onProgress),
  exportFiles: (_, document, options) => exportTables(document, options),
  exportTable: (_, table, format) => exportTable(table, format),
  allocate: (asked, document, options) =>
    allocate(sitePlan(document).plan, searching(options, asked)),
  replan: (asked, document, before, options) =>
    replan(sitePlan(document).plan, before, searching(options, asked)),
  shortNotice(asked, document, before, id, options) {
    const { plan } = sitePlan(document);
    const window = plan.windows.find((one) => one.id === id);
    if (!window) throw new RangeError(`there is no window "${id}" in the plan`);
    return shortNotice(plan, before, window, searching(options, asked));
  },
  handback: (asked, document, request) =>
    handbackOf(
      sitePlan(document).plan,
      { ...document.decisions, ...request },
      () => asked.stopped(),
      asked.onProgress,
    ),
  price(_, document, request) {
    const { prices } = document;
    if (!prices) throw new RangeError('the plan has no price book');
    const { holidays } = document;
    return priceOf(
      { ...sitePlan(document), prices },
      { ...(holidays && { holidays }), ...request },
    );
  },
  account: (_, document, request) => accountOf(document, request),
  options(asked, document, request) {
    const found = optionsOf(document, request, {
      clock: () => performance.now(),
      stopped: () => asked.stopped(),
      onProgress: (progress) => asked.onProgress?.(progress),
    });
    if (!found) throw new DOMException('the options were stopped', 'AbortError');
    return found;
  },
  book: (_, document, request) => bookOf(sitePlan(document).plan, document.name, request),
  people: (_, document, request) => peopleOf(sitePlan(document), request),
  noise: (_, document, request) => noiseOf(sitePlan(document), request),
  lifting: (_, document, request) => liftingOf(sitePlan(document), request),
  compareRules: (asked, document, rules) => ruleChange(document, rules, asked.onProgress),
};

/** The options of a search with the clock, the way to stop it and the telling of progress. */
function searching(options: AllocateOptions, asked: Asked): SearchOptions {
  const clock = (): number => performance.now();
  const tell = progressBy(clock, (options.seconds ?? 5) * 1000, asked.onProgress);
  return {
    ...options,
    clock,
    shouldStop: () => {
      tell();
      return asked.stopped();
    },
  };
}

/** Tells of the time used, ten times a second at most. */
function progressBy(
  clock: () => number,
  total: number,
  onProgress?: (progress: Progress) => void,
): () => void {
  const began = clock();
  let last = began;
  return () => {
    const now = clock();
    if (!onProgress || now - last < 100) return;
    last = now;
    onProgress({ done: Math.min(now - began, total), total });
  };
}
