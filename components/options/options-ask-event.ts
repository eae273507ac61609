/** What a reader wants varied. */
export interface OptionsAsked {
  /** Minutes to extend the window by. */
  readonly longerMinutes: number;
  /** Days after the window at which its second half would be booked. */
  readonly splitDaysLater: number;
  /** The repeated work in which to stop between units; empty: the engine chooses. */
  readonly activity: string;
}

/** A reader asks for the options of the window. The listener calculates them and sets `answer`. */
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
