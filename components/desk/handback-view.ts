import { html, nothing, type TemplateResult } from 'lit';
import type { Results } from '../../src/engine/index.js';
import type { HandbackRecordEvent } from '../handback/handback-record-event.js';
import type { WindowSelectEvent } from '../ribbon/window-select-event.js';
import type { Desk } from './desk-parts.js';
import { outlookTrouble } from './outlook-trouble.js';
import { saveFile } from './save-file.js';

/** Name under which the granting of the possession stands among the steps. */
const GRANTED = 'Possession granted';

/** Margins, cut-off times and chances of the plan; with `live`, one window as its shift goes. */
export function handbackView(desk: Desk, results: Results): TemplateResult {
  const { outlooks, shift, planning, picked } = desk;
  const outlook = outlooks.handbacks.find((one) => one.window === picked.window);
  return html`<div class="bar">
      <button
        type="button"
        aria-pressed=${shift.live}
        ?disabled=${!outlook}
        @click=${() => {
          shift.live = !shift.live;
          if (shift.live) void forecast(desk);
          else desk.show('handback');
        }}
      >
        During the shift
      </button>
      ${
        shift.live
          ? html`<button type="button" @click=${() => forecast(desk)}>Forecast now</button>
              <button
                type="button"
                ?disabled=${shift.log.length === 0}
                @click=${() =>
                  saveFile(
                    `shift-${picked.window}.json`,
                    JSON.stringify(shift.log, null, 2),
                    'application/json',
                  )}
              >
                Save the log
              </button>`
          : nothing
      }
      <span class="said" role="status"
        >${
          planning.busy
            ? 'Working out the plan of the work first'
            : 'Of the plan of the work: 10,000 simulated runs a window, seed 1'
        }</span
      >
    </div>
    <div class="fill pad">
      ${outlookTrouble(outlooks)}
      <possession-handback
        .results=${outlooks.handbacks}
        .windows=${results.plan.windows}
        .selectedWindow=${outlook ? picked.window : ''}
        .busy=${planning.busy || outlooks.isBusy('handback') || outlooks.isBusy('live')}
        .progress=${outlooks.progress}
        .live=${shift.live}
        .now=${shift.live ? desk.moment() : null}
        .log=${shift.log}
        @possession-window-select=${(event: WindowSelectEvent) => {
          picked.pick({ window: event.window });
          shift.live = false;
          openLog(desk);
        }}
        @possession-handback-record=${(event: HandbackRecordEvent) => record(desk, event)}
      ></possession-handback>
    </div>`;
}

/** Asks for what the view shows. Handback is of a plan of the work: there has to be one. */
export async function askHandback(desk: Desk): Promise<void> {
  const { engine, document, outlooks, picked } = desk;
  const { allocation } = desk.planning;
  if (!engine || !document || !allocation) return;
  const used = allocation.placements.flatMap((one) => one.window ?? []);
  if (!used.includes(picked.window)) picked.pick({ window: used[0] ?? picked.window });
  openLog(desk);
  if (outlooks.handbacks.length === 0 && !outlooks.isBusy('handback'))
    await outlooks.askHandback({ engine, document, allocation });
}

function openLog(desk: Desk): void {
  desk.shift.open(desk.document?.name ?? '', desk.picked.window);
}

/** The picked window as it stands now, from what the log says. */
async function forecast(desk: Desk): Promise<void> {
  const { engine, document, shift, picked } = desk;
  const { allocation } = desk.planning;
  if (!engine || !document || !allocation) return;
  await desk.outlooks.askLive(
    { engine, document, allocation },
    picked.window,
    desk.moment(),
    shift.log,
  );
}

function record(desk: Desk, event: HandbackRecordEvent): void {
  const what =
    event.step === GRANTED
      ? { kind: 'granted' as const }
      : event.activity === undefined
        ? { kind: `step-${event.what}` as const, step: event.step ?? '' }
        : { kind: `activity-${event.what}` as const, activity: event.activity };
  desk.shift.record(desk.document?.name ?? '', event.window, desk.moment(), what);
  if (desk.shift.trouble) desk.complain(desk.shift.trouble);
  void forecast(desk);
}
