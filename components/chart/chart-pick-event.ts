/** A reader picked a point of a chart, by click or with the Enter key. */
export class ChartPickEvent extends Event {
  static readonly type = 'possession-chart-pick';
  /** Place of the point in `ChartShown.points`. */
  readonly index: number;

  constructor(index: number) {
    super(ChartPickEvent.type, { bubbles: true, composed: true });
    this.index = index;
  }
}

declare global {
  interface HTMLElementEventMap {
    [ChartPickEvent.type]: ChartPickEvent;
  }
}
