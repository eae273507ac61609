/** A reader asks to compare other overruns side by side. */
export class OverrunCompareEvent extends Event {
  static readonly type = 'possession-overrun-compare';
  /** Whole minutes, in the order of the columns. */
  readonly minutes: readonly number[];

  constructor(minutes: readonly number[]) {
    super(OverrunCompareEvent.type, { bubbles: true, composed: true });
    this.minutes = minutes;
  }
}

declare global {
  interface HTMLElementEventMap {
    [OverrunCompareEvent.type]: OverrunCompareEvent;
  }
}
