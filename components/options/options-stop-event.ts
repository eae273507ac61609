/** A reader cancels the calculation of options. */
export class OptionsStopEvent extends Event {
  static readonly type = 'possession-options-stop';

  constructor() {
    super(OptionsStopEvent.type, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    [OptionsStopEvent.type]: OptionsStopEvent;
  }
}
