/** A reader picks a placed piece of work. */
export class PlacementSelectEvent extends Event {
  static readonly type = 'possession-placement-select';
  /** Index in the allocation's placements. */
  readonly index: number;

  constructor(index: number) {
    super(PlacementSelectEvent.type, { bubbles: true, composed: true });
    this.index = index;
  }
}

declare global {
  interface HTMLElementEventMap {
    [PlacementSelectEvent.type]: PlacementSelectEvent;
  }
}
