import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PeopleAnswer } from '../../src/engine/index.js';
import type { AccessWindow, LimitSet } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { exampleLine } from '../shared/example.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { siteStyles } from '../shared/site.styles.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { breachList } from './breach-list.js';
import { clockTurns } from './clock-turns.js';
import { LimitsChangeEvent } from './limits-change-event.js';
import { limitsForm } from './limits-form.js';
import { styles } from './people.styles.js';
import { rosterPicture, spanOf } from './roster-picture.js';
import { defaultStrings, type PeopleStrings } from './strings.js';
import { weeksChoice } from './weeks-choice.js';
import { mendText } from './mend-words.js';
import { RosterMendEvent } from './roster-mend-event.js';
import { windowCrews } from './window-crews.js';
import { changing } from '../shared/changing.js';

/** Weeks of the roster beside each other on a sheet of paper. */
const PRINTED_WEEKS = 4;

/**
 * A roster held to limits on hours: a picture of the turns along the weeks, each breach with the limit's source and the
 * smallest change that ends it, and the crews that each window takes.
 * @summary The roster, the limits on hours it breaks, and how to mend it.
 * @tag possession-people
 * @event {LimitsChangeEvent} possession-limits-change - A reader changed the limits (`part` is `hours`).
 * @event {RosterMendEvent} possession-roster-mend - A reader accepts changes of the roster.
 * @csspart picture - The roster along the weeks.
 * @csspart cautions - The cautions.
 */
export class PossessionPeople extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...siteStyles, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    windows: { attribute: false },
    sets: { attribute: false },
    mendable: { type: Boolean, reflect: true },
    readonly: { type: Boolean },
    weeks: { type: Number },
    page: { state: true },
    strings: { attribute: false },
  };

  declare answer: PeopleAnswer | null;
  /** For the times of the windows' crews. */
  declare windows: readonly AccessWindow[];
  /** Sets of limits to choose from, each with its sources; none: the set is only edited. */
  declare sets: readonly LimitSet[];
  /** Whether changes of the roster are offered: the listener makes those that are accepted. */
  declare mendable: boolean;
  /** Neither limits nor roster may be changed; whoever shows this says why. */
  declare readonly: boolean;
  /** Weeks shown at once; 0: all. */
  declare weeks: number;
  declare page: number;
  declare strings: Partial<PeopleStrings>;

  readonly #words = new Words<PeopleStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  readonly #print = new PrintWatch(this, () => this.performUpdate());
  readonly #frame = new WidthWatch(this, '.picture', 640);

  constructor() {
    super();
    this.answer = null;
    this.windows = [];
    this.sets = [];
    this.mendable = false;
    this.readonly = false;
    this.weeks = 0;
    this.page = 0;
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { answer } = this;
    if (!answer) return html`<p class="quiet"></p>`;
    const { turns, limits } = answer;
    return html`<div class="head">
        <h2>${words.title}</h2>
        <p class="quiet">${words.by(limits.name)}</p>
        ${changing(
          this.readonly,
          exampleLine(answer.isExample, words, () => this.#change(limits)),
        )}
      </div>
      ${cautionList(words.cautions, words.cautionLines)}
      ${
        turns.length === 0
          ? html`<section><p>${words.empty}</p></section>`
          : html`${this.#figures(answer, words)} ${this.#picture(answer, words)}
            ${breachList(
              answer,
              words,
              this.mendable && !this.readonly
                ? (changes) =>
                    this.dispatchEvent(
                      new RosterMendEvent(
                        changes,
                        changes.map((mend) => mendText(mend, words)),
                      ),
                    )
                : null,
            )}
            ${clockTurns(answer, words)}`
      }
      ${windowCrews(answer, this.windows, words)}
      ${changing(
        this.readonly,
        limitsForm(limits, this.sets, words, (set) => this.#change(set)),
      )}`;
  }

  #change(value: LimitSet): void {
    this.dispatchEvent(new LimitsChangeEvent('hours', value));
  }

  #figures({ turns, breaches }: PeopleAnswer, words: PeopleStrings): TemplateResult {
    const crews = new Set(turns.map((turn) => turn.crew)).size;
    return html`<ul class="figures">
      <li><strong>${turns.length}</strong>${words.turns}</li>
      <li><strong>${crews}</strong>${words.crews}</li>
      <li class=${breaches.length > 0 ? 'bad' : ''}>
        <strong>${breaches.length}</strong>${words.breaches}
      </li>
    </ul>`;
  }

  #picture(answer: PeopleAnswer, words: PeopleStrings): TemplateResult {
    if (this.#print.printing) return printedPicture(answer, words);
    const { span, pages } = spanOf(answer, this.weeks, this.page);
    const page = Math.min(this.page, pages - 1);
    const show = (weeks: number, next: number): void => {
      this.weeks = weeks;
      this.page = next;
    };
    return html`<section part="picture">
      <h3>${words.picture}</h3>
      ${weeksChoice({ weeks: this.weeks, page, pages, show }, words)}
      <div class="picture">${rosterPicture(answer, span, this.#frame.width, words)}</div>
    </section>`;
  }
}

/** All weeks of the roster, so many below each other as a sheet is wide. */
function printedPicture(answer: PeopleAnswer, words: PeopleStrings): TemplateResult {
  const { pages } = spanOf(answer, PRINTED_WEEKS, 0);
  return html`<section part="picture">
    <h3>${words.picture}</h3>
    ${Array.from(
      { length: pages },
      (_, page) =>
        html`<div class="picture keep-whole">
          ${rosterPicture(answer, spanOf(answer, PRINTED_WEEKS, page).span, PORTRAIT - 40, words)}
        </div>`,
    )}
  </section>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-people': PossessionPeople;
  }
}
