import type { Report } from '../../src/engine/index.js';

/** A reader wants a report of what is on show. */
export class ReportAskEvent extends Event {
  static readonly type = 'possession-report-ask';
  constructor() {
    super(ReportAskEvent.type, { bubbles: true, composed: true });
  }
}

/** A reader is done with a report. */
export class ReportCloseEvent extends Event {
  static readonly type = 'possession-report-close';
  constructor() {
    super(ReportCloseEvent.type, { bubbles: true, composed: true });
  }
}

/** A reader wants a report as a file. The listener writes it. */
export class ReportSaveEvent extends Event {
  static readonly type = 'possession-report-save';
  readonly report: Report;
  readonly format: 'csv' | 'xlsx';

  constructor(report: Report, format: 'csv' | 'xlsx') {
    super(ReportSaveEvent.type, { bubbles: true, composed: true });
    this.report = report;
    this.format = format;
  }
}

declare global {
  interface HTMLElementEventMap {
    [ReportAskEvent.type]: ReportAskEvent;
    [ReportCloseEvent.type]: ReportCloseEvent;
    [ReportSaveEvent.type]: ReportSaveEvent;
  }
}
