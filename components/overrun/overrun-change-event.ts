/** A reader asks what another overrun costs. The listener works it out and gives the answer back. */
export class OverrunChangeEvent extends Event {
  static readonly type = 'possession-overrun-change';
  /** Whole minutes from 0. */
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
