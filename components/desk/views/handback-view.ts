import { html, nothing, type TemplateResult } from 'lit';
import type { Results, ShiftEvent } from '../../../src/engine/index.js';
import { noDecisions } from '../../../src/model/index.js';
import type { CalendarSaveEvent } from '../../booking/calendar-save-event.js';
import type { DecisionsChangeEvent } from '../../handback/decisions-change-event.js';
import type { HandbackEntryEvent } from '../../handback/handback-entry-event.js';
import type {
  HandbackLogMergeEvent,
  HandbackLogSaveEvent,
} from '../../handback/handback-log-events.js';
import type { HandbackRecordEvent } from '../../handback/handback-record-event.js';
import type { WindowSelectEvent } from '../../ribbon/window-select-event.js';
import { planLine } from './agreed-view.js';
import type { Desk } from '../desk-parts.js';
import { outlookTrouble } from '../results/forecast-trouble.js';
import { settleButton } from './plan-view.js';
import { begunInEarlierShifts } from '../shift/shift-before.js';
import { alarmLine, shiftBar } from '../shift/shift-bar.js';
import { openShift, rememberShift } from '../shift/shift-memory.js';
import { toChanceButton, toChanceView } from './to-chance-view.js';
import type { ShiftPlan } from '../shift/shift-store.js';
import { saveFile } from '../files/save-file.js';

/** Margins, cut-off times and chances of the plan; with `live`, one window as its shift goes. */
export function handbackView(desk: Desk, results: Results): TemplateResult {
  const { outlooks, shift, planning, picked, words } = desk;
  const outlook = outlooks.handbacks.find((handback) => handback.window === picked.window);
  return html`<div class="bar ${shift.live ? 'in-shift' : ''}">
      <button
        type="button"
        aria-pressed=${shift.live}
        ?disabled=${!outlook}
        @click=${() => {
          shift.live = !shift.live;
          remember(desk);
          if (shift.live) void forecast(desk);
          else desk.show('handback');
        }}
      >
        ${words.duringShift}
      </button>
      ${
        shift.live
          ? html`<button type="button" @click=${() => forecast(desk)}>${words.forecastNow}</button>`
          : nothing
      }
      ${shift.live ? nothing : toChanceButton(desk)}
      ${planning.busy && planning.draft ? settleButton(desk) : nothing}
      <span class="said" role="status"
        >${planning.busy ? words.planFirst : shift.live ? '' : words.simulatedRuns}</span
      >
    </div>
    ${shift.live ? alarmLine(desk, results.plan.zone) : nothing}
    <div class="fill pad">
      ${shift.live ? nothing : planLine(desk)} ${shift.live ? nothing : toChanceView(desk)}
      ${outlookTrouble(outlooks)}
      <possession-handback
        .results=${outlooks.handbacks}
        .windows=${results.plan.windows}
        .selectedWindow=${outlook ? picked.window : ''}
        .busy=${planning.busy || outlooks.isBusy('handback') || outlooks.isBusy('live')}
        .progress=${outlooks.progress}
        .live=${shift.live}
        .now=${desk.moment()}
        .log=${shift.log}
        .plan=${planText(desk)}
        .readonly=${desk.sharing.reads}
        .decisions=${desk.document?.decisions ?? noDecisions}
        @possession-window-select=${(event: WindowSelectEvent) => {
          picked.pick({ window: event.window });
          shift.live = false;
          remember(desk);
          openLog(desk);
        }}
        @possession-handback-record=${(event: HandbackRecordEvent) =>
          record(desk, event.window, null, event.event)}
        @possession-handback-entry=${(event: HandbackEntryEvent) =>
          record(desk, event.window, event.at, event.event, event.corrects)}
        @possession-handback-log-save=${(event: HandbackLogSaveEvent) =>
          saveFile(event.name, event.text, event.mediaType)}
        @possession-handback-log-merge=${(event: HandbackLogMergeEvent) => {
          if (!desk.mayChange()) return;
          shift.keep(shiftPlan(desk), event.window, event.log);
          void forecast(desk);
        }}
        @possession-decisions-change=${(event: DecisionsChangeEvent) => {
          const from = desk.document?.decisions;
          desk.change(
            { part: ['decisions'], from, value: event.decisions },
            words.decisionsChanged,
            true,
          );
        }}
        @possession-calendar-save=${(event: CalendarSaveEvent) =>
          saveFile('cut-offs.ics', event.text, 'text/calendar')}
      ></possession-handback>
      ${shift.live ? html`${shiftBar(desk)} ${planLine(desk)}` : nothing}
    </div>`;
}

/** Name of the document and of the plan of work that was agreed on, for paper. */
function planText({ document, words }: Desk): string {
  if (!document) return '';
  const agreed = document.agreed?.now;
  return agreed
    ? words.revision(document.name, agreed.name, agreed.revision)
    : words.notAgreedOn(document.name);
}

/** Picks a window that the plan uses, and asks for what the view shows. */
export async function openHandback(desk: Desk): Promise<void> {
  const { picked, planning } = desk;
  const used = planning.allocation?.placements.flatMap((placement) => placement.window ?? []) ?? [];
  if (!used.includes(picked.window)) picked.pick({ window: used[0] ?? picked.window });
  openLog(desk);
  await askHandback(desk);
}

/** Handback is of a plan of the work: there has to be one. */
export async function askHandback(desk: Desk): Promise<void> {
  const { engine, document, outlooks, planning } = desk;
  const { allocation } = planning;
  if (!engine || !document || !allocation) return;
  if (!outlooks.hasAllHandbacks && !outlooks.isBusy('handback'))
    await outlooks.askHandback({ engine, document, allocation });
}

const shiftPlan = ({ keeping, document, picked, figures, plan, sharing }: Desk): ShiftPlan => ({
  id: keeping.id,
  plan,
  reads: sharing.reads,
  name: document?.name ?? '',
  start: figures.results?.plan.windows.find((window) => window.id === picked.window)?.start,
});

/** The open shift is remembered with its plan of work, so that a page loaded anew is back in it at once. */
function remember({ document, planning, shift, picked }: Desk): void {
  const { allocation } = planning;
  if (document)
    rememberShift(
      document,
      shift.live && allocation ? { window: picked.window, allocation } : null,
    );
}

/** Goes back into the shift that was open when the page was left. False where none was. */
export function resumeShift(desk: Desk): boolean {
  const { document, planning, shift, picked } = desk;
  const open = document && !shift.live ? openShift(document) : null;
  if (!open) return false;
  // The agreed plan stands for itself; without one the shift goes on by the plan it went by.
  if (!planning.allocation) planning.resume(open.allocation);
  picked.pick({ window: open.window });
  shift.live = true;
  desk.view = 'handback';
  openLog(desk);
  // The shift's own window first: somebody on site waits for it.
  void forecast(desk).then(() => openHandback(desk));
  return true;
}

/** Others wrote in the log of a shift: it is shown at once, with what follows from it. */
export function followLog(desk: Desk): void {
  if (desk.view !== 'handback') return;
  openLog(desk);
  if (desk.shift.live) void forecast(desk);
}

export function openLog(desk: Desk): void {
  desk.shift.open(shiftPlan(desk), desk.picked.window);
}

/** The picked window as it stands now, from what the log says. */
export async function forecast(desk: Desk): Promise<void> {
  const { engine, document, shift, picked } = desk;
  const { allocation } = desk.planning;
  if (!engine || !document || !allocation) return;
  await desk.outlooks.askLive(
    { engine, document, allocation },
    picked.window,
    desk.moment(),
    shift.log,
    begunInEarlierShifts(desk, desk.moment()),
  );
}

/** Writes down what happened; `at` null: at this moment. */
function record(
  desk: Desk,
  window: string,
  at: number | null,
  event: ShiftEvent,
  corrects?: string,
): void {
  if (!desk.mayChange()) return;
  const enteredAt = desk.moment();
  desk.shift.record(shiftPlan(desk), window, {
    at: at ?? enteredAt,
    enteredAt,
    event,
    ...(corrects !== undefined && { corrects }),
  });
  if (desk.shift.trouble) desk.complain(desk.shift.trouble);
  void forecast(desk);
}
