/** A reader asks for the cost of another overrun. The listener calculates it and sets `answer`. */
export class OverrunChangeEvent extends Event {
  static readonly type = 'possession-overrun-change';
  /** Whole minutes, 0 or more. */
  readonly overrunMinutes: number;

  constructor(overrunMinutes: number) {
    super(OverrunChangeEvent.type, { bubbles: true, composed: true });
    this.overrunMinutes = overrunMinutes;
  }
}

declare global {
  interface HTMLElementEventMap {
    [OverrunChangeEvent.type]: OverrunChangeEvent;
  }
}
