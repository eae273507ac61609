import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Engine, RuleChange } from '../../src/engine/index.js';
import type { PlanDocument, RuleSet } from '../../src/model/index.js';
import { wordsOf } from './words-of.js';

/** What a change of the rules does to windows and fits, against the rules it is held up to. */
export class RuleTrial implements ReactiveController {
  /** The rules before the changes; null before any. */
  before: RuleSet | null = null;
  change: RuleChange | null = null;
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

  /** Holds later changes up to these rules. */
  startFrom(rules: RuleSet | null): void {
    this.#running?.abort();
    this.busy = false;
    this.before = rules;
    this.change = null;
    this.#host.requestUpdate();
  }

  /** Asks what the rules of a document do; windows are told of before verdicts. */
  async ask(engine: Engine, document: PlanDocument): Promise<void> {
    const { before } = this;
    if (!before || before === document.rules) return;
    this.#running?.abort();
    const running = (this.#running = new AbortController());
    this.busy = true;
    this.trouble = '';
    try {
      const change = await engine.compareRules(
        { ...document, rules: before },
        document.rules,
        running.signal,
        (soFar) => {
          if (running.signal.aborted) return;
          this.change = soFar;
          this.#host.requestUpdate();
        },
      );
      if (running.signal.aborted) return;
      this.change = change;
    } catch (error) {
      if (running.signal.aborted) return;
      this.trouble = `The change of the rules was not weighed: ${wordsOf(error)}`;
    }
    this.busy = false;
    this.#host.requestUpdate();
  }
}
