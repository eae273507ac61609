import { html, nothing, type TemplateResult } from 'lit';
import type { Results } from '../../../src/engine/index.js';
import type { AgreedPlan } from '../../../src/model/index.js';
import type { ReportSaveEvent } from '../../report/report-events.js';
import { saveReport } from './cost-report.js';
import type { Desk } from '../desk-parts.js';
import { spans, type MeetingView } from '../results/meeting.js';
import { takePlanOut } from '../files/plan-out.js';

/** The plan on one page for a meeting, or the weeks to come: read, printed, saved. */
export function meetingView(desk: Desk, results: Results, view: MeetingView): TemplateResult {
  const { meeting, planning } = desk;
  const words = desk.words.files;
  const report = meeting.shown(desk, results, view);
  if (!report)
    return html`<div class="fill pad">
      <p class="quiet" role="status">
        ${planning.allocation || planning.busy ? words.workingItOut : words.noPlanOfWork}
      </p>
    </div>`;
  return html`<div class="fill">
    <possession-report
      .report=${report}
      .closable=${false}
      @possession-report-save=${(event: ReportSaveEvent) => void saveReport(desk, event)}
    >
      ${view === 'summary' ? againstChoice(desk) : weeksChoice(desk)}
    </possession-report>
  </div>`;
}

/** Which plan the changes are told against, and the plan as a file. */
function againstChoice(desk: Desk): TemplateResult {
  const { document, meeting } = desk;
  const words = desk.words.files;
  const earlier: readonly AgreedPlan[] = document?.agreed?.earlier ?? [];
  const before = meeting.before(desk);
  return html`<div class="bar" slot="after">
    ${
      earlier.length === 0
        ? nothing
        : html`<label
            >${words.changesSince}
            <select
              @change=${(event: Event) =>
                meeting.set({ against: Number((event.target as HTMLSelectElement).value) })}
            >
              ${earlier.map(
                (plan) =>
                  html`<option
                    value=${String(plan.revision)}
                    ?selected=${plan.revision === before?.revision}
                  >
                    ${plan.revision}: ${plan.name}
                  </option>`,
              )}
            </select>
          </label>`
    }
    <span class="said">${words.planOfWorkAs}</span>
    <button type="button" @click=${() => void takePlanOut(desk, 'xlsx')}>${words.workbook}</button>
    <button type="button" @click=${() => void takePlanOut(desk, 'csv')}>CSV</button>
    <button type="button" @click=${() => void takePlanOut(desk, 'ics')}>${words.calendar}</button>
  </div>`;
}

function weeksChoice({ meeting, words }: Desk): TemplateResult {
  return html`<div slot="before" class="choice" role="group" aria-label=${words.files.howFar}>
    ${spans.map(
      (weeks) =>
        html`<button
          type="button"
          aria-pressed=${weeks === meeting.weeks}
          @click=${() => meeting.set({ weeks })}
        >
          ${words.files.weeks(weeks)}
        </button>`,
    )}
  </div>`;
}
