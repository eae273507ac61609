import type { Engine, Results } from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import type { WordedHost } from '../worded-host.js';
import { TaskController } from './task-controller.js';

/** Everything that follows from the document without a search; the last document asked about wins. */
export class ResultsController extends TaskController {
  results: Results | null = null;

  constructor(host: WordedHost) {
    super(host, 'figures');
  }

  /** Works the figures out. True once they are those of this document; false when it failed or another came after. */
  async ask(engine: Engine, document: PlanDocument): Promise<boolean> {
    const { done } = await this.latest.ask(
      (signal) =>
        engine.recompute(document, signal, (outline) => {
          // A first picture; later the figures shown stay until the new ones are all there.
          if (signal.aborted || this.results) return;
          this.results = outline;
          this.host.requestUpdate();
        }),
      (results) => (this.results = results),
    );
    return done;
  }
}
