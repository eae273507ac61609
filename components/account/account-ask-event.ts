import type { AccountRequest } from '../../src/engine/index.js';

/** A person entered a record of what happened. The listener calculates the account and sets `answer`. */
export class AccountAskEvent extends Event {
  static readonly type = 'possession-account-ask';
  /** All entries so far, including this change. */
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
