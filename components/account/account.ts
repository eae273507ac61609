import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Account, AccountRequest } from '../../src/engine/index.js';
import type { AccessWindow, Resource, Train } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { paper } from '../shared/paper.js';
import { ReportAskEvent, type ReportFormat } from '../report/report-events.js';
import { notesList } from '../shared/notes-list.js';
import { AccountAskEvent } from './account-ask-event.js';
import { styles } from './account.styles.js';
import type { BegunSheet, Entry, Refused } from './entry.js';
import { handbackEntry } from './handback-entry.js';
import { rowList } from './row-list.js';
import { standingEntry } from './standing-entry.js';
import { defaultStrings, type AccountStrings } from './strings.js';
import { breakdowns, sumsView } from './sums-view.js';
import { trainEntry, type PasteState } from './train-entry.js';
import { nameText } from '../shared/name.js';
import { Words } from '../shared/words.js';

const HANDBACK = 'handback';
const noPaste: PasteState = { text: '', said: '', problems: [] };

/**
 * The actual cost of a late handback: a person enters recorded times; each cost is a row with how it is calculated, who
 * claims it and the evidence.
 *
 * Entries are kept here at once and sent as an event; the account follows with the new answer.
 * @summary The account after a late handback.
 * @tag possession-account
 * @event {AccountAskEvent} possession-account-ask - A person entered something.
 * @event {ReportAskEvent} possession-report-ask - A person wants a report, on the screen or as a file.
 * @csspart total - The total.
 * @csspart row - One cost.
 * @csspart cautions - The cautions.
 */
export class PossessionAccount extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    window: { attribute: false },
    trains: { attribute: false },
    resources: { attribute: false },
    request: { attribute: false },
    busy: { type: Boolean },
    strings: { attribute: false },
  };

  declare answer: Account | null;
  /** The window that was handed back. */
  declare window: AccessWindow | null;
  /** The trains due after it. */
  declare trains: readonly Train[];
  /** Plant and labour of the plan; those with a rate an hour can be entered. */
  declare resources: readonly Resource[];
  /** Entries so far; null: none. */
  declare request: AccountRequest | null;
  /** Whether the account for the last change is still being calculated. */
  declare busy: boolean;
  /** Texts that override the defaults. */
  declare strings: Partial<AccountStrings>;

  readonly #words = new Words<AccountStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  #refused = new Map<string, Refused>();
  #paste = noPaste;
  #begun: readonly BegunSheet[] = [];

  constructor() {
    super();
    this.answer = null;
    this.window = null;
    this.trains = [];
    this.resources = [];
    this.request = null;
    this.busy = false;
    this.strings = {};
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('window');
    if (!changed.has('window') || before?.id === this.window?.id) return;
    this.#refused.clear();
    this.#paste = noPaste;
    this.#begun = [];
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { window } = this;
    if (!window) return html`<p class="empty quiet">${words.empty}</p>`;
    const request = this.request?.window === window.id ? this.request : null;
    const answer = request && this.answer?.window === window.id ? this.answer : null;
    return html`<header>
        <div>
          <h2>${words.title}</h2>
          <p class="quiet">${nameText(window)}</p>
        </div>
        ${handbackEntry({
          window,
          words,
          at: request?.actualHandback,
          refused: this.#refused.get(HANDBACK),
          refuse: (refused) => this.#refuse(HANDBACK, refused),
          take: (actualHandback) =>
            this.#ask({ ...(request ?? { window: window.id }), actualHandback }),
        })}
      </header>
      ${cautionList(words.cautions, words.cautionLines)}
      ${
        request
          ? this.#renderEntered(answer, this.#entry(window, request, words))
          : html`<div class="empty quiet">
              <p>${words.start}</p>
              <ul class="then">
                ${words.startThen.map((text) => html`<li>${text}</li>`)}
              </ul>
            </div>`
      }`;
  }

  #entry(window: AccessWindow, request: AccountRequest, words: AccountStrings): Entry {
    return {
      ...{ window, request, words },
      keptOf: (resource) => keptOf(this.answer, resource),
      trains: this.trains,
      resources: this.resources,
      refused: this.#refused,
      refuse: (key, refused) => this.#refuse(key, refused),
      ask: (next) => this.#ask(next),
      begun: this.#begun,
      begin: (sheets) => {
        this.#begun = sheets;
        this.requestUpdate();
      },
    };
  }

  #renderEntered(answer: Account | null, entry: Entry): TemplateResult {
    const { words } = entry;
    return html`<section class="sum-part" aria-busy=${this.busy}>
        ${answer ? sumsView(answer, words) : nothing} ${answer ? this.#renderSave(words) : nothing}
        <p class="status" role="status">${this.busy || !answer ? words.working : nothing}</p>
      </section>
      <div class="entries on-screen">
        <section>
          <h3>${words.trains}</h3>
          ${trainEntry({
            ...entry,
            paste: this.#paste,
            setPaste: (state) => {
              this.#paste = state;
              this.requestUpdate();
            },
          })}
        </section>
        <section>
          <h3>${words.standing}</h3>
          ${standingEntry(entry)}
        </section>
      </div>
      ${
        answer
          ? html`<section class="row-part" aria-busy=${this.busy}>
                <h3>${words.rows}</h3>
                ${rowList(answer, entry)}
              </section>
              ${breakdowns(answer, words)} ${notesList(words.notPriced, answer.notPriced)}
              ${notesList(words.notes, answer.notes)}`
          : nothing
      }`;
  }

  #renderSave(words: AccountStrings): TemplateResult {
    const button = (format: ReportFormat, word: string) =>
      html`<button
        type="button"
        class="save-${format}"
        ?disabled=${this.busy}
        @click=${() => this.dispatchEvent(new ReportAskEvent(format))}
      >
        ${word}
      </button>`;
    return html`<div class="save on-screen" role="group" aria-label=${words.save}>
      <span aria-hidden="true">${words.save}</span>
      ${button('csv', words.saveCsv)} ${button('xlsx', words.saveXlsx)}
      ${button('screen', words.report)}
    </div>`;
  }

  #refuse(key: string, refused?: Refused): void {
    if (refused) this.#refused.set(key, refused);
    else if (!this.#refused.delete(key)) return;
    this.requestUpdate();
  }

  /** The next change must build on this one, whether or not the listener has answered by then. */
  #ask(request: AccountRequest): void {
    this.request = request;
    this.dispatchEvent(new AccountAskEvent(request));
  }
}

/** How many of a resource the late handback kept, by the plan. */
function keptOf(answer: Account | null, resource: string): number {
  const kept = (answer?.onSite ?? []).filter((row) => row.kept && row.resource === resource);
  return Math.max(
    1,
    kept.reduce((sum, row) => sum + row.amount, 0),
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-account': PossessionAccount;
  }
}
