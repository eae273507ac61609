import type { OwnOption } from '../../src/engine/index.js';

/** A reader adds or removes an option of their own. The listener stores them and calculates the options again. */
export class OwnOptionsChangeEvent extends Event {
  static readonly type = 'possession-own-options-change';
  /** All own options including this change, as in `OptionsRequest.own`. */
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
