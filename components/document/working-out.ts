import type { Allocation, Engine, HandbackResult, Results } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import type { Wanted } from './document-state.js';

/** Seed and number of runs of the simulation: equal inputs give equal figures, and those of the desk. */
const SEED = 1;
const RUNS = 10_000;

/** What is known of a document so far. */
export interface WorkedOut {
  /** The results; before the first ones, all of them but the verdicts, which take longest. */
  readonly outline: Results | null;
  readonly results: Results | null;
  readonly plan: Allocation | null;
  /** Null until they are asked for and known. */
  readonly handbacks: readonly HandbackResult[] | null;
}

export const nothingYet: WorkedOut = {
  outline: null,
  results: null,
  plan: null,
  handbacks: null,
};

/**
 * Works a document out step by step, and tells after each. Figures come first; a plan and its handback only where an
 * element has asked for them. What a search found for the document before is never told of the one after.
 */
export class WorkingOut {
  readonly #engine: () => Engine;
  readonly #notify: (known: WorkedOut) => void;
  readonly #failed: (error: unknown) => void;
  readonly #wanted = new Set<Wanted>();
  #document: PlanDocument | undefined;
  #known = nothingYet;
  #running: AbortController | undefined;

  constructor(
    engine: () => Engine,
    tell: (known: WorkedOut) => void,
    failed: (error: unknown) => void,
  ) {
    this.#engine = engine;
    this.#notify = tell;
    this.#failed = failed;
  }

  /** Takes another document; the figures of the one before stay until its own are there. */
  take(document: PlanDocument): void {
    this.#document = document;
    const { outline, results } = this.#known;
    this.#known = { ...nothingYet, outline, results };
    void this.#run(true);
  }

  want(what: Wanted): void {
    const before = this.#wanted.size;
    this.#wanted.add(what);
    if (what === 'handback') this.#wanted.add('plan');
    if (this.#wanted.size > before && this.#document) void this.#run(false);
  }

  stop(): void {
    this.#running?.abort();
  }

  async #run(changed: boolean): Promise<void> {
    this.#running?.abort();
    const { signal } = (this.#running = new AbortController());
    const document = this.#document!;
    const engine = this.#engine();
    const learn = (more: Partial<WorkedOut>): void => {
      signal.throwIfAborted();
      this.#known = { ...this.#known, ...more };
      this.#notify(this.#known);
    };
    try {
      if (changed || !this.#known.results) {
        const results = await engine.recompute(document, signal, (outline) => {
          // A first picture; later the figures shown stay until the new ones are all there.
          if (!signal.aborted && !this.#known.results) learn({ outline });
        });
        learn({ outline: results, results });
      }
      if (this.#wanted.has('plan') && !this.#known.plan)
        learn({ plan: await planOf(engine, document, signal) });
      const { placements } = this.#known.plan ?? {};
      if (this.#wanted.has('handback') && placements && !this.#known.handbacks)
        learn({
          handbacks: await engine.handback(
            document,
            { placements, seed: SEED, runs: RUNS },
            signal,
          ),
        });
    } catch (error) {
      if (!signal.aborted) this.#failed(error);
    }
  }
}

/** The agreed plan of the document as it stands; where none is agreed, a proposal. */
async function planOf(
  engine: Engine,
  document: PlanDocument,
  signal: AbortSignal,
): Promise<Allocation> {
  const agreed = document.agreed?.now;
  if (!agreed) return engine.allocate(document, {}, signal);
  return (await engine.assess(document, agreed.placements, signal)).allocation;
}
