/**
 * A person asks to take the last change back. Unless it is cancelled the sheet takes its own last change back; who
 * keeps the history of a whole plan cancels it and sets `table`.
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
