import type { AllocateOptions as SearchOptions } from '../planner/search/index.js';
import { clock } from './clock.js';
import type { Answers, Asked, firstAnswers } from './first-answers.js';
import { namedWindow } from './named-window.js';
import type { AllocateOptions, Allocation, SearchProgress } from './types.js';
import type { Verb } from './verbs.js';

/** How each verb is answered but those of `first-answers`, whichever engine was asked; what answers it is loaded with it. */
export const answers: Answers<Exclude<Verb, keyof typeof firstAnswers>> = {
  async exportFiles(_, document, options) {
    const { exportTables } = await import('../tables/write/export-tables.js');
    return exportTables(document, options);
  },
  async exportTable(_, table, format) {
    const { exportTable } = await import('../tables/write/export-tables.js');
    return exportTable(table, format);
  },
  async allocate(asked, document, options) {
    const { allocate, frozenPieces } = await import('./search.js');
    const { plan } = asked.session.read(document);
    const keep = options.keep ?? frozenPieces(document, plan);
    return allocate(plan, searching(keep.length > 0 ? { ...options, keep } : options, asked));
  },
  async assess(asked, document, placements) {
    const { assess } = await import('./search.js');
    return assess(asked.session.read(document).plan, placements, document.agreed);
  },
  async allocateToChance(asked, document, options) {
    const { planToChance } = await import('./handback/plan-to-chance.js');
    const { frozenPieces } = await import('./frozen.js');
    const { plan } = asked.session.read(document);
    const keep = options.keep ?? frozenPieces(document, plan);
    const own = keep.length > 0 ? { ...options, keep } : options;
    return planToChance(plan, { ...searching(own, asked), ...own });
  },
  async replan(asked, document, before, options) {
    const { replan, frozenPieces } = await import('./search.js');
    const { plan } = asked.session.read(document);
    const keep = options.keep ?? frozenPieces(document, plan);
    return replan(plan, before, searching({ ...options, keep }, asked));
  },
  async shortNotice(asked, document, before, id, options) {
    const { shortNotice, frozenPieces } = await import('./search.js');
    const { plan } = asked.session.read(document);
    const keep = options.keep ?? frozenPieces(document, plan);
    return shortNotice(plan, before, namedWindow(plan, id), searching({ ...options, keep }, asked));
  },
  async handback(asked, document, request) {
    const { handbackOf } = await import('./handback/handback.js');
    return handbackOf(
      asked.session.read(document).plan,
      { ...document.decisions, ...request },
      () => asked.stopped(),
      asked.onProgress,
    );
  },
  async price(asked, document, request) {
    const { prices, holidays } = document;
    if (!prices) throw new RangeError('the plan has no price book');
    const { priceOf } = await import('./price.js');
    return priceOf(
      { ...asked.session.read(document), prices },
      { ...(holidays && { holidays }), ...request },
    );
  },
  async account(_, document, request) {
    const { accountOf } = await import('./account.js');
    return accountOf(document, request);
  },
  async options(asked, document, request) {
    const { optionsOf } = await import('./options/options.js');
    const found = optionsOf(document, request, {
      clock,
      stopped: () => asked.stopped(),
      onProgress: (progress) => asked.onProgress?.(progress),
    });
    if (!found) throw new DOMException('the options were stopped', 'AbortError');
    return found;
  },
  async book(asked, document, request) {
    const { nameOf } = await import('./plan-out/plan-name.js');
    const { planNamed } = await import('./report/plan-named.js');
    const { bookedFor, bookOf } = await import('./book.js');
    const { agreed, zone, name } = document;
    const about = bookedFor(name, agreed?.now ? planNamed(nameOf(agreed.now), zone) : null);
    return bookOf(asked.session.read(document).plan, name, request, document.booking, about);
  },
  async people(asked, document, request) {
    const { peopleOf } = await import('./site/people.js');
    return peopleOf(asked.session.read(document), request);
  },
  async noise(asked, document, request) {
    const { noiseOf } = await import('./site/noise.js');
    return noiseOf(asked.session.read(document), request);
  },
  async lifting(asked, document, request) {
    const { liftingOf } = await import('./site/lifting.js');
    return liftingOf(asked.session.read(document), request);
  },
  async compareRules(asked, document, rules) {
    const { ruleChange } = await import('./rule-change/rule-change.js');
    return ruleChange(document, rules, asked.onProgress);
  },
  async checkFits(asked, document, fits) {
    const { FitCheck } = await import('../verify/index.js');
    const check = new FitCheck(asked.session.read(document).plan);
    return fits.map((fit) => check.faultsOf(fit));
  },
};

/** How often a search tells of its way, and of a better answer, in milliseconds. */
const TELL_MS = 100;
const TELL_BETTER_MS = 400;

/** The options of a search with the clock, the way to stop it and the telling of progress. */
function searching(options: AllocateOptions, asked: Asked): SearchOptions {
  const { onProgress } = asked;
  if (!onProgress) return { ...options, clock, shouldStop: () => asked.stopped() };

  let toldAt = clock();
  let part = 0;
  let betterAt = -Infinity;
  let better: (() => Allocation) | undefined;
  const report = (): void => {
    const now = clock();
    const ready = now - betterAt >= TELL_BETTER_MS ? better : undefined;
    if (!ready && now - toldAt < TELL_MS) return;
    toldAt = now;
    // Let go of first: working the answer out asks whether to stop, and so comes back here.
    if (ready) [betterAt, better] = [now, undefined];
    const best = ready?.();
    const progress: SearchProgress = {
      done: part,
      total: 1,
      ...(best && { best }),
    };
    onProgress(progress);
  };
  return {
    ...options,
    clock,
    shouldStop: (done) => {
      part = done;
      report();
      return asked.stopped();
    },
    onBetter: (soFar) => {
      better = soFar;
      report();
    },
  };
}
