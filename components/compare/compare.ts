import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Allocation, KeyDateForecast, Placement } from '../../src/engine/index.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { FigureAskEvent, type Figure } from '../shared/figure-ask-event.js';
import { countText, dueText, momentText, stretchText } from '../shared/format.js';
import { paper } from '../shared/paper.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { Words } from '../shared/words.js';
import { changesOf, datePairs, type DatePair, type WorkChange } from './changes.js';
import { dateChange, floatShown, summaryRows } from './change-words.js';
import { changeMark } from './change-mark.js';
import { styles } from './compare.styles.js';
import { defaultStrings, type CompareStrings } from './strings.js';

/**
 * Two plans side by side: the figures of each, what became of every key date, and the work that moved.
 *
 * @summary What differs between two plans.
 * @tag possession-compare
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a figure comes from.
 * @csspart summary - The figures of both plans.
 * @csspart moves - The work that moved.
 * @csspart cautions - The cautions.
 */
export class PossessionCompare extends LitElement {
  static override readonly styles = [...base, cautionStyles, styles, rightToLeft, paper];
  static override readonly properties: PropertyDeclarations = {
    beforePlan: { attribute: false },
    afterPlan: { attribute: false },
    beforeName: { type: String, attribute: 'before-name' },
    afterName: { type: String, attribute: 'after-name' },
    windows: { attribute: false },
    activities: { attribute: false },
    zone: { type: String },
    strings: { attribute: false },
  };

  /** The plan kept. (`before` and `after` by themselves are methods of every node.) */
  declare beforePlan: Allocation | null;
  /** The plan set against it. */
  declare afterPlan: Allocation | null;
  /** Empty: `Before`. */
  declare beforeName: string;
  /** Empty: `After`. */
  declare afterName: string;
  declare windows: readonly AccessWindow[];
  declare activities: readonly Activity[];
  /** IANA zone for key dates and outside work. */
  declare zone: string;
  /** Words to use in place of the element's own. */
  declare strings: Partial<CompareStrings>;

  readonly #words = new Words<CompareStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  constructor() {
    super();
    this.beforePlan = null;
    this.afterPlan = null;
    this.beforeName = '';
    this.afterName = '';
    this.windows = [];
    this.activities = [];
    this.zone = 'UTC';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { beforePlan: before, afterPlan: after } = this;
    if (!before || !after) {
      const why = before ? words.noAfter : after ? words.noBefore : words.noPlans;
      return html`<p class="empty quiet">${why}</p>`;
    }
    return html`<h2>${words.title}</h2>
      ${this.#renderSummary(before, after, words)} ${this.#renderDates(before, after, words)}
      ${this.#renderMoves(before, after, words)} ${cautionList(words.cautions, words.cautionLines)}`;
  }

  #names(words: CompareStrings): readonly [string, string] {
    return [this.beforeName || words.before, this.afterName || words.after];
  }

  #renderSummary(before: Allocation, after: Allocation, words: CompareStrings): TemplateResult {
    const [old, now] = this.#names(words);
    const check = (allocation: Allocation) =>
      allocation.certificate.verified
        ? nothing
        : html`<span class="unverified" role="alert">${words.unverified}</span>`;
    return html`<div
      part="summary"
      class="scroll"
      tabindex="0"
      role="region"
      aria-label=${words.summary}
    >
      <table class="summary">
        <thead>
          <tr>
            <th scope="col">${words.figure}</th>
            <th scope="col">${old}</th>
            <th scope="col">${now}</th>
            <th scope="col">${words.change}</th>
          </tr>
        </thead>
        <tbody>
          ${summaryRows(before, after, this.zone, words).map(
            (row) =>
              html`<tr>
                <th scope="row">${this.#asks(row.name, { of: 'compare', figure: row.figure })}</th>
                <td>${row.before}${row.quality ? check(before) : nothing}</td>
                <td>${row.after}${row.quality ? check(after) : nothing}</td>
                <td>${changeMark(row.sense, row.change)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #renderDates(before: Allocation, after: Allocation, words: CompareStrings): TemplateResult {
    const pairs = datePairs(before, after);
    const [old, now] = this.#names(words);
    if (pairs.length === 0)
      return html`<h3>${words.keyDates}</h3>
        <p class="note quiet">${words.noDates}</p>`;
    return html`<h3>${words.keyDates}</h3>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.keyDates}>
        <table class="dates">
          <thead>
            <tr>
              <th scope="col">${words.work}</th>
              <th scope="col">${words.due}</th>
              <th scope="col">${words.forecastOf(old)}</th>
              <th scope="col">${words.forecastOf(now)}</th>
              <th scope="col">${words.change}</th>
            </tr>
          </thead>
          <tbody>
            ${pairs.map((pair) => this.#renderDate(pair, words))}
          </tbody>
        </table>
      </div>`;
  }

  #renderDate(pair: DatePair, words: CompareStrings): TemplateResult {
    const { before, after } = pair;
    const change = dateChange(pair, words);
    const due = (after ?? before)!.due;
    return html`<tr>
      <th scope="row">
        ${this.#asks(pair.package, { of: 'compare-key-date', package: pair.package })}
      </th>
      <td class="keep">
        ${dueText(due, this.zone)}
        ${
          before && before.due !== due
            ? html`<span class="quiet">${words.dueWas(dueText(before.due, this.zone))}</span>`
            : nothing
        }
      </td>
      <td class="keep">${this.#renderForecast(before, words)}</td>
      <td class="keep">${this.#renderForecast(after, words)}</td>
      <td>${changeMark(change.sense, change.text)}</td>
    </tr>`;
  }

  #asks(text: string, figure: Figure): TemplateResult {
    return html`<button
      class="plain"
      type="button"
      @click=${() => this.dispatchEvent(new FigureAskEvent(figure))}
    >
      ${text}
    </button>`;
  }

  #renderForecast(date: KeyDateForecast | null, words: CompareStrings): TemplateResult {
    if (!date) return html`${words.noDate}`;
    if (date.forecast === null) return html`${words.notAllPlaced}`;
    return html`${momentText(date.forecast, this.zone)}<span class="quiet"
        >${floatShown(date.floatMinutes, words)}${date.met ? words.met : words.missed}</span
      >`;
  }

  #renderMoves(before: Allocation, after: Allocation, words: CompareStrings): TemplateResult {
    const { work, unchanged } = changesOf(before, after);
    const text =
      work.length > 0
        ? nothing
        : html`<p class="note nothing">${unchanged === 0 ? words.noWork : words.nothingMoved}</p>`;
    return html`<h3>${words.moves}</h3>
      ${text}
      ${
        work.length === 0
          ? nothing
          : html`<ul part="moves" class="moves">
              ${work.map((change) => this.#renderMove(change, words))}
            </ul>`
      }
      <p class="note unchanged quiet">
        ${words.unchanged(countText(unchanged, words.piece, words.pieces))}
      </p>`;
  }

  #renderMove(change: WorkChange, words: CompareStrings): TemplateResult {
    const [old, now] = this.#names(words);
    const title = this.activities.find((each) => each.id === change.activity)?.title ?? '';
    return html`<li>
      <div class="activity">
        <strong>${change.activity}</strong> ${title}
        <span class="what ${change.kind}">${words.kind[change.kind]}</span>
      </div>
      <div><span class="label">${old}</span>${this.#place(change.before, words)}</div>
      <div><span class="label">${now}</span>${this.#place(change.after, words)}</div>
      <div><span class="label">${words.units}</span>${unitsShown(change, words)}</div>
    </li>`;
  }

  #place(item: Placement | null, words: CompareStrings): TemplateResult {
    if (!item) return html`${words.nowhere}`;
    const window = this.windows.find((each) => each.id === item.window);
    return html`<strong>${item.window ?? words.outside}</strong> ${stretchText(
        item.from,
        item.to,
        window?.zone ?? this.zone,
      )}`;
  }
}

function unitsShown({ before, after }: WorkChange, words: CompareStrings): string {
  const old = before?.units;
  const now = after?.units;
  if (old !== undefined && now !== undefined && old !== now)
    return words.unitsTurn(String(old), String(now));
  return String(now ?? old ?? words.noUnits);
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-compare': PossessionCompare;
  }
}
