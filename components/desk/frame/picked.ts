import type { ReactiveControllerHost } from 'lit';
import type { LedgerAskEvent } from '../../ledger/ledger-ask-event.js';
import type { Explanation } from '../../why/explanation.js';

/** How a picked thing is explained: asked anew each time the figures change. */
type Explainer = () => Explanation | null;

/** What is picked on the desk, and what the panel says of it. */
export class Picked {
  /** Id of the picked window; empty before there is one. */
  window = '';
  fit: { readonly package: string; readonly window: string } | null = null;
  /** The figure of the ledger that was asked about. */
  row: LedgerAskEvent['row'] | null = null;
  /** Index of the picked piece of work in the plan's placements. */
  placement: number | null = null;
  explanation: Explanation | null = null;

  readonly #host: ReactiveControllerHost;
  #explainer: Explainer = () => null;

  constructor(host: ReactiveControllerHost) {
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
    this.explanation = this.#explainer();
    this.#host.requestUpdate();
  }

  /** Nothing is explained. */
  close(): void {
    this.row = null;
    this.explain(() => null);
  }
}
