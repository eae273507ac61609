import type { Engine, RuleChange } from '../../../src/engine/index.js';
import type { PlanDocument, RuleSet } from '../../../src/model/index.js';
import type { WordedHost } from '../worded-host.js';
import { TaskController } from '../results/task-controller.js';

/** What a change of the rules does to windows and fits, against the rules it is held up to. */
export class RuleTrial extends TaskController {
  /** The rules before the changes; null before any. */
  before: RuleSet | null = null;
  change: RuleChange | null = null;

  constructor(host: WordedHost) {
    super(host, 'rules');
  }

  /** Holds later changes up to these rules. */
  startFrom(rules: RuleSet | null): void {
    this.latest.stop();
    this.before = rules;
    this.change = null;
    this.host.requestUpdate();
  }

  /** Asks what the rules of a document do; windows are told of before verdicts. */
  async ask(engine: Engine, document: PlanDocument): Promise<void> {
    const { before } = this;
    if (!before || before === document.rules) return;
    await this.latest.ask(
      (signal) =>
        engine.compareRules({ ...document, rules: before }, document.rules, signal, (soFar) => {
          if (signal.aborted) return;
          this.change = soFar;
          this.host.requestUpdate();
        }),
      (change) => (this.change = change),
    );
  }
}
