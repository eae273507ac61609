import type { Place } from './explanation.js';

/** A reader asks to be taken to where a number comes from. */
export class WhyLinkEvent extends Event {
  static readonly type = 'possession-why-link';
  readonly place: Place;

  constructor(place: Place) {
    super(WhyLinkEvent.type, { bubbles: true, composed: true });
    this.place = place;
  }
}

declare global {
  interface HTMLElementEventMap {
    [WhyLinkEvent.type]: WhyLinkEvent;
  }
}
