/** A reader picks a window. */
export class WindowSelectEvent extends Event {
  static readonly type = 'possession-window-select';
  readonly window: string;

  constructor(window: string) {
    super(WindowSelectEvent.type, { bubbles: true, composed: true });
    this.window = window;
  }
}

declare global {
  interface HTMLElementEventMap {
    [WindowSelectEvent.type]: WindowSelectEvent;
  }
}
