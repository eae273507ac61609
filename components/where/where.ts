import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { HOUR } from '../../src/calendar/index.js';
import { meetingsOf, type Allocation, type Meeting } from '../../src/engine/index.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { PlacementSelectEvent } from '../plan/placement-select-event.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { clockText, dayText, stretchText } from '../shared/format.js';
import { LANDSCAPE, paper } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { WidthWatch } from '../shared/width-watch.js';
import { fieldsOf, reachOf, type Field } from './fields.js';
import { fieldPicture, placeAxis, PlaceScale, placeText } from './picture.js';
import { defaultStrings, type WhereStrings } from './strings.js';
import { styles } from './where.styles.js';
import { nameText } from '../shared/name.js';
import { Words } from '../shared/words.js';

/** Pixels of an hour where many windows are drawn, and the most and least of one that is drawn alone. */
const PER_HOUR = 16;
/** Height of a field on a sheet of paper at most. */
const ON_PAPER = 560;
const ALONE = { high: 560, most: 90, least: 12 };

/**
 * The planned work by place and time: each window a field, place along it and time down it, with the pieces of work in
 * it, and those that stand at one place at one time marked and listed.
 *
 * @summary Where and when the planned work is, window by window.
 * @tag possession-where
 * @event {PlacementSelectEvent} possession-placement-select - A reader picks a placed piece of work.
 * @csspart cautions - The cautions.
 */
export class PossessionWhere extends LitElement {
  static override readonly styles = [...base, cautionStyles, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    allocation: { attribute: false },
    windows: { attribute: false },
    activities: { attribute: false },
    selected: { attribute: false },
    window: { type: String, reflect: true },
    line: { type: String, reflect: true },
    strings: { attribute: false },
  };

  declare allocation: Pick<Allocation, 'placements'> | null;
  declare windows: readonly AccessWindow[];
  declare activities: readonly Activity[];
  /** Index of the picked placement; null: none. */
  declare selected: number | null;
  /** Id of the one window that is drawn; empty: all that hold work. */
  declare window: string;
  /** The one line whose work is drawn; empty: all lines. */
  declare line: string;
  /** Words to use in place of the element's own. */
  declare strings: Partial<WhereStrings>;

  readonly #words = new Words<WhereStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  readonly #drawing = new WidthWatch(this, '.frame', 900);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.allocation = null;
    this.windows = [];
    this.activities = [];
    this.selected = null;
    this.window = '';
    this.line = '';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { allocation } = this;
    if (!allocation) return html`<p class="empty quiet">${words.noPlan}</p>`;
    const lines = [...new Set(this.activities.flatMap((activity) => activity.lines))].sort();
    const line = lines.includes(this.line) ? this.line : '';
    const all = fieldsOf(allocation.placements, this.activities, this.windows, line);
    const chosen = all.filter((field) => field.window.id === this.window);
    const fields = chosen.length > 0 ? chosen : all;
    const drawn = new Set(fields.flatMap((field) => field.pieces.map((piece) => piece.index)));
    const meetings = meetingsOf(allocation.placements, this.activities).filter(
      (meeting) => drawn.has(meeting.first) && drawn.has(meeting.second),
    );
    return html`<h2>${words.title}</h2>
      <div class="bar on-screen">
        ${this.#renderChoice('line', words.line, line, [['', words.allLines], ...lines.map((text) => [text, text] as const)])}
        ${this.#renderChoice('window', words.windows, chosen.length > 0 ? this.window : '', [
          ['', words.allWindows],
          ...all.map(
            ({ window }) =>
              [window.id, `${window.id}, ${dayText(window.start, window.zone)}`] as const,
          ),
        ])}
      </div>
      ${fields.length === 0 ? html`<p class="empty">${words.noWork}</p>` : this.#renderFields(fields, meetings, chosen.length > 0, words)}
      ${cautionList(words.cautions, words.cautionLines)}`;
  }

  #renderChoice(
    name: 'line' | 'window',
    label: string,
    value: string,
    choices: readonly (readonly [string, string])[],
  ): TemplateResult {
    return html`<label
      >${label}
      <select
        @change=${(event: Event) => {
          this[name] = (event.target as HTMLSelectElement).value;
        }}
      >
        ${choices.map(
          ([choice, text]) =>
            html`<option value=${choice} ?selected=${choice === value}>${text}</option>`,
        )}
      </select></label
    >`;
  }

  #renderFields(
    fields: readonly Field[],
    meetings: readonly Meeting[],
    alone: boolean,
    words: WhereStrings,
  ): TemplateResult {
    const scale = new PlaceScale(
      reachOf(fields),
      this.#print.printing ? LANDSCAPE - 24 : this.#wide,
    );
    const perHour = (window: AccessWindow): number =>
      this.#print.printing
        ? Math.min(PER_HOUR, ON_PAPER / ((window.end - window.start) / HOUR))
        : alone
          ? Math.min(
              ALONE.most,
              Math.max(ALONE.least, ALONE.high / ((window.end - window.start) / HOUR)),
            )
          : PER_HOUR;
    const noPlace = fields
      .flatMap((field) => field.pieces)
      .filter((piece) => !piece.activity.extent).length;
    return html`${meetingSummary(meetings, noPlace, words)}
      <p class="quiet told">${words.told}</p>
      <div class="frame">
        <div class="top">${placeAxis(scale, words)}</div>
        ${fields.map(
          (field) =>
            html`<section class="keep-whole">
              <h3>
                ${nameText(field.window)}
                <span class="quiet"
                  >${stretchText(field.window.start, field.window.end, field.window.zone)},
                  ${words.status[field.window.status]}</span
                >
              </h3>
              ${fieldPicture(field, scale, perHour(field.window), meetings, this.selected, words, (index) => this.#pick(index))}
            </section>`,
        )}
      </div>
      ${meetings.length > 0 ? this.#renderMeetings(meetings, words) : nothing}
      <details ?open=${this.#print.printing}>
        <summary>${words.table}</summary>
        ${this.#renderTable(fields, words)}
      </details>`;
  }

  #renderMeetings(meetings: readonly Meeting[], words: WhereStrings): TemplateResult {
    const byId = new Map(this.windows.map((window) => [window.id, window]));
    const placed = this.allocation!.placements;
    const name = (index: number): TemplateResult =>
      html`<button class="plain" type="button" @click=${() => this.#pick(index)}>
        ${placed[index]!.activity}
      </button>`;
    const rank = { alone: 0, unsaid: 1, shared: 2 };
    return html`<details
      ?open=${this.#print.printing || meetings.some((meeting) => meeting.kind === 'alone')}
    >
      <summary>${words.meetingTable}</summary>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.meetingTable}>
        <table>
          <thead>
            <tr>
              <th scope="col">${words.kind}</th>
              <th scope="col">${words.first}</th>
              <th scope="col">${words.second}</th>
              <th scope="col">${words.window}</th>
              <th scope="col">${words.from}</th>
              <th scope="col">${words.common}</th>
            </tr>
          </thead>
          <tbody>
            ${meetings
              .toSorted((a, b) => rank[a.kind] - rank[b.kind] || a.from - b.from)
              .map((meeting) => {
                const window = byId.get(placed[meeting.first]!.window ?? '');
                return html`<tr>
                  <td class=${meeting.kind === 'alone' ? 'wrong' : ''}>
                    ${words.kinds[meeting.kind]}
                  </td>
                  <td>${name(meeting.first)}</td>
                  <td>${name(meeting.second)}</td>
                  <td>${window?.id}</td>
                  <td>${stretchText(meeting.from, meeting.to, window?.zone ?? 'UTC')}</td>
                  <td>${meeting.extent ? reachText(meeting.extent, words) : words.everywhere}</td>
                </tr>`;
              })}
          </tbody>
        </table>
      </div>
    </details>`;
  }

  #renderTable(fields: readonly Field[], words: WhereStrings): TemplateResult {
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.table}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.window}</th>
            <th scope="col">${words.work}</th>
            <th scope="col">${words.from}</th>
            <th scope="col">${words.to}</th>
            <th scope="col">${words.reach}</th>
            <th scope="col">${words.lines}</th>
            <th scope="col" class="figure">${words.units}</th>
          </tr>
        </thead>
        <tbody>
          ${fields.flatMap(({ window, pieces }) =>
            pieces.map(
              ({ index, placement, activity }) =>
                html`<tr>
                  <td>${window.id}</td>
                  <th scope="row">
                    <button class="plain" type="button" @click=${() => this.#pick(index)}>
                      ${activity.id}
                    </button>
                    ${activity.title}
                  </th>
                  <td>
                    ${dayText(placement.from, window.zone)}
                    ${clockText(placement.from, window.zone)}
                  </td>
                  <td>
                    ${dayText(placement.to, window.zone)} ${clockText(placement.to, window.zone)}
                  </td>
                  <td>${activity.extent ? reachText(activity.extent, words) : words.everywhere}</td>
                  <td>${activity.lines.join(', ') || words.allLines}</td>
                  <td class="figure">${placement.units ?? ''}</td>
                </tr>`,
            ),
          )}
        </tbody>
      </table>
    </div>`;
  }

  get #wide(): number {
    return Math.max(280, this.#drawing.width);
  }

  #pick(index: number): void {
    this.selected = index;
    this.dispatchEvent(new PlacementSelectEvent(index));
  }
}

const reachText = ({ from, to }: { from: number; to: number }, words: WhereStrings): string =>
  from === to ? placeText(from) : words.fromTo(placeText(from), placeText(to));

/** How many pairs stand at one place at one time, by what was said of them. */
function meetingSummary(
  meetings: readonly Meeting[],
  noPlace: number,
  words: WhereStrings,
): TemplateResult {
  const kinds = (['alone', 'unsaid', 'shared'] as const)
    .map((kind) => [kind, meetings.filter((meeting) => meeting.kind === kind).length] as const)
    .filter(([, count]) => count > 0);
  const isWrong = kinds.some(([kind]) => kind === 'alone');
  return html`<p class="summary ${isWrong ? 'wrong' : ''}" role="status">
    ${
      meetings.length === 0
        ? words.noMeeting
        : `${words.meetings(meetings.length)} ${kinds.map(([kind, count]) => words.ofKind[kind](count)).join(' ')}`
    }
    ${noPlace > 0 ? words.noPlace(noPlace) : nothing}
  </p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-where': PossessionWhere;
  }
}
