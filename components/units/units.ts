import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Allocation } from '../../src/engine/index.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { FigureAskEvent, type Figure } from '../shared/figure-ask-event.js';
import { countText, dueText, floatText, momentText } from '../shared/format.js';
import '../chart/define.js';
import type { ChartShown } from '../chart/shown.js';
import { paper } from '../shared/paper.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { Words } from '../shared/words.js';
import { unitsChart } from './chart.js';
import { defaultStrings, type UnitsStrings } from './strings.js';
import { styles } from './units.styles.js';
import { UnitsSelectEvent } from './units-select-event.js';
import {
  deadlineOf,
  repeatedOf,
  visitsOf,
  type RepeatedActivity,
  type UnitDeadline,
  type Visit,
} from './visits.js';

/**
 * Repeated work over time: the units in place after every visit, against the total and the key date.
 *
 * @summary Units in place over time, for one repeated work.
 * @tag possession-units
 * @event {UnitsSelectEvent} possession-units-select - A reader picks a repeated work.
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a figure comes from.
 * @csspart choice - The list of repeated works.
 * @csspart cautions - The cautions.
 */
export class PossessionUnits extends LitElement {
  static override readonly styles = [...base, cautionStyles, styles, rightToLeft, paper];
  static override readonly properties: PropertyDeclarations = {
    allocation: { attribute: false },
    activities: { attribute: false },
    windows: { attribute: false },
    zone: { type: String },
    selectedActivity: { type: String, attribute: 'selected-activity', reflect: true },
    strings: { attribute: false },
  };

  declare allocation: Allocation | null;
  declare activities: readonly Activity[];
  declare windows: readonly AccessWindow[];
  /** IANA zone of the picture, of key dates and of outside work. */
  declare zone: string;
  /** Id of the repeated work shown; empty or unknown: the first. */
  declare selectedActivity: string;
  /** Words to use in place of the element's own. */
  declare strings: Partial<UnitsStrings>;

  readonly #words = new Words<UnitsStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  #chart: { readonly of: readonly unknown[]; readonly shown: ChartShown | null } | undefined;

  constructor() {
    super();
    this.allocation = null;
    this.activities = [];
    this.windows = [];
    this.zone = 'UTC';
    this.selectedActivity = '';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { allocation } = this;
    if (!allocation) return html`<p class="empty quiet">${words.noPlan}</p>`;
    const repeated = repeatedOf(this.activities);
    const chosen =
      repeated.find((activity) => activity.id === this.selectedActivity) ?? repeated[0];
    if (!chosen) return html`<p class="empty quiet">${words.noRepeated}</p>`;
    return html`<h2>${words.title}</h2>
      <div class="columns">
        <ul part="choice" class="works" aria-label=${words.choose}>
          ${repeated.map((activity) => this.#renderChoice(activity, activity === chosen, allocation, words))}
        </ul>
        ${this.#renderWork(chosen, allocation, words)}
      </div>
      ${cautionList(words.cautions, words.cautionLines)}`;
  }

  #renderChoice(
    activity: RepeatedActivity,
    chosen: boolean,
    allocation: Allocation,
    words: UnitsStrings,
  ): TemplateResult {
    const placed = visitsOf(activity, allocation).at(-1)?.cumulative ?? activity.work.done;
    return html`<li>
      <button type="button" aria-pressed=${chosen} @click=${() => this.#pick(activity.id, chosen)}>
        <span><strong>${activity.id}</strong> ${activity.title}</span>
        <span class="count run">${words.ofTotal(String(placed), String(activity.work.units))}</span>
      </button>
    </li>`;
  }

  #renderWork(
    activity: RepeatedActivity,
    allocation: Allocation,
    words: UnitsStrings,
  ): TemplateResult {
    const visits = visitsOf(activity, allocation);
    const deadline = deadlineOf(activity, visits, allocation);
    const float = floatWords(deadline, words);
    return html`<section>
      <h3>${activity.id} ${activity.title}</h3>
      <p class="told run">
        ${this.#told(activity, visits, words)}
        <button
          class="plain"
          type="button"
          data-ask="units-placed"
          @click=${() => this.#ask({ of: 'units-placed', activity: activity.id })}
        >
          ${words.whyUnits}
        </button>
      </p>
      <p class="deadline run">
        ${
          deadline
            ? html`${words.keyDate[deadline.of]} ${dueText(deadline.due, this.zone)}:
                <span class=${(deadline.floatMinutes ?? -1) < 0 ? 'late' : 'held'}>${float}</span>.
                ${
                  deadline.of === 'package'
                    ? html`<button
                        class="plain"
                        type="button"
                        data-ask="key-date"
                        @click=${() => this.#ask({ of: 'key-date', package: activity.package })}
                      >
                        ${words.whyFloat}
                      </button>`
                    : nothing
                }`
            : words.noKeyDate
        }
      </p>
      ${
        visits.length === 0
          ? nothing
          : html`<possession-chart .shown=${this.#chartOf(activity, allocation, words)}
              >${this.#renderTable(activity, visits, words)}</possession-chart
            >`
      }
    </section>`;
  }

  #told(activity: RepeatedActivity, visits: readonly Visit[], words: UnitsStrings): string {
    const counted = (count: number): string => countText(count, words.unit, words.units);
    const { done, units } = activity.work;
    const last = visits.at(-1);
    const left = units - (last?.cumulative ?? done);
    const parts = [words.startsFrom(counted(done))];
    if (last)
      parts.push(words.reaches(counted(last.cumulative), momentText(last.to, this.#zoneOf(last))));
    else parts.push(left > 0 ? words.noVisits : words.allDone);
    if (left > 0) parts.push(words.short(counted(left)));
    return parts.join(' ');
  }

  #renderTable(
    activity: RepeatedActivity,
    visits: readonly Visit[],
    words: UnitsStrings,
  ): TemplateResult {
    return html`<div
      slot="table"
      class="scroll"
      tabindex="0"
      role="region"
      aria-label=${words.table}
    >
      <table>
        <thead>
          <tr>
            <th scope="col">${words.visit}</th>
            <th scope="col">${words.window}</th>
            <th scope="col">${words.from}</th>
            <th scope="col">${words.to}</th>
            <th scope="col" class="figure">${words.unitsHead}</th>
            <th scope="col" class="figure">${words.cumulative}</th>
          </tr>
        </thead>
        <tbody>
          ${
            activity.work.done > 0
              ? html`<tr>
                  <th scope="row" colspan="5">${words.beforePlan}</th>
                  <td class="figure">${activity.work.done}</td>
                </tr>`
              : nothing
          }
          ${visits.map(
            (visit) =>
              html`<tr class="row">
                <th scope="row">${visit.number}</th>
                <td>${visit.window ?? words.outside}</td>
                <td>${momentText(visit.from, this.#zoneOf(visit))}</td>
                <td>${momentText(visit.to, this.#zoneOf(visit))}</td>
                <td class="figure">${visit.units}</td>
                <td class="figure">${visit.cumulative}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  /** A chart draws anew only for another plan, other work or other words. */
  #chartOf(
    activity: RepeatedActivity,
    allocation: Allocation,
    words: UnitsStrings,
  ): ChartShown | null {
    const { zone } = this;
    const of = [activity, allocation, zone, words] as const;
    if (!this.#chart?.of.every((each, at) => each === of[at])) {
      const visits = visitsOf(activity, allocation);
      const deadline = deadlineOf(activity, visits, allocation);
      const float = floatWords(deadline, words);
      this.#chart = { of, shown: unitsChart(activity.work, visits, deadline, float, zone, words) };
    }
    return this.#chart.shown;
  }

  #zoneOf(visit: Visit): string {
    return this.windows.find((window) => window.id === visit.window)?.zone ?? this.zone;
  }

  #ask(figure: Figure): void {
    this.dispatchEvent(new FigureAskEvent(figure));
  }

  #pick(id: string, chosen: boolean): void {
    if (chosen) return;
    this.selectedActivity = id;
    this.dispatchEvent(new UnitsSelectEvent(id));
  }
}

/** A float as words: never by sign or colour alone. */
function floatWords(deadline: UnitDeadline | null, words: UnitsStrings): string {
  if (!deadline || deadline.floatMinutes === null) return words.noFloat;
  const { floatMinutes } = deadline;
  return floatMinutes < 0
    ? words.late(floatText(-floatMinutes))
    : words.float(floatText(floatMinutes));
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-units': PossessionUnits;
  }
}
