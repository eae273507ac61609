import {
  html,
  LitElement,
  nothing,
  svg,
  type PropertyDeclarations,
  type TemplateResult,
} from 'lit';
import {
  wantedByWeek,
  type Allocation,
  type WantedResource,
  type WantedWeek,
} from '../../src/engine/index.js';
import type { Activity, Resource } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { dayText, momentText, dateText } from '../shared/format.js';
import { LANDSCAPE, paper } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { defaultStrings, type WhereStrings } from '../where/strings.js';
import { wantedStyles } from './wanted.styles.js';

const NAMES = 132;
const HIGH = 44;
const FOOT = 20;
const WEEK = 7 * 24 * 60 * 60_000;

/** Whether more is wanted than is held. */
const isShort = ({ wanted, held }: WantedWeek): boolean => held !== null && wanted > held;

/**
 * People and plant that the plan wants, week by week, against what is held, as bars with their table.
 *
 * @summary Resources wanted against held, by week.
 * @tag possession-wanted
 * @csspart cautions - The cautions.
 */
export class PossessionWanted extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...wantedStyles, paper];
  static override readonly properties: PropertyDeclarations = {
    allocation: { attribute: false },
    activities: { attribute: false },
    resources: { attribute: false },
    zone: { type: String },
    strings: { attribute: false },
  };

  declare allocation: Pick<Allocation, 'placements'> | null;
  declare activities: readonly Activity[];
  declare resources: readonly Resource[];
  /** IANA zone in which weeks begin. */
  declare zone: string;
  /** Words to use in place of the element's own. */
  declare strings: Partial<WhereStrings>;

  readonly #words = new Words<WhereStrings>(this, defaultStrings, {
    de: () => import('../where/strings.de.js'),
  });

  readonly #drawing = new WidthWatch(this, '.frame', 900);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.allocation = null;
    this.activities = [];
    this.resources = [];
    this.zone = 'UTC';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { allocation } = this;
    if (!allocation) return html`<p class="empty quiet">${words.noPlan}</p>`;
    const wanted = wantedByWeek(allocation.placements, this.activities, this.resources, this.zone);
    if (wanted.length === 0) return html`<p class="empty quiet">${words.wantedNone}</p>`;
    const short = wanted.flatMap((resource) => resource.weeks).filter(isShort).length;
    return html`<h2>${words.wantedTitle}</h2>
      <p class="summary ${short > 0 ? 'wrong' : ''}" role="status">${words.short(short)}</p>
      <p class="quiet told">${words.wantedTold}</p>
      <div class="frame">${this.#renderPicture(wanted, words)}</div>
      <details ?open=${this.#print.printing}>
        <summary>${words.wantedTable}</summary>
        ${this.#renderTable(wanted, words)}
      </details>
      ${cautionList(words.cautions, words.cautionLines)}`;
  }

  #renderPicture(wanted: readonly WantedResource[], words: WhereStrings): TemplateResult {
    const wide = this.#print.printing ? LANDSCAPE - 24 : Math.max(300, this.#drawing.width);
    const weeks = wanted.flatMap((resource) => resource.weeks.map(({ week }) => week));
    const first = Math.min(...weeks);
    const count = Math.round((Math.max(...weeks) - first) / WEEK) + 1;
    const step = (wide - NAMES - 8) / count;
    const x = (week: number): number =>
      Math.round((NAMES + Math.round((week - first) / WEEK) * step) * 10) / 10;
    const named = Math.max(1, Math.ceil(64 / step));
    const bar = Math.max(2, step - 2);
    return html`${wanted.map(({ resource, weeks: own }) => {
        const most = Math.max(1, ...own.map((week) => Math.max(week.wanted, week.held ?? 0)));
        const y = (amount: number): number => Math.round(HIGH - (amount / most) * (HIGH - 8));
        const label = own
          .filter(isShort)
          .map(
            (week) =>
              `${dayText(week.week, this.zone)}: ${words.wantedOf(week.wanted, String(week.held ?? ''))}`,
          );
        return html`<svg
          class="keep-whole"
          width=${wide}
          height=${HIGH + 4}
          role="img"
          aria-label=${`${resource}. ${words.short(label.length)} ${label.join(', ')}`}
        >
          <text class="who" x="0" y="20">${resource}</text>
          <text class="tick" x="0" y="36">
            ${own.every((week) => week.held === null) ? words.notListed : words.most(most)}
          </text>
          <line class="foot" x1=${NAMES} x2=${wide} y1=${HIGH} y2=${HIGH}></line>
          ${own.map(
            (week) =>
              svg`<rect class="bar ${isShort(week) ? 'short' : ''}" x=${x(week.week)} width=${bar} y=${y(week.wanted)} height=${HIGH - y(week.wanted)}></rect>
              ${week.held === null ? nothing : svg`<line class="held" x1=${x(week.week) - 1} x2=${x(week.week) + bar + 1} y1=${y(week.held)} y2=${y(week.held)}></line>`}
              ${isShort(week) ? svg`<path class="mark" d="M${x(week.week) + bar / 2 - 4} 0 h8 l-4 6 Z"></path>` : nothing}`,
          )}
        </svg>`;
      })}
      <svg width=${wide} height=${FOOT} aria-hidden="true">
        ${Array.from({ length: Math.ceil(count / named) }, (_, at) => {
          const week = first + at * named * WEEK;
          return svg`<text class="tick" x=${x(week)} y="14">${dateText(week + WEEK / 14, this.zone)}</text>`;
        })}
      </svg>`;
  }

  #renderTable(wanted: readonly WantedResource[], words: WhereStrings): TemplateResult {
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.wantedTable}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.resource}</th>
            <th scope="col">${words.week}</th>
            <th scope="col" class="figure">${words.wanted}</th>
            <th scope="col" class="figure">${words.held}</th>
            <th scope="col">${words.moment}</th>
          </tr>
        </thead>
        <tbody>
          ${wanted.flatMap(({ resource, weeks }) =>
            weeks.map(
              (week) =>
                html`<tr>
                  <th scope="row">${resource}</th>
                  <td>${dayText(week.week, this.zone)}</td>
                  <td class="figure ${isShort(week) ? 'wrong' : ''}">${week.wanted}</td>
                  <td class="figure">${week.held ?? words.notListed}</td>
                  <td>${momentText(week.at, this.zone)}</td>
                </tr>`,
            ),
          )}
        </tbody>
      </table>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-wanted': PossessionWanted;
  }
}
