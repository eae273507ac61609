/** A person chose which worked-out columns stand beside the rows, and in what order. */
export class ResultsChoiceEvent extends Event {
  static readonly type = 'possession-results-choice';
  /** Ids of the result columns shown, in order. */
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
