import { html, nothing, type TemplateResult } from 'lit';
import {
  plainStanding,
  type AccountRequest,
  type OwnOption,
  type PricedOption,
  type Results,
} from '../../../src/engine/index.js';
import type { AccountAskEvent } from '../../account/account-ask-event.js';
import { DAY } from '../../../src/calendar/index.js';
import type { AccessWindow, Train } from '../../../src/model/index.js';
import type { OptionTakeEvent } from '../../options/option-take-event.js';
import type { OptionsAskEvent } from '../../options/options-ask-event.js';
import type { OwnOptionsChangeEvent } from '../../options/own-options-change-event.js';
import type { OnSiteChangeEvent } from '../../overrun/on-site-event.js';
import type { OverrunChangeEvent } from '../../overrun/overrun-change-event.js';
import type { OverrunCompareEvent } from '../../overrun/overrun-compare-event.js';
import type { ReportAskEvent } from '../../report/report-events.js';
import { keepAccount, readAccount } from '../files/account-store.js';
import { makeReport, reportView } from './cost-report.js';
import { agreeOption } from '../forms/agreed-plan.js';
import { planLine } from './agreed-view.js';
import type { Desk } from '../desk-parts.js';
import { wordsOf } from '../../shared/words-of.js';
import { outlookTrouble } from '../results/forecast-trouble.js';
import { settleButton } from './plan-view.js';
import type { ShiftPlan } from '../shift/shift-store.js';
import type { CostPart } from '../views.js';
import { nameText } from '../../shared/name.js';
import { loadSentences, saidText } from '../../shared/said.js';

/** A dragged slider speaks often; the element shows the total at once, the heads of cost may follow. */
const ASK_AFTER_MS = 120;

/** What an overrun of the picked window costs. Without a price book it says how to bring one. */
export function costView(desk: Desk, results: Results): TemplateResult {
  const { outlooks, picked, words } = desk;
  const { windows } = results.plan;
  const window = windows.find((item) => item.id === picked.window) ?? null;
  return html`<div class="bar">
      <label for="priced">${words.window}</label>
      <select
        id="priced"
        @change=${(event: Event) => {
          outlooks.showReport(null);
          picked.pick({ window: (event.target as HTMLSelectElement).value });
          desk.show('cost');
        }}
      >
        ${windows
          .filter((item) => item.status !== 'withdrawn')
          .map(
            (item) =>
              html`<option value=${item.id} ?selected=${item.id === picked.window}>
                ${nameText(item)}
              </option>`,
          )}
      </select>
      <div class="choice" role="group" aria-label=${words.costShown}>
        ${(Object.entries(words.costPart) as [CostPart, string][]).map(
          ([part, text]) =>
            html`<button
              type="button"
              aria-pressed=${part === desk.costPart}
              @click=${() => {
                outlooks.showReport(null);
                desk.costPart = part;
                desk.show('cost');
              }}
            >
              ${text}
            </button>`,
        )}
      </div>
      ${desk.planning.busy && desk.planning.draft ? settleButton(desk) : nothing}
      <span class="said" role="status">${hint(desk)}</span>
    </div>
    <div
      class="fill pad"
      @possession-report-ask=${({ format }: ReportAskEvent) =>
        void makeReport(desk, window, format).catch((error: unknown) =>
          desk.complain(desk.words.notDone(wordsOf(error))),
        )}
    >
      ${planLine(desk)} ${outlookTrouble(outlooks)}
      ${
        outlooks.report
          ? reportView(desk, outlooks.report)
          : !desk.document?.prices
            ? html`<p class="quiet">${words.noPriceBook}</p>`
            : desk.costPart === 'account'
              ? accountOf(desk, results, window)
              : desk.costPart === 'options'
                ? optionsOf(desk, results, window)
                : html`<possession-overrun
                    .answer=${outlooks.price}
                    .window=${window}
                    .overrunMinutes=${outlooks.overrunMinutes}
                    .strings=${wordsOfPrice(desk)}
                    .editable=${!desk.sharing.reads}
                    @possession-overrun-compare=${({ minutes }: OverrunCompareEvent) => {
                      outlooks.compareMinutes = minutes;
                      void askPrice(desk);
                    }}
                    @possession-on-site-change=${(event: OnSiteChangeEvent) => setLeaves(desk, event)}
                    @possession-overrun-change=${(event: OverrunChangeEvent) => {
                      outlooks.overrunMinutes = event.overrunMinutes;
                      outlooks.later(ASK_AFTER_MS, () => void askPrice(desk));
                    }}
                  ></possession-overrun>`
      }
    </div>`;
}

/** When a resource leaves a window, kept in the price book; as planned where nothing is said. */
function setLeaves(desk: Desk, { window, resource, leaves }: OnSiteChangeEvent): void {
  const { document } = desk;
  if (!document?.prices) return;
  const { prices } = document;
  const others = (prices.standing?.onSite ?? []).filter(
    (item) => item.resource !== resource || item.window !== window,
  );
  const own = { resource, window, callMinutesBefore: 0, leavesMinutesAfter: 0 };
  const standing = {
    ...(prices.standing ?? plainStanding),
    onSite: leaves === null ? others : [...others, { ...own, leaves }],
  };
  desk.change(
    { part: ['prices'], from: prices, value: { ...prices, standing } },
    desk.words.onSite(resource, window),
  );
}

const noOwn: readonly OwnOption[] = [];

const ownWords = {};
const withoutChance = new Map<string, { readonly noChance: string }>();

/** What the cost says in place of its chances while it has none; the same object as long as it says the same. */
function wordsOfPrice(desk: Desk): { readonly noChance?: string } {
  const { outlooks, planning, words } = desk;
  if (usesWindow(desk) && !outlooks.isBusy('handback') && !planning.busy) return ownWords;
  const noChance = usesWindow(desk) ? words.simulating : words.nothingToOverrun;
  const kept = withoutChance.get(noChance) ?? { noChance };
  withoutChance.set(noChance, kept);
  return kept;
}

/** Whether the plan, where there is one, does anything in the picked window. */
function usesWindow({ planning, picked }: Desk): boolean {
  return (
    planning.allocation?.placements.some((placement) => placement.window === picked.window) ?? true
  );
}

function hint({ costPart, outlooks, planning, words }: Desk): string {
  if (costPart === 'account') return words.accountTold;
  if (planning.busy) return words.planFirst;
  if (costPart === 'options') return words.optionsTold;
  return outlooks.isBusy('handback') ? words.simulatingPlan : words.withChance;
}

function optionsOf(desk: Desk, results: Results, window: AccessWindow | null): TemplateResult {
  const { outlooks, picked } = desk;
  if (!usesWindow(desk))
    return html`<p class="quiet">${desk.words.nothingOtherwise(picked.window)}</p>`;
  return html`<possession-options
    .answer=${outlooks.options}
    .window=${window}
    .busy=${outlooks.isBusy('options')}
    .progress=${outlooks.progress}
    .own=${outlooks.ownOptions.get(picked.window) ?? noOwn}
    .activities=${results.plan.activities}
    .resources=${results.plan.resources}
    .readonly=${desk.sharing.reads}
    @possession-options-ask=${(event: OptionsAskEvent) => {
      outlooks.varied = event.asked;
      void askOptions(desk, true);
    }}
    @possession-own-options-change=${({ own }: OwnOptionsChangeEvent) => {
      outlooks.ownOptions = new Map([...outlooks.ownOptions, [picked.window, own]]);
      void askOptions(desk, true);
    }}
    @possession-options-stop=${() => outlooks.stop('options')}
    @possession-option-take=${({ option }: OptionTakeEvent) => void takeOption(desk, option)}
  ></possession-options>`;
}

/** An option becomes the agreed plan, with what it changes of the document: one act, undone as one. */
async function takeOption(desk: Desk, { edit, name, placements }: PricedOption): Promise<void> {
  await desk.inWords(() => loadSentences());
  agreeOption(
    desk,
    edit,
    desk.inWords(() => saidText(name)),
    placements,
  );
}

function accountOf(desk: Desk, results: Results, window: AccessWindow | null): TemplateResult {
  const { outlooks, engine, document } = desk;
  return html`<possession-account
    .answer=${outlooks.account}
    .window=${window}
    .trains=${trainsAfter(results.trains, window)}
    .resources=${results.plan.resources}
    .request=${entered(desk)}
    .busy=${outlooks.isBusy('account')}
    @possession-account-ask=${({ request }: AccountAskEvent) => {
      if (!engine || !document) return;
      if (!keepAccount(accountPlan(desk), request)) desk.complain(desk.words.accountNotKept);
      void outlooks.askAccount(engine, document, request, desk.planning.allocation);
    }}
  ></possession-account>`;
}

const accountPlan = ({ keeping, document }: Desk): ShiftPlan => ({
  id: keeping.id,
  name: document?.name ?? '',
});

/** What was entered of the picked window: in this sitting, or kept from one before. */
function entered(desk: Desk): AccountRequest | null {
  const { outlooks, picked } = desk;
  return outlooks.accountRequest?.window === picked.window
    ? outlooks.accountRequest
    : readAccount(accountPlan(desk), picked.window);
}

/** The trains said to follow the window, and those of the day after it that follow none in particular. */
function trainsAfter(trains: readonly Train[], window: AccessWindow | null): readonly Train[] {
  if (!window) return [];
  return trains.filter((train) =>
    train.window === undefined
      ? train.passesAt >= window.end && train.passesAt < window.end + DAY
      : train.window === window.id,
  );
}

/** After a change of the plan the account of what was entered is worked out anew. */
export function askAccount(desk: Desk): void {
  const { engine, document, outlooks, picked, planning } = desk;
  const request = entered(desk);
  if (!engine || !document || !request || outlooks.account?.window === picked.window) return;
  void outlooks.askAccount(engine, document, request, planning.allocation);
}

/** `anew`: although there is an answer for the window already. */
export async function askOptions(desk: Desk, anew = false): Promise<void> {
  const { engine, document, outlooks, picked, planning } = desk;
  const { allocation } = planning;
  if (!engine || !document?.prices || !allocation) return;
  if (!allocation.placements.some((placement) => placement.window === picked.window)) return;
  if (!anew && outlooks.options?.window === picked.window) return;
  await outlooks.askOptions({ engine, document, allocation }, picked.window, desk.moment());
}

export async function askPrice(desk: Desk): Promise<void> {
  const { engine, document, picked } = desk;
  if (!engine || !document?.prices || picked.window === '') return;
  await desk.outlooks.askPrice(engine, document, picked.window, desk.planning.allocation);
}
