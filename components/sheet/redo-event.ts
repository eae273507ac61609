/** A person asks to redo a change; cancelled like `possession-undo`. */
export class RedoEvent extends Event {
  static readonly type = 'possession-redo';

  constructor() {
    super(RedoEvent.type, { bubbles: true, composed: true, cancelable: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    [RedoEvent.type]: RedoEvent;
  }
}
