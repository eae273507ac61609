import { html, type TemplateResult } from 'lit';
import type { Report, ReportBasis } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { ReportSaveEvent } from '../report/report-events.js';
import type { Desk } from './desk-parts.js';
import { saveBytes } from './save-file.js';
import { wordsOf } from './words-of.js';

/** The report of what the cost view shows; its words are loaded when the first is asked for. */
export async function makeReport(desk: Desk, window: AccessWindow | null): Promise<void> {
  const { document, outlooks, planning, costPart } = desk;
  if (!window || !document?.prices) return;
  const basis: ReportBasis = {
    window,
    document: document.name,
    placements: planning.allocation?.placements,
    prices: document.prices,
    madeAt: desk.moment(),
  };
  await import('../report/define.js');
  const { price, options, account } = outlooks;
  let report: Report | null = null;
  if (costPart === 'options' && options) {
    report = (await import('../../src/engine/report/options-report.js')).optionsReport(
      options,
      basis,
    );
  } else if (costPart === 'account' && account) {
    report = (await import('../../src/engine/report/account-report.js')).accountReport(
      account,
      basis,
    );
  } else if (costPart === 'overrun' && price) {
    report = (await import('../../src/engine/report/overrun-report.js')).overrunReport(
      price,
      basis,
    );
  }
  outlooks.showReport(report);
}

/** The report in place of the view it was made from. */
export function reportView(desk: Desk, report: Report): TemplateResult {
  return html`<possession-report
    .report=${report}
    @possession-report-close=${() => desk.outlooks.showReport(null)}
    @possession-report-save=${(event: ReportSaveEvent) => void saveReport(desk, event)}
  ></possession-report>`;
}

async function saveReport(desk: Desk, { report, format }: ReportSaveEvent): Promise<void> {
  try {
    const { tableOfReport } = await import('../../src/engine/report/report.js');
    const table = { name: report.fileName, ...tableOfReport(report) };
    const file = await desk.engine?.exportTable(table, format);
    if (file) saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(`The report could not be written: ${wordsOf(error)}`);
  }
}
