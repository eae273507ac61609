import type { RuleSet } from '../../src/model/index.js';

/** A person changed the rules. Sent for valid edits only; undoing is the host's. */
export class RulesChangeEvent extends Event {
  static readonly type = 'possession-rules-change';
  readonly rules: RuleSet;
  /** What was done, for a list of edits: `Margin: 45 to 60`. */
  readonly label: string;

  constructor(rules: RuleSet, label: string) {
    super(RulesChangeEvent.type, { bubbles: true, composed: true });
    this.rules = rules;
    this.label = label;
  }
}

declare global {
  interface HTMLElementEventMap {
    [RulesChangeEvent.type]: RulesChangeEvent;
  }
}
