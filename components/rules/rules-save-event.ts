/** Someone wants a part of the rules as a file. The listener saves the text. */
export class RulesSaveEvent extends Event {
  static readonly type = 'possession-rules-save';
  /** Name for the file: `events.csv`. */
  readonly name: string;
  readonly text: string;
  /** Media type of the text. */
  readonly mediaType: string;

  constructor(name: string, text: string, mediaType: string) {
    super(RulesSaveEvent.type, { bubbles: true, composed: true });
    this.name = name;
    this.text = text;
    this.mediaType = mediaType;
  }
}

declare global {
  interface HTMLElementEventMap {
    'possession-rules-save': RulesSaveEvent;
  }
}
