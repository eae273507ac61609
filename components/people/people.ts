import {
  html,
  LitElement,
  nothing,
  css,
  type PropertyDeclarations,
  type TemplateResult,
} from 'lit';
import type { PeopleAnswer, RosterBreach, WindowCrews } from '../../src/engine/index.js';
import type { AccessWindow, Limit, LimitSet } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { floatText, stretchText } from '../shared/format.js';
import { numberField, siteStyles } from '../shared/number-field.js';
import { WidthWatch } from '../shared/width-watch.js';
import { LimitsChangeEvent } from './limits-change-event.js';
import { measureText, mendText } from './mend-words.js';
import { rosterPicture, spanOf } from './roster-picture.js';
import { defaultStrings, type PeopleStrings } from './strings.js';

const styles = css`
  .bar {
    fill: var(--_act);
  }
  details.more summary {
    width: fit-content;
    min-height: 1.5rem;
    color: var(--_act);
    cursor: pointer;
  }
  @media (forced-colors: active) {
    .bar {
      fill: CanvasText;
    }
  }
`;

/**
 * A roster held to limits on hours: a picture of the turns along the weeks, each breach with the limit's source and the
 * smallest change that ends it, and the crews that each window takes.
 * @summary The roster, the limits on hours it breaks, and how to mend it.
 * @tag possession-people
 * @event {LimitsChangeEvent} possession-limits-change - A reader changed the limits (`part` is `hours`).
 * @csspart picture - The roster along the weeks.
 * @csspart cautions - The cautions.
 */
export class PossessionPeople extends LitElement {
  static override readonly styles = [...base, cautionStyles, siteStyles, styles];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    windows: { attribute: false },
    sets: { attribute: false },
    weeks: { type: Number },
    page: { state: true },
    strings: { attribute: false },
  };

  declare answer: PeopleAnswer | null;
  /** For the times of the windows' crews. */
  declare windows: readonly AccessWindow[];
  /** Sets of limits to choose from, each with its sources; none: the set is only edited. */
  declare sets: readonly LimitSet[];
  /** Weeks shown at once; 0: all. */
  declare weeks: number;
  declare page: number;
  declare strings: Partial<PeopleStrings>;

  readonly #frame = new WidthWatch(this, '.picture', 640);

  constructor() {
    super();
    this.answer = null;
    this.windows = [];
    this.sets = [];
    this.weeks = 0;
    this.page = 0;
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = { ...defaultStrings, ...this.strings };
    const { answer } = this;
    if (!answer) return html`<p class="quiet"></p>`;
    const { turns, breaches, limits } = answer;
    return html`<div class="head">
        <h2>${words.title}</h2>
        <p class="quiet">${words.by(limits.name)}</p>
        ${
          answer.isExample
            ? html`<div class="example">
                <p>${words.example}</p>
                <button type="button" @click=${() => this.#change(limits)}>${words.take}</button>
              </div>`
            : nothing
        }
      </div>
      ${cautionList(words.cautions)}
      ${
        turns.length === 0
          ? html`<section><p>${words.empty}</p></section>`
          : html`${this.#figures(answer, words)} ${this.#picture(answer, words)}
            ${this.#breaches(breaches, answer, words)} ${this.#clocks(answer, words)}`
      }
      ${this.#windows(answer, words)} ${this.#limits(limits, words)}`;
  }

  #change(value: LimitSet): void {
    this.dispatchEvent(new LimitsChangeEvent('hours', value));
  }

  #figures({ turns, breaches }: PeopleAnswer, words: PeopleStrings): TemplateResult {
    const crews = new Set(turns.map((one) => one.crew)).size;
    return html`<ul class="figures">
      <li><strong>${turns.length}</strong>${words.turns}</li>
      <li><strong>${crews}</strong>${words.crews}</li>
      <li class=${breaches.length > 0 ? 'bad' : ''}>
        <strong>${breaches.length}</strong>${words.breaches}
      </li>
    </ul>`;
  }

  #picture(answer: PeopleAnswer, words: PeopleStrings): TemplateResult {
    const { span, pages } = spanOf(answer, this.weeks, this.page);
    const page = Math.min(this.page, pages - 1);
    return html`<section part="picture">
      <h3>${words.picture}</h3>
      <div class="choice" role="group" aria-label=${words.shown}>
        ${[0, 4, 2, 1].map(
          (weeks) =>
            html`<button
              type="button"
              data-weeks=${weeks}
              aria-pressed=${this.weeks === weeks}
              @click=${() => {
                this.weeks = weeks;
                this.page = 0;
              }}
            >
              ${weeks === 0 ? words.all : words.weeks(weeks)}
            </button>`,
        )}
        ${
          pages > 1
            ? html`<button
                  type="button"
                  ?disabled=${page === 0}
                  @click=${() => (this.page = page - 1)}
                >
                  ${words.earlier}
                </button>
                <button
                  type="button"
                  ?disabled=${page >= pages - 1}
                  @click=${() => (this.page = page + 1)}
                >
                  ${words.later}
                </button>`
            : nothing
        }
      </div>
      <div class="picture">${rosterPicture(answer, span, this.#frame.width, words)}</div>
    </section>`;
  }

  #breaches(
    breaches: readonly RosterBreach[],
    { turns, zone, together }: PeopleAnswer,
    words: PeopleStrings,
  ): TemplateResult {
    if (breaches.length === 0)
      return html`<section>
        <h3>${words.broken}</h3>
        <p class="good-text">${words.nothing}</p>
      </section>`;
    const byId = new Map(turns.map((one) => [one.id, one]));
    return html`<section>
      <h3>${words.broken}</h3>
      <p class="quiet">${words.tried}</p>
      <table class="cards breaches">
        <thead>
          <tr>
            <th scope="col">${words.who}</th>
            <th scope="col">${words.limit}</th>
            <th scope="col">${words.found}</th>
            <th scope="col">${words.mend}</th>
          </tr>
        </thead>
        <tbody>
          ${breaches.map((one) => {
            const turn = byId.get(one.assignment);
            const [first, ...rest] = one.mends;
            return html`<tr>
              <th scope="row">
                ${one.crew}, ${one.assignment}
                ${turn ? html`<span class="source">${stretchText(turn.start, turn.end, zone)}</span>` : nothing}
              </th>
              <td>
                ${one.name}
                <span class="source">${one.source} (${one.sureness})</span>
              </td>
              <td>
                <span class="bad-text">${measureText(one.found, one.unit)}</span>, not
                ${measureText(one.allowed, one.unit)}
              </td>
              <td>
                ${first ? mendText(first, words) : words.noMend}
                ${
                  rest.length > 0
                    ? html`<details class="more">
                        <summary>${words.more(rest.length)}</summary>
                        <ul>
                          ${rest.map((mend) => html`<li>${mendText(mend, words)}</li>`)}
                        </ul>
                      </details>`
                    : nothing
                }
              </td>
            </tr>`;
          })}
        </tbody>
      </table>
      ${
        together.changes.length > 0
          ? html`<h3>${words.together}</h3>
              <ol class="together">
                ${together.changes.map((mend) => html`<li>${mendText(mend, words)}</li>`)}
              </ol>
              <p>${words.left(together.left)}</p>`
          : nothing
      }
    </section>`;
  }

  #clocks({ turns }: PeopleAnswer, words: PeopleStrings): TemplateResult | typeof nothing {
    const odd = turns.filter((one) => one.elapsedMinutes !== one.clockMinutes);
    if (odd.length === 0) return nothing;
    return html`<section>
      <h3>${words.clocks}</h3>
      <ul>
        ${odd.map(
          (one) =>
            html`<li>
              ${words.clockTurn(one.id, floatText(one.elapsedMinutes), floatText(one.clockMinutes))}
            </li>`,
        )}
      </ul>
    </section>`;
  }

  #windows({ windows, zone }: PeopleAnswer, words: PeopleStrings): TemplateResult | typeof nothing {
    if (windows.length === 0) return nothing;
    const times = new Map(this.windows.map((one) => [one.id, one]));
    const row = (one: WindowCrews): TemplateResult => {
      const window = times.get(one.window);
      const missing = one.unmanned.reduce((sum, gap) => sum + (gap.end - gap.start) / 60_000, 0);
      return html`<tr>
        <th scope="row">
          ${one.window}
          ${window ? html`<span class="source">${stretchText(window.start, window.end, window.zone ?? zone)}</span>` : nothing}
        </th>
        <td class="figure">${one.plan?.crews ?? ''}</td>
        <td class="figure">${one.plan ? floatText(one.plan.changeoverMinutes) : ''}</td>
        <td>${one.rostered.length > 0 ? one.rostered.join(', ') : words.nobody}</td>
        <td class=${missing > 0 ? 'bad-text' : ''}>
          ${missing > 0 ? floatText(missing) : words.manned}
        </td>
      </tr>`;
    };
    return html`<section>
      <h3>${words.windows}</h3>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.windows}>
        <table>
          <thead>
            <tr>
              <th scope="col">${words.window}</th>
              <th scope="col" class="figure">${words.needed}</th>
              <th scope="col" class="figure">${words.changeovers}</th>
              <th scope="col">${words.rostered}</th>
              <th scope="col">${words.unmanned}</th>
            </tr>
          </thead>
          <tbody>
            ${windows.map(row)}
          </tbody>
        </table>
      </div>
    </section>`;
  }

  #limits(set: LimitSet, words: PeopleStrings): TemplateResult {
    const put = (at: number, limit: Limit): void =>
      this.#change({ ...set, limits: set.limits.with(at, limit) });
    return html`<section>
      <h3>${words.limits}</h3>
      ${set.note === undefined ? nothing : html`<p class="quiet">${set.note}</p>`}
      <div class="fields">
        ${
          this.sets.length === 0
            ? nothing
            : html`<label class="field sets"
                ><span>${words.another}</span>
                <select
                  @change=${(event: Event) => {
                    const chosen =
                      this.sets[Number((event.currentTarget as HTMLSelectElement).value)];
                    if (chosen) this.#change(chosen);
                  }}
                >
                  <option value="">${set.name}</option>
                  ${this.sets.map((one, at) =>
                    one.name === set.name
                      ? nothing
                      : html`<option value=${at}>${one.name}</option>`,
                  )}
                </select></label
              >`
        }
        <label class="field"
          ><span>${words.travel}</span>
          <select
            @change=${(event: Event) =>
              this.#change({
                ...set,
                travel: (event.currentTarget as HTMLSelectElement).value as LimitSet['travel'],
              })}
          >
            <option value="counted" ?selected=${set.travel === 'counted'}>
              ${words.travelCounted}
            </option>
            <option value="not counted" ?selected=${set.travel === 'not counted'}>
              ${words.travelNot}
            </option>
          </select></label
        >
      </div>
      <table class="cards">
        <tbody>
          ${set.limits.map(
            (one, at) =>
              html`<tr>
                <th scope="row">
                  ${one.name}<span class="source">${one.source} (${one.sureness})</span>
                </th>
                <td>${limitField(one, (limit) => put(at, limit))}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>`;
  }
}

/** The figure of a limit to be changed: hours for a time, else a count. */
function limitField(limit: Limit, change: (limit: Limit) => void): TemplateResult {
  const label = limit.name;
  if ('minutes' in limit)
    return numberField({
      label,
      value: limit.minutes / 60,
      unit: 'h',
      min: 1 / 60,
      max: 1600,
      change: (hours) => change({ ...limit, minutes: Math.max(1, Math.round(hours * 60)) }),
    });
  const bounds = { label, min: 1, max: 366, step: 1 } as const;
  if (limit.limit === 'turns-in-fourteen-days')
    return numberField({
      ...bounds,
      value: limit.turns,
      unit: 'turns',
      change: (turns) => change({ ...limit, turns }),
    });
  if (limit.limit === 'nights-in-a-row')
    return numberField({
      ...bounds,
      value: limit.nights,
      unit: 'nights',
      change: (nights) => change({ ...limit, nights }),
    });
  return numberField({
    ...bounds,
    value: limit.days,
    unit: 'days',
    change: (days) => change({ ...limit, days }),
  });
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-people': PossessionPeople;
  }
}
