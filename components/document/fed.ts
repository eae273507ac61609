import { ContextEvent } from '@lit/context';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { documentContext, type DocumentState } from './document-state.js';

const PROVIDER = 'possession-document';

// The provider's tag may be registered after this one's, in the page or by another script. One promise for all: what
// waits by itself for a tag that never comes is held for as long as the page.
const waiting = new Set<() => void>();
let announced: Promise<void> | undefined;

function askAll(): void {
  for (const ask of waiting) ask();
  waiting.clear();
}

/**
 * Sets an element's properties from the `<possession-document>` it stands in. Outside one, and within another element
 * that already feeds it, nothing happens.
 */
export class Fed implements ReactiveController {
  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #take: (state: DocumentState) => void;
  #leave: (() => void) | undefined;

  constructor(host: ReactiveControllerHost & HTMLElement, take: (state: DocumentState) => void) {
    this.#host = host;
    this.#take = take;
    host.addController(this);
  }

  hostConnected(): void {
    this.#ask();
    if (customElements.get(PROVIDER)) return;
    waiting.add(this.#ask);
    announced ??= customElements.whenDefined(PROVIDER).then(askAll);
  }

  hostDisconnected(): void {
    waiting.delete(this.#ask);
    this.#leave?.();
    this.#leave = undefined;
  }

  readonly #ask = (): void => {
    if (this.#leave) return;
    const request = new ContextEvent(
      documentContext,
      this.#host,
      (state, leave) => {
        // Given by another provider in between, or long after the element has left.
        if (this.#leave && leave && this.#leave !== leave) this.#leave();
        this.#leave = leave;
        if (state && this.#host.isConnected) this.#take(state);
      },
      true,
    );
    this.#host.dispatchEvent(request);
  };
}
