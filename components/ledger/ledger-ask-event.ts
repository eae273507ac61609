/** A reader asks where a figure of a ledger comes from. */
export class LedgerAskEvent extends Event {
  static readonly type = 'possession-ledger-ask';
  readonly window: string;
  /** Index of the ledger row; `gross` and `usable` are the sums. */
  readonly row: number | 'gross' | 'usable';

  constructor(window: string, row: number | 'gross' | 'usable') {
    super(LedgerAskEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.row = row;
  }
}

declare global {
  interface HTMLElementEventMap {
    [LedgerAskEvent.type]: LedgerAskEvent;
  }
}
