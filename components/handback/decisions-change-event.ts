import type { Decisions } from '../../src/model/index.js';

/** Someone changes what must be decided during shifts, or what cannot be undone. The listener keeps it in the plan. */
export class DecisionsChangeEvent extends Event {
  static readonly type = 'possession-decisions-change';
  readonly decisions: Decisions;

  constructor(decisions: Decisions) {
    super(DecisionsChangeEvent.type, { bubbles: true, composed: true });
    this.decisions = decisions;
  }
}

declare global {
  interface HTMLElementEventMap {
    [DecisionsChangeEvent.type]: DecisionsChangeEvent;
  }
}
