/** A person chose which calculated columns are shown, and in what order. */
export class ResultsChoiceEvent extends Event {
  static readonly type = 'possession-results-choice';
  /** Ids of the shown result columns, in order. */
  readonly shown: readonly string[];

  constructor(shown: readonly string[]) {
    super(ResultsChoiceEvent.type, { bubbles: true, composed: true });
    this.shown = shown;
  }
}

declare global {
  interface HTMLElementEventMap {
    [ResultsChoiceEvent.type]: ResultsChoiceEvent;
  }
}
