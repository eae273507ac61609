import type { AccountRequest } from '../../src/engine/index.js';

/** A person entered something of what happened. The listener works the account out and gives the answer back. */
export class AccountAskEvent extends Event {
  static readonly type = 'possession-account-ask';
  /** All that is entered so far, the change included. */
  readonly request: AccountRequest;

  constructor(request: AccountRequest) {
    super(AccountAskEvent.type, { bubbles: true, composed: true });
    this.request = request;
  }
}

declare global {
  interface HTMLElementEventMap {
    [AccountAskEvent.type]: AccountAskEvent;
  }
}
