/** A reader wants the milestones in a diary. The listener saves the text as a file. */
export class CalendarSaveEvent extends Event {
  static readonly type = 'possession-calendar-save';
  /** An iCalendar file (RFC 5545). */
  readonly text: string;

  constructor(text: string) {
    super(CalendarSaveEvent.type, { bubbles: true, composed: true });
    this.text = text;
  }
}

declare global {
  interface HTMLElementEventMap {
    [CalendarSaveEvent.type]: CalendarSaveEvent;
  }
}
