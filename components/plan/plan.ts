import {
  html,
  LitElement,
  nothing,
  svg,
  type PropertyDeclarations,
  type SVGTemplateResult,
  type TemplateResult,
} from 'lit';
import { durationText, MINUTE } from '../../src/calendar/index.js';
import { certificateSaid } from '../../src/engine/index.js';
import type { AccessWindow, Activity, PlanFault } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import type { Allocation } from '../../src/planner/search/types.js';
import { Fed } from '../document/fed.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { FigureAskEvent } from '../shared/figure-ask-event.js';
import { clockText, countText, dayText, momentText, stretchText } from '../shared/format.js';
import { kindFill, kindPatterns, kindStyles } from '../shared/kinds.js';
import { LANDSCAPE, paper } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { ruleName, said, saidText } from '../shared/said.js';
import { WidthWatch } from '../shared/width-watch.js';
import { keyDateTable } from './key-dates.js';
import { lanesOf, type Lane } from './lanes.js';
import { PieceDrag } from './piece-drag.js';
import { PlacementSelectEvent } from './placement-select-event.js';
import { styles } from './plan.styles.js';
import { defaultStrings, type PlanStrings } from './strings.js';
import { titleText } from '../shared/name.js';
import { Words } from '../shared/words.js';

const LANE = 22;
const STRIP = 10;
/** On a sheet of paper: what the names of windows leave for the drawing. */
const ON_PAPER = LANDSCAPE - 284;

/**
 * A plan for all work: the windows it uses with what is done in each, the key dates with their float, and what is
 * known of how good it is.
 *
 * @summary Windows along time with the work placed in them.
 * @tag possession-plan
 * @event {PlacementSelectEvent} possession-placement-select - A reader picks a placed piece of work.
 * @event {PlacementMoveEvent} possession-placement-move - A reader drags a piece of work to another window.
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a programme float comes from.
 * @csspart certificate - What is known of the answer.
 * @csspart cautions - The cautions, seen in print.
 */
export class PossessionPlan extends LitElement {
  static override readonly styles = [
    ...base,
    kindStyles,
    cautionStyles,
    styles,
    rightToLeft,
    paper,
  ];
  static override readonly properties: PropertyDeclarations = {
    allocation: { attribute: false },
    windows: { attribute: false },
    ledgers: { attribute: false },
    activities: { attribute: false },
    zone: { type: String },
    selected: { attribute: false },
    movable: { type: Boolean },
    strings: { attribute: false },
  };

  declare allocation: Allocation | null;
  declare windows: readonly AccessWindow[];
  declare ledgers: readonly Ledger[];
  declare activities: readonly Activity[];
  /** IANA zone for key dates and outside work. */
  declare zone: string;
  /** Index of the placement picked; null: none. */
  declare selected: number | null;
  /** Whether pieces can be dragged to another window. */
  declare movable: boolean;
  /** Words to use in place of the element's own. */
  declare strings: Partial<PlanStrings>;

  readonly #words = new Words<PlanStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  readonly #drawing = new WidthWatch(this, '.drawing', 640);
  readonly #drag = new PieceDrag(this);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.allocation = null;
    this.windows = [];
    this.ledgers = [];
    this.activities = [];
    this.zone = 'UTC';
    this.selected = null;
    this.movable = false;
    this.strings = {};
    new Fed(this, ({ document, results, plan, want }) => {
      want('plan');
      this.allocation = plan;
      this.windows = results?.plan.windows ?? [];
      this.ledgers = results?.ledgers ?? [];
      this.activities = results?.plan.activities ?? [];
      this.zone = document.zone;
    });
  }

  override render(): TemplateResult {
    const { allocation } = this;
    const words = this.#words.now;
    if (!allocation) return html`<p class="certificate quiet">${words.noPlan}</p>`;
    const { certificate } = allocation;
    const met = allocation.keyDates.filter((date) => date.met).length;
    return html`<div part="certificate" class="certificate">
        ${
          // Nothing good is said of a plan that failed the check.
          certificate.verified
            ? html`<strong class="run">${sentence(saidText(certificateSaid(allocation)))}</strong>`
            : nothing
        }
        ${
          allocation.keyDates.length > 0
            ? html`<span class="run ${met === allocation.keyDates.length ? 'met' : 'missed'}"
                >${words.datesMet(
                  String(met),
                  countText(allocation.keyDates.length, words.keyDate, words.manyKeyDates),
                )}</span
              >`
            : nothing
        }
        <span class="run"
          >${words.used(countText(allocation.windowsUsed, words.window, words.windows))}</span
        >
        <span class="run"
          >${
            allocation.finishesAt === null
              ? words.noFinish
              : words.finishes(momentText(allocation.finishesAt, this.zone))
          }</span
        >
        <span class="run"
          >${words.leftOver(countText(allocation.unplaced.length, words.activity, words.activities))}</span
        >
        ${certificate.verified ? html`<span class="met">${words.checked}</span>` : nothing}
      </div>
      ${
        certificate.verified
          ? nothing
          : html`<div class="unverified" role="alert">
              ${words.notChecked} ${faultList(certificate.faults ?? [])}
            </div>`
      }
      ${this.#renderUnplaced(allocation)}
      <div class="sheet">
        <h2 class="repeat">${words.whichWindow}</h2>
        <div>${this.#renderWindows(allocation)}</div>
      </div>
      ${keyDateTable(allocation.keyDates, this.zone, words, (name) =>
        this.dispatchEvent(new FigureAskEvent({ of: 'key-date', package: name })),
      )}
      <div class="on-paper">${cautionList(words.cautions, words.cautionLines)}</div>`;
  }

  #renderUnplaced(allocation: Allocation): TemplateResult {
    if (allocation.unplaced.length === 0) return html``;
    return html`<h2>${this.#words.now.leftOverTitle}</h2>
      <ul class="unplaced">
        ${allocation.unplaced.map(
          (item) =>
            html`<li>
              <strong>${item.activity}</strong> ${this.#titleOf(item.activity)}
              <div class="quiet">${item.reasons.map((reason) => html`${said(reason)} `)}</div>
            </li>`,
        )}
      </ul>`;
  }

  #renderWindows(allocation: Allocation): TemplateResult {
    const byWindow = new Map<string, { at: number[] }>();
    const outside: number[] = [];
    for (const [index, placement] of allocation.placements.entries()) {
      if (placement.window === null) outside.push(index);
      else {
        const found = byWindow.get(placement.window) ?? { at: [] };
        found.at.push(index);
        byWindow.set(placement.window, found);
      }
    }
    return html`${this.windows
      .filter((window) => byWindow.has(window.id))
      .map((window) => this.#renderWindow(window, byWindow.get(window.id)?.at ?? [], allocation))}
    ${
      outside.length > 0
        ? html`<div class="window">
            <div class="name">
              <strong>${this.#words.now.outside}</strong>
              <div class="quiet">${this.#words.now.needsNone}</div>
            </div>
            <ul>
              ${outside.map((index) => {
                const placement = allocation.placements[index]!;
                return html`<li>
                  <button class="plain" type="button" @click=${() => this.#pick(index)}>
                    ${placement.activity} ${this.#titleOf(placement.activity)}
                  </button>
                  <span class="quiet">${stretchText(placement.from, placement.to, this.zone)}</span>
                </li>`;
              })}
            </ul>
          </div>`
        : nothing
    }`;
  }

  #renderWindow(window: AccessWindow, indices: number[], allocation: Allocation): TemplateResult {
    const lanes = lanesOf(
      indices.map((index) => allocation.placements[index]!),
      indices,
    );
    const count = Math.max(1, ...lanes.map((lane) => lane.lane + 1));
    const ledger = this.ledgers.find((found) => found.window === window.id);
    const width = this.#print.printing ? ON_PAPER : this.#drawing.width;
    const x = (at: number): number =>
      ((at - window.start) / (window.end - window.start)) * Math.max(1, width - 2) + 1;
    return html`<div class="window" data-window=${window.id}>
      <div class="name">
        <strong>${window.id}</strong> ${titleText(window.title)}
        <div class="quiet">
          ${dayText(window.start, window.zone)}
          ${this.#words.now.fromTo(clockText(window.start, window.zone), clockText(window.end, window.zone))},
          ${durationText((window.end - window.start) / MINUTE)}
        </div>
      </div>
      <div class="drawing">
        <svg
          width=${width}
          height=${STRIP + count * LANE + 4}
          role="group"
          aria-label=${this.#words.now.workIn(window.id)}
        >
          ${kindPatterns}
          ${(ledger?.rows ?? []).map(
            (row) =>
              svg`<rect class="edge ${row.kind}" x=${x(row.start)} y="0.5" height=${STRIP - 2} width=${Math.max(0.5, x(row.end) - x(row.start) - 1)} fill=${kindFill(row.kind)}><title>${ruleName(row)}, ${durationText(row.minutes)}</title></rect>`,
          )}
          ${lanes.map((lane) => this.#renderWork(lane, window, x, allocation))}
        </svg>
        ${this.#print.printing ? this.#times(lanes, window) : nothing}
      </div>
    </div>`;
  }

  /** On paper: when each piece starts and ends and who does it, since nobody can point at a box. */
  #times(lanes: readonly Lane[], { zone, start, end }: AccessWindow): TemplateResult {
    const isLong = dayText(start, zone) !== dayText(end, zone) && end - start > 24 * 60 * MINUTE;
    const at = (moment: number): string =>
      `${isLong ? `${dayText(moment, zone)} ` : ''}${clockText(moment, zone)}`;
    const byId = new Map(this.activities.map((activity) => [activity.id, activity]));
    return html`<ul class="times">
      ${lanes.map(({ placement: { activity, from, to, units } }) => {
        const who = byId
          .get(activity)
          ?.resources.map((resource) => `${resource.resource} ${resource.amount}`);
        return html`<li>
          <strong>${activity}</strong>${units === undefined ? '' : ` \u00d7${units}`}
          ${this.#words.now.fromTo(at(from), at(to))}${who && who.length > 0 ? `, ${who.join(', ')}` : ''}
        </li>`;
      })}
    </ul>`;
  }

  #renderWork(
    lane: Lane,
    window: AccessWindow,
    x: (at: number) => number,
    allocation: Allocation,
  ): SVGTemplateResult {
    const { placement, index } = lane;
    const left = x(placement.from);
    const wide = Math.max(3, x(placement.to) - left - 1);
    const top = STRIP + 2 + lane.lane * LANE;
    const float = allocation.floats.find((item) => item.activity === placement.activity);
    const units =
      placement.units === undefined
        ? ''
        : `, ${countText(placement.units, this.#words.now.unit, this.#words.now.units)}`;
    const title = this.#titleOf(placement.activity);
    const long = `${placement.activity} ${title}${units}`;
    const times = this.#words.now.fromTo(
      clockText(placement.from, window.zone),
      clockText(placement.to, window.zone),
    );
    const text =
      wide > long.length * 7.6 + 12
        ? long
        : wide > placement.activity.length * 7.8 + 10
          ? placement.activity
          : '';
    return svg`<g
      class="work ${float?.critical ? 'critical' : ''} ${this.selected === index ? 'chosen' : ''}"
      role="button"
      tabindex="0"
      aria-pressed=${this.selected === index}
      aria-label=${`${long}, ${times}${float?.critical ? `, ${this.#words.now.noFloat}` : ''}`}
      @click=${() => this.#pick(index)}
      @pointerdown=${(event: PointerEvent) => this.#drag.begin(event, index, window.id)}
      @keydown=${(event: KeyboardEvent) => this.#onKey(event, index)}
    >
      <title>${long}, ${times}</title>
      <rect class="body" x=${left} y=${top} width=${wide} height=${LANE - 4}></rect>
      ${float?.critical ? svg`<rect class="edge-mark" x=${left} y=${top} width=${Math.min(4, wide)} height=${LANE - 4}></rect>` : nothing}
      <text x=${left + 8} y=${top + 13}>${text}</text>
    </g>`;
  }

  #titleOf(id: string): string {
    return this.activities.find((activity) => activity.id === id)?.title ?? '';
  }

  #pick(index: number): void {
    this.selected = index;
    this.dispatchEvent(new PlacementSelectEvent(index));
  }

  #onKey(event: KeyboardEvent, index: number): void {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    this.#pick(index);
  }
}

/** What the check found, a line each. */
function faultList(faults: readonly PlanFault[]): TemplateResult | typeof nothing {
  if (faults.length === 0) return nothing;
  return html`<ul>
    ${faults.map((fault) => html`<li>${sentence(saidText(fault.text))}</li>`)}
  </ul>`;
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-plan': PossessionPlan;
  }
}
