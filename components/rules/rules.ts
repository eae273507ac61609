import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { isZone } from '../../src/calendar/index.js';
import { ruleSketch } from '../../src/engine/rule-change/rule-sketch.js';
import type { RuleChange, WorkKind } from '../../src/engine/index.js';
import { loadRuleSetSchema, type AccessWindow, type RuleSet } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { countText } from '../shared/format.js';
import { kindStyles } from '../shared/kinds.js';
import { paper } from '../shared/paper.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { wordsOf } from '../shared/words-of.js';
import type { Place } from '../why/explanation.js';
import { WhyLinkEvent } from '../why/why-events.js';
import { changePart } from './change-part.js';
import type { ChangeSetting } from './change-view.js';
import { curfewList } from './curfew-list.js';
import { Drafts, RowKeys } from './drafts.js';
import type { Edit, Form } from './form.js';
import { formStyles } from './form.styles.js';
import { sketchPicture } from './picture.js';
import type { Read } from './read-field.js';
import { RulesBaseEvent } from './rules-base-event.js';
import { RulesChangeEvent } from './rules-change-event.js';
import { styles } from './rules.styles.js';
import type { EventFiles } from './event-files.js';
import { eventList } from './event-list.js';
import { riskOf } from './risk-edits.js';
import { riskFields } from './risk-fields.js';
import { generalFields, marginFields, shiftsFields } from './settings.js';
import { firstChoice, sketchFields, windowOf, type SketchChoice } from './sketch-choice.js';
import type { Rows } from './row-parts.js';
import { stepList } from './step-list.js';
import { defaultStrings, type RulesStrings } from './strings.js';
import { changing } from '../shared/changing.js';

type List = 'leadIn' | 'leadOut' | 'curfews' | 'events';
const lists: readonly List[] = ['leadIn', 'leadOut', 'curfews', 'events'];
const lengthOf = (rules: RuleSet | null, list: List): number =>
  rules === null ? 0 : list === 'events' ? riskOf(rules).events.length : rules[list].length;

/**
 * A rule set as a form, as a picture along time, and with what its changes do to windows and fits.
 *
 * Each valid edit is taken at once and told; a text that cannot be used stays in its field with what is wrong, and the
 * last valid rules hold. Undo is the host's: rules given from outside replace all, and texts not used are forgotten.
 *
 * Keyboard: Alt with an up or down arrow moves a step; Escape brings back what holds in a field.
 * @summary Editor of lead-in, lead-out, margin, chance wanted, events, times without work and shifts.
 * @tag possession-rules
 * @event {RulesChangeEvent} possession-rules-change - A person changed the rules; they are valid.
 * @event {RulesSaveEvent} possession-rules-save - A person wants the events as a file.
 * @event {RulesBaseEvent} possession-rules-base - A person wants later rules compared with those of now.
 * @event {WhyLinkEvent} possession-why-link - A reader follows a link to a window, a package or a fit.
 * @csspart general - What the rules are called, where their clocks are and where they come from.
 * @csspart steps - One list of steps.
 * @csspart margin - The margin required at handback.
 * @csspart shifts - When gangs are at work.
 * @csspart risk - The chance wanted, the shape of spreads and the common cause.
 * @csspart events - What may go wrong.
 * @csspart curfews - The times when work stops.
 * @csspart picture - The rules along time.
 * @csspart change - What the rules change.
 * @csspart cautions - The cautions.
 */
export class PossessionRules extends LitElement {
  static override readonly styles = [
    ...base,
    kindStyles,
    cautionStyles,
    formStyles,
    styles,
    rightToLeft,
    paper,
  ];
  static override readonly properties: PropertyDeclarations = {
    rules: { attribute: false },
    beforeRules: { attribute: false },
    change: { attribute: false },
    busy: { type: Boolean },
    windows: { attribute: false },
    activities: { attribute: false },
    zone: { type: String },
    readonly: { type: Boolean },
    strings: { attribute: false },
    choice: { state: true },
    work: { state: true },
    whole: { state: true },
    refused: { state: true },
    said: { state: true },
  };

  declare rules: RuleSet | null;
  /** The rules that `change` compares with; null: nothing to compare with or to go back to. */
  declare beforeRules: RuleSet | null;
  /** What `rules` do to the plan against `beforeRules`, from `Engine.compareRules`; its `fits` may come later. */
  declare change: RuleChange | null;
  /** The change, or its fits, are being worked out. */
  declare busy: boolean;
  /** Windows of the plan, to lay the rules in and to name; may be empty. */
  declare windows: readonly AccessWindow[];
  /** Activities of the plan, for events that hold one up; may be empty. */
  declare activities: readonly { readonly id: string; readonly title: string }[];
  /** IANA zone of the plan, for rules without their own. */
  declare zone: string;
  /** The rules may not be changed; whoever shows this says why. */
  declare readonly: boolean;
  /** Words to use in place of the element's own. */
  declare strings: Partial<RulesStrings>;

  readonly #words = new Words<RulesStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });
  declare private choice: SketchChoice;
  declare private work: WorkKind | null;
  declare private whole: ReadonlySet<string>;
  declare private refused: string;
  /** What became of the last file of events brought in. */
  declare private said: EventFiles['said'];

  readonly #drafts = new Drafts();
  readonly #keys: Readonly<Record<List, RowKeys>> = {
    leadIn: new RowKeys('in'),
    leadOut: new RowKeys('out'),
    curfews: new RowKeys('stop'),
    events: new RowKeys('event'),
  };
  readonly #drawing = new WidthWatch(this, '.sketch .axis .drawing-room', 560);
  /** The rules last told of, so that they are known when the host gives them back. */
  #told = '';
  #schema: Awaited<ReturnType<typeof loadRuleSetSchema>> | undefined;
  /** Why the schema could not be loaded. */
  #unloaded = '';

  constructor() {
    super();
    this.rules = null;
    this.beforeRules = null;
    this.change = null;
    this.busy = false;
    this.windows = [];
    this.activities = [];
    this.zone = 'UTC';
    this.readonly = false;
    this.strings = {};
    this.choice = firstChoice;
    this.work = null;
    this.whole = new Set();
    this.refused = '';
    this.said = [];
  }

  protected loadSchema(): ReturnType<typeof loadRuleSetSchema> {
    return loadRuleSetSchema();
  }

  /** Nothing is shown before there is what looks at edits, so that none has to wait. */
  protected override async scheduleUpdate(): Promise<void> {
    if (!this.#schema)
      try {
        this.#schema = await this.loadSchema();
      } catch (error) {
        this.#unloaded = wordsOf(error);
      }
    await super.scheduleUpdate();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('rules')) return;
    const given = JSON.stringify(this.rules);
    if (given !== this.#told) {
      this.#drafts.clear();
      this.refused = '';
      this.#told = given;
    }
    for (const list of lists) this.#keys[list].fit(lengthOf(this.rules, list));
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { rules } = this;
    if (!rules) return html`<p class="empty quiet">${words.empty}</p>`;
    const form = this.#form(rules, words);
    return html`<header>
        <h2>${words.title}</h2>
        <p class="problems" role="status">
          ${
            this.#drafts.size > 0
              ? html`<span class="lost"
                  ><span aria-hidden="true">✕</span> ${words.unmended(
                    countText(this.#drafts.size, words.entry, words.entries),
                  )}</span
                >`
              : nothing
          }
          ${this.refused === '' ? nothing : html`<span class="lost">${this.refused}</span>`}
        </p>
      </header>
      <div class="halves">
        ${changing(
          this.readonly,
          html`<div class="form">
            ${generalFields(form)} ${stepList(form, 'leadIn', this.#rows('leadIn'))}
            ${stepList(form, 'leadOut', this.#rows('leadOut'))}
            <p class="quiet tip">${words.moveTold}</p>
            ${marginFields(form)} ${riskFields(form)}
            ${eventList(form, this.#rows('events'), {
              windows: this.windows,
              activities: this.activities,
              zone: this.#zoneOf(rules),
              said: this.said,
              say: (lines) => {
                this.said = lines;
              },
              send: (event) => this.dispatchEvent(event),
            })}
            ${curfewList(form, this.#rows('curfews'))}
            ${shiftsFields(form, (edit) => this.#apply(edit))}
          </div>`,
        )}
        <div class="beside">
          ${this.#renderPicture(rules, words)}
          ${changePart(
            {
              rules,
              beforeRules: this.beforeRules,
              change: this.change,
              busy: this.busy,
              readonly: this.readonly,
            },
            this.#setting(this.change, words),
            {
              back: (before) => this.#apply({ rules: before, label: words.backTo }),
              base: () => this.dispatchEvent(new RulesBaseEvent()),
            },
          )}
        </div>
      </div>
      ${cautionList(words.cautions, words.cautionLines)}`;
  }

  /** Puts the cursor in a step or a time without work by its name, or in `margin`. False when there is none. */
  goTo(name: string): boolean {
    const list = lists.find((text) => rowNamed(this.rules, text, name) >= 0);
    const field =
      name === 'margin'
        ? 'margin.minutes'
        : name === 'handback'
          ? 'handback.chance'
          : list && `${this.#keys[list].at(rowNamed(this.rules, list, name))}.minutes`;
    const found = [field, field?.replace('.minutes', '.name')].flatMap((item) =>
      item === undefined
        ? []
        : (this.renderRoot.querySelector<HTMLElement>(`[data-field="${item}"]`) ?? []),
    )[0];
    found?.focus();
    found?.scrollIntoView({ block: 'nearest' });
    return found !== undefined;
  }

  #renderPicture(rules: RuleSet, words: RulesStrings): TemplateResult {
    const window = windowOf(this.choice, this.windows, this.#zoneOf(rules));
    return html`<section class="see" aria-label=${words.picture}>
      <h3>${words.picture}</h3>
      ${sketchFields(this.choice, this.windows, words, (next) => {
        this.choice = next;
      })}
      ${sketchPicture(ruleSketch(rules, window, this.choice), this.#drawing.width, words)}
    </section>`;
  }

  #zoneOf({ zone }: RuleSet): string {
    return zone !== undefined && isZone(zone) ? zone : this.zone;
  }

  #setting(change: RuleChange | null, words: RulesStrings): ChangeSetting {
    // Unless the reader chose: the first kind of work that any window changes for.
    const first = change?.windows.find((window) => window.minutes !== 0)?.work;
    const known = new Set(change?.windows.map((window) => window.work));
    const chosen = this.work !== null && known.has(this.work) ? this.work : undefined;
    return {
      words,
      windows: this.windows,
      work: chosen ?? (changedFor(change, 'ordinary') ? 'ordinary' : (first ?? 'ordinary')),
      whole: this.whole,
      choose: (work) => {
        this.work = work;
      },
      open: (list) => {
        const whole = new Set(this.whole);
        if (!whole.delete(list)) whole.add(list);
        this.whole = whole;
      },
      follow: (place: Place) => this.dispatchEvent(new WhyLinkEvent(place)),
    };
  }

  #form(rules: RuleSet, words: RulesStrings): Form {
    return {
      rules,
      words,
      drafts: this.#drafts,
      commit: (key: string, text: string, edit: Read<Edit>) => {
        if ('value' in edit) {
          this.#drafts.drop(key);
          this.#apply(edit.value);
        } else this.#drafts.keep(key, { text, trouble: edit.trouble });
        this.requestUpdate();
      },
      restore: (key: string) => {
        this.#drafts.drop(key);
        this.requestUpdate();
      },
    };
  }

  #rows(list: List): Rows {
    const keys = this.#keys[list];
    return {
      keys,
      add: (edit, row) => {
        if (this.#apply(edit)) this.#focusLater(() => `[data-row="${keys.at(row)}"] input`);
      },
      take: (edit) => this.#apply(edit),
      remove: (edit, row) => {
        const key = keys.at(row);
        keys.remove(row);
        if (!this.#apply(edit)) return;
        this.#drafts.dropRow(key);
        const next = Math.min(row, lengthOf(this.rules, list) - 1);
        this.#focusLater(() =>
          next < 0
            ? `[data-add="${list}"]`
            : `[data-row="${keys.at(next)}"] [data-control="remove"]`,
        );
      },
      move: (edit, from, to, control) => {
        const key = keys.at(from);
        keys.move(from, to);
        if (!this.#apply(edit)) return;
        this.#focusLater(
          () =>
            [`[data-row="${key}"] [data-field="${control}"]`]
              .concat(
                [control, 'down', 'up'].map(
                  (text) => `[data-row="${key}"] [data-control="${text}"]:not(:disabled)`,
                ),
              )
              .find((text) => this.renderRoot.querySelector(text)) ?? `[data-row="${key}"] input`,
        );
      },
    };
  }

  /** Takes an edit that the schema allows. What a field may hold is looked at before; this is the last look. */
  #apply({ rules, label }: Edit): boolean {
    const checked = this.#schema?.safeParse(rules);
    if (!checked?.success) {
      const words = this.#words.now;
      const issue = checked?.error.issues[0];
      this.refused = issue
        ? words.wrong.schema(`${issue.path.join('.')} ${issue.message}`)
        : words.wrong.unchecked(this.#unloaded);
      return false;
    }
    this.refused = '';
    this.#told = JSON.stringify(rules);
    this.rules = rules;
    this.dispatchEvent(new RulesChangeEvent(rules, label));
    return true;
  }

  #focusLater(find: () => string): void {
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(find())?.focus(),
    );
  }
}

function rowNamed(rules: RuleSet | null, list: List, name: string): number {
  if (!rules) return -1;
  if (list === 'events') return riskOf(rules).events.findIndex((item) => item.name === name);
  return list === 'curfews'
    ? rules.curfews.findIndex((curfew) => curfew.name === name)
    : rules[list].findIndex((item) => item.step === name);
}

function changedFor(change: RuleChange | null, work: WorkKind): boolean {
  return change?.windows.some((window) => window.work === work && window.minutes !== 0) ?? false;
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-rules': PossessionRules;
  }
}
