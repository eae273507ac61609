import type { ReactiveControllerHost } from 'lit';
import type { LedgerAskEvent } from '../ledger/ledger-ask-event.js';
import type { Explanation } from '../why/explanation.js';

/** How a picked thing is explained: asked anew each time the figures change. */
type Teller = () => Explanation | null;

/** What is picked on the desk, and what the panel says of it. */
export class Picked {
  /** Id of the picked window; empty before there is one. */
  window = '';
  fit: { readonly package: string; readonly window: string } | null = null;
  /** The figure of the ledger that was asked about. */
  row: LedgerAskEvent['row'] | null = null;
  /** Index of the picked piece of work in the plan's placements. */
  placement: number | null = null;
  told: Explanation | null = null;

  readonly #host: ReactiveControllerHost;
  #teller: Teller = () => null;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  /** Changes what is picked. */
  pick(change: Partial<Pick<Picked, 'window' | 'fit' | 'row' | 'placement'>>): void {
    Object.assign(this, change);
    this.#host.requestUpdate();
  }

  /** Explains something, now and after each change of the figures, until something else is explained. */
  tell(teller: Teller): void {
    this.#teller = teller;
    this.retell();
  }

  /** Explains the same thing from the figures as they are now. */
  retell(): void {
    this.told = this.#teller();
    this.#host.requestUpdate();
  }

  /** Nothing is explained. */
  hush(): void {
    this.row = null;
    this.tell(() => null);
  }
}
