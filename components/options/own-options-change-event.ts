import type { OwnOption } from '../../src/engine/index.js';

/** A reader makes an option of their own, or takes one out. The listener keeps them and asks for the options anew. */
export class OwnOptionsChangeEvent extends Event {
  static readonly type = 'possession-own-options-change';
  /** All of them, the change included, as `OptionsRequest.own` has them. */
  readonly own: readonly OwnOption[];

  constructor(own: readonly OwnOption[]) {
    super(OwnOptionsChangeEvent.type, { bubbles: true, composed: true });
    this.own = own;
  }
}

declare global {
  interface HTMLElementEventMap {
    [OwnOptionsChangeEvent.type]: OwnOptionsChangeEvent;
  }
}
