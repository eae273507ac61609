import type { ReactiveControllerHost } from 'lit';
import type { LedgerAskEvent } from '../../ledger/ledger-ask-event.js';
import { spokenNow } from '../../shared/language.js';
import type { Explanation } from '../../why/explanation.js';
import { missed } from '../../shared/late-words.js';
import { wordsOf } from '../../shared/words-of.js';
import type { Trouble } from '../worded-host.js';
import type * as explanations from './explanations.js';

/** All that can be said of figures. */
export type Explanations = typeof explanations;

/** How a picked thing is explained: asked anew each time the figures change. */
type Explainer = (why: Explanations) => Explanation | null;

interface Host extends ReactiveControllerHost {
  complain(trouble: Trouble): void;
}

/** Nothing is explained. */
const nothing: Explainer = () => null;

let loaded: Explanations | undefined;

/** An explanation, in the languages that it is in. */
interface Made {
  readonly words: string;
  readonly figures: string;
  readonly explanation: Explanation | null;
}

/** What is picked on the desk, and what the panel says of it. */
export class Picked {
  /** Id of the picked window; empty before there is one. */
  window = '';
  fit: { readonly package: string; readonly window: string } | null = null;
  /** The figure of the ledger that was asked about. */
  row: LedgerAskEvent['row'] | null = null;
  /** Index of the picked piece of work in the plan's placements. */
  placement: number | null = null;

  readonly #host: Host;
  #explainer = nothing;
  #made: Made | undefined;

  constructor(host: Host) {
    this.#host = host;
  }

  /** Changes what is picked. */
  pick(change: Partial<Pick<Picked, 'window' | 'fit' | 'row' | 'placement'>>): void {
    Object.assign(this, change);
    this.#host.requestUpdate();
  }

  /** Explains something, now and after each change of the figures, until something else is explained. */
  explain(teller: Explainer): void {
    this.#explainer = teller;
    this.refresh();
  }

  /** Explains the same thing from the figures as they are now. */
  refresh(): void {
    this.#made = undefined;
    this.#host.requestUpdate();
    if (loaded) return;
    import('./explanations.js').then(
      (why) => {
        loaded = why;
        this.#host.requestUpdate();
      },
      (error: unknown) => {
        if (this.#explainer !== nothing)
          this.#host.complain((words) => words.notDone(wordsOf(error)));
      },
    );
  }

  /** What the panel says, in the language in force. */
  get explanation(): Explanation | null {
    if (!loaded) return null;
    const { words, figures } = spokenNow();
    if (this.#made?.words !== words || this.#made.figures !== figures) {
      const before = missed;
      const made = this.#explainer(loaded);
      // Words that were not there yet come with the next drawing.
      if (missed !== before) return made;
      this.#made = { words, figures, explanation: made && { lang: words, ...made } };
    }
    return this.#made.explanation;
  }

  /** Nothing is explained. */
  close(): void {
    this.row = null;
    this.explain(nothing);
  }
}
