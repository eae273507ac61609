import { html, type TemplateResult } from 'lit';
import type { Report, ReportBasis, ReportPlan } from '../../../src/engine/index.js';
import type { AccessWindow } from '../../../src/model/index.js';
import type { ReportFormat, ReportSaveEvent } from '../../report/report-events.js';
import type { Desk } from '../desk-parts.js';
import { saveBytes } from '../files/save-file.js';
import { loadSentences, saidText } from '../../shared/said.js';
import { wordsOf } from '../../shared/words-of.js';

/** The report of what the cost view shows, on the screen or as a file; its words are loaded when the first is asked for. */
export async function makeReport(
  desk: Desk,
  window: AccessWindow | null,
  format: ReportFormat,
): Promise<void> {
  const report = await reportOf(desk, window);
  if (!report) return;
  if (format !== 'screen') return saveReport(desk, { report, format });
  await import('../../report/define.js');
  desk.outlooks.showReport(report);
}

async function reportOf(desk: Desk, window: AccessWindow | null): Promise<Report | null> {
  const { document, outlooks, costPart, engine, planning } = desk;
  if (!window || !document?.prices) return null;
  // A plan may have been found since the sum on the screen was asked for: a report names the plan that its figures rest on.
  if (costPart === 'overrun' && engine && outlooks.pricedWith !== planning.allocation)
    await outlooks.askPrice(engine, document, window.id, planning.allocation);
  const basis: ReportBasis = {
    window,
    document: document.name,
    plan: reportPlan(desk),
    prices: document.prices,
    madeAt: desk.moment(),
  };
  const { price, options, account } = outlooks;
  if (costPart === 'options' && options?.window === window.id)
    return (await import('../../../src/engine/report/options-report.js')).optionsReport(
      options,
      basis,
    );
  if (costPart === 'account' && account?.window === window.id)
    return (await import('../../../src/engine/report/account-report.js')).accountReport(
      account,
      basis,
    );
  if (costPart === 'overrun' && price?.at.window === window.id)
    return (await import('../../../src/engine/report/overrun-report.js')).overrunReport(
      price,
      basis,
    );
  return null;
}

/** The plan that the figures of money speak of: the agreed one, or while none is the proposal. */
function reportPlan({ document, planning }: Desk): ReportPlan | undefined {
  const { agreed, proposal, broken } = planning;
  const now = document?.agreed?.now;
  if (agreed && now)
    return {
      placements: now.placements,
      standing: 'agreed',
      agreed: now,
      broken: broken.length > 0,
    };
  return proposal ? { placements: proposal.placements, standing: 'proposed' } : undefined;
}

/** The report in place of the view it was made from. */
export function reportView(desk: Desk, report: Report): TemplateResult {
  return html`<possession-report
    .report=${report}
    @possession-report-close=${() => desk.outlooks.showReport(null)}
    @possession-report-save=${(event: ReportSaveEvent) => void saveReport(desk, event)}
  ></possession-report>`;
}

export async function saveReport(
  desk: Desk,
  { report, format }: Pick<ReportSaveEvent, 'report' | 'format'>,
): Promise<void> {
  try {
    const { tableOfReport } = await import('../../../src/engine/report/report-table.js');
    await desk.inWords(() => loadSentences());
    const table = desk.inWords(() => tableOfReport(report, saidText));
    const file = await desk.engine?.exportTable(table, format);
    if (file) saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(desk.words.files.reportNotWritten(wordsOf(error)));
  }
}
