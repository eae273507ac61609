/** When a resource leaves, as set by a reader; null: by its planned work. */
export type OnSiteLeaves = 'after its work' | 'at handback' | null;

/** A reader sets when a resource of the window leaves the site. */
export class OnSiteChangeEvent extends Event {
  static readonly type = 'possession-on-site-change';
  readonly window: string;
  readonly resource: string;
  readonly leaves: OnSiteLeaves;

  constructor(window: string, resource: string, leaves: OnSiteLeaves) {
    super(OnSiteChangeEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.resource = resource;
    this.leaves = leaves;
  }
}

declare global {
  interface HTMLElementEventMap {
    [OnSiteChangeEvent.type]: OnSiteChangeEvent;
  }
}
