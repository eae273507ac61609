/** A reader picks a repeated work. */
export class UnitsSelectEvent extends Event {
  static readonly type = 'possession-units-select';
  /** Id of the activity. */
  readonly activity: string;

  constructor(activity: string) {
    super(UnitsSelectEvent.type, { bubbles: true, composed: true });
    this.activity = activity;
  }
}

declare global {
  interface HTMLElementEventMap {
    [UnitsSelectEvent.type]: UnitsSelectEvent;
  }
}
