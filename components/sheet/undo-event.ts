/**
 * A person asks to undo the last change. Unless cancelled, the sheet undoes its own last change; a host that keeps the
 * history of the plan cancels the event and sets `table`.
 */
export class UndoEvent extends Event {
  static readonly type = 'possession-undo';

  constructor() {
    super(UndoEvent.type, { bubbles: true, composed: true, cancelable: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    [UndoEvent.type]: UndoEvent;
  }
}
