/** A reader no longer wants the options that are being worked out. */
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
