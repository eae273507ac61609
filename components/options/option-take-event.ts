import type { PricedOption } from '../../src/engine/index.js';

/** A reader takes an option into the plan: its edit of the document and its work plan. */
export class OptionTakeEvent extends Event {
  static readonly type = 'possession-option-take';
  readonly option: PricedOption;

  constructor(option: PricedOption) {
    super(OptionTakeEvent.type, { bubbles: true, composed: true });
    this.option = option;
  }
}

declare global {
  interface HTMLElementEventMap {
    [OptionTakeEvent.type]: OptionTakeEvent;
  }
}
