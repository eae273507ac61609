/** A reader picks a package against a window. */
export class FitSelectEvent extends Event {
  static readonly type = 'possession-fit-select';
  readonly package: string;
  readonly window: string;

  constructor(pack: string, window: string) {
    super(FitSelectEvent.type, { bubbles: true, composed: true });
    this.package = pack;
    this.window = window;
  }
}

declare global {
  interface HTMLElementEventMap {
    [FitSelectEvent.type]: FitSelectEvent;
  }
}
