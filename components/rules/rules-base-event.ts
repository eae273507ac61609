/** A person wants later rules compared with those of now, which become the rules before. */
export class RulesBaseEvent extends Event {
  static readonly type = 'possession-rules-base';

  constructor() {
    super(RulesBaseEvent.type, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    [RulesBaseEvent.type]: RulesBaseEvent;
  }
}
