/** What a reader wants varied. */
export interface OptionsAsked {
  /** Minutes by which the longer window is longer. */
  readonly longerMinutes: number;
  /** Days after the window at which its second half would be booked. */
  readonly splitDaysLater: number;
  /** The repeated work to stop between units of; empty: the engine chooses. */
  readonly activity: string;
}

/** A reader asks for the options of the window. The listener works them out and gives the answer back. */
export class OptionsAskEvent extends Event {
  static readonly type = 'possession-options-ask';
  readonly asked: OptionsAsked;

  constructor(asked: OptionsAsked) {
    super(OptionsAskEvent.type, { bubbles: true, composed: true });
    this.asked = asked;
  }
}

declare global {
  interface HTMLElementEventMap {
    [OptionsAskEvent.type]: OptionsAskEvent;
  }
}
