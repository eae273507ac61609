import type { Site } from '../../src/model/index.js';

/** A reader changed, or took on, limits of the site. The listener puts `value` into the plan's `site` under `part`. */
export class LimitsChangeEvent<Part extends keyof Site = keyof Site> extends Event {
  static readonly type = 'possession-limits-change';
  readonly part: Part;
  readonly value: NonNullable<Site[Part]>;

  constructor(part: Part, value: NonNullable<Site[Part]>) {
    super(LimitsChangeEvent.type, { bubbles: true, composed: true });
    this.part = part;
    this.value = value;
  }
}

declare global {
  interface HTMLElementEventMap {
    [LimitsChangeEvent.type]: LimitsChangeEvent;
  }
}
