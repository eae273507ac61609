/** A reader said how many of a day's trains a window hits. The listener keeps it and asks for the dates anew. */
export class ShareChangeEvent extends Event {
  static readonly type = 'possession-share-change';
  readonly window: string;
  /** 0 to 100. */
  readonly sharePercent: number;

  constructor(window: string, sharePercent: number) {
    super(ShareChangeEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.sharePercent = sharePercent;
  }
}

declare global {
  interface HTMLElementEventMap {
    [ShareChangeEvent.type]: ShareChangeEvent;
  }
}
