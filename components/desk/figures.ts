import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Engine, Results } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { wordsOf } from './words-of.js';

/** Everything that follows from the document without a search; the last document asked about wins. */
export class Figures implements ReactiveController {
  results: Results | null = null;
  busy = false;
  trouble = '';

  readonly #host: ReactiveControllerHost;
  #running: AbortController | undefined;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#running?.abort();
  }

  /** Works the figures out. True once they are those of this document; false when it failed or another came after. */
  async ask(engine: Engine, document: PlanDocument): Promise<boolean> {
    this.#running?.abort();
    const running = (this.#running = new AbortController());
    this.busy = true;
    this.trouble = '';
    this.#host.requestUpdate();
    let known = false;
    try {
      const results = await engine.recompute(document, running.signal, (outline) => {
        // A first picture; later the figures shown stay until the new ones are all there.
        if (running.signal.aborted || this.results) return;
        this.results = outline;
        this.#host.requestUpdate();
      });
      if (running.signal.aborted) return false;
      this.results = results;
      known = true;
    } catch (error) {
      if (running.signal.aborted) return false;
      this.trouble = `The figures could not be worked out: ${wordsOf(error)}`;
    }
    this.busy = false;
    this.#host.requestUpdate();
    return known;
  }
}
