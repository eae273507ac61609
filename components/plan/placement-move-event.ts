/** A reader drags a placed piece of work to another window. */
export class PlacementMoveEvent extends Event {
  static readonly type = 'possession-placement-move';
  /** Index in the allocation's placements. */
  readonly index: number;
  /** Id of the window it was dropped in. */
  readonly window: string;

  constructor(index: number, window: string) {
    super(PlacementMoveEvent.type, { bubbles: true, composed: true });
    this.index = index;
    this.window = window;
  }
}

declare global {
  interface HTMLElementEventMap {
    [PlacementMoveEvent.type]: PlacementMoveEvent;
  }
}
