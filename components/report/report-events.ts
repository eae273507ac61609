import type { Report } from '../../src/engine/index.js';

/** Where a report goes: onto the screen to be read and printed, or into a file. */
export type ReportFormat = 'screen' | 'csv' | 'xlsx';

/** A reader wants a report of what is on show. */
export class ReportAskEvent extends Event {
  static readonly type = 'possession-report-ask';
  readonly format: ReportFormat;

  constructor(format: ReportFormat = 'screen') {
    super(ReportAskEvent.type, { bubbles: true, composed: true });
    this.format = format;
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
