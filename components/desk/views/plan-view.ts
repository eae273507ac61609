import { html, nothing, type TemplateResult } from 'lit';
import type { Placement, Results } from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import type { PlacementMoveEvent } from '../../plan/placement-move-event.js';
import type { PlacementSelectEvent } from '../../plan/placement-select-event.js';
import type { Desk } from '../desk-parts.js';
import { moveWork } from '../forms/piece-acts.js';
import { pieceForms } from '../forms/piece-forms.js';
import type { PlanPart } from '../views.js';

/** The plan of the work in its windows, the units in place, or the plan against the one before. */
export function planView(desk: Desk, results: Results, document: PlanDocument): TemplateResult {
  return html`${bar(desk)}
  ${desk.planPart === 'plan' ? planned(desk, results, document) : part(desk, results, document)}`;
}

function bar(desk: Desk): TemplateResult {
  return html`<div class="bar">
    <div class="choice" role="group" aria-label=${desk.words.planShown}>
      ${(Object.entries(desk.words.planPart) as [PlanPart, string][]).map(
        ([part, text]) =>
          html`<button
            type="button"
            aria-pressed=${part === desk.planPart}
            @click=${() => {
              desk.planPart = part;
            }}
          >
            ${text}
          </button>`,
      )}
    </div>
  </div>`;
}

/** Ends the search, with the best plan so far where there is one. */
export function settleButton({ planning, words }: Desk): TemplateResult {
  return html`<button type="button" @click=${() => planning.settle()}>
    ${planning.draft ? words.enough : words.stop}
  </button>`;
}

function part(desk: Desk, results: Results, document: PlanDocument): TemplateResult {
  return html`<div
    class="fill pad"
    tabindex="0"
    role="region"
    aria-label=${desk.words.planPart[desk.planPart]}
  >
    ${partOf(desk, results, document)}
  </div>`;
}

function partOf(desk: Desk, results: Results, document: PlanDocument): TemplateResult {
  const { windows, activities, resources } = results.plan;
  const { looked, earlier } = desk.planning;
  switch (desk.planPart) {
    case 'where':
      return html`<possession-where
        .allocation=${looked}
        .windows=${windows}
        .activities=${activities}
        .selected=${desk.picked.placement}
        @possession-placement-select=${(event: PlacementSelectEvent) => pickPlacement(desk, event)}
      ></possession-where>`;
    case 'wanted':
      return html`<possession-wanted
        .allocation=${looked}
        .activities=${activities}
        .resources=${resources}
        .zone=${document.zone}
      ></possession-wanted>`;
    case 'units':
      return html`<possession-units
        .allocation=${looked}
        .windows=${windows}
        .activities=${activities}
        .zone=${document.zone}
      ></possession-units>`;
    default:
      return html`<possession-compare
        .beforePlan=${earlier}
        .afterPlan=${earlier ? looked : null}
        .windows=${windows}
        .activities=${activities}
        .zone=${document.zone}
      ></possession-compare>`;
  }
}

function planned(desk: Desk, results: Results, document: PlanDocument): TemplateResult {
  return html`<div class="fill" tabindex="0" role="region" aria-label=${desk.words.planTitle}>
    <possession-plan
      .allocation=${desk.planning.looked}
      .windows=${results.plan.windows}
      .ledgers=${results.ledgers}
      .activities=${results.plan.activities}
      .zone=${document.zone}
      .selected=${desk.picked.placement}
      .movable=${!desk.sharing.reads}
      @possession-placement-move=${({ index, window }: PlacementMoveEvent) => {
        const piece = desk.planning.looked?.placements[index];
        if (piece) moveWork(desk, piece.activity, window);
      }}
      @possession-placement-select=${(event: PlacementSelectEvent) => pickPlacement(desk, event)}
    ></possession-plan>
  </div>`;
}

function pickPlacement(desk: Desk, { index }: PlacementSelectEvent): void {
  const { picked, figures } = desk;
  picked.pick({ placement: index });
  picked.explain((why) => {
    const allocation = desk.planning.looked;
    const activities = figures.results?.plan.activities;
    if (!allocation?.placements[index] || !activities || !desk.document) return null;
    return why.explainPlacement(allocation, index, activities, desk.document.zone);
  });
  desk.bringSide();
}

const pickedPlacement = ({ picked, planning }: Desk): Placement | undefined =>
  picked.placement === null ? undefined : planning.looked?.placements[picked.placement];

/** The forms that fix, move or record the picked piece of work. */
export function planSide(desk: Desk): TemplateResult | typeof nothing {
  const placed = pickedPlacement(desk);
  return placed ? pieceForms(desk, placed) : nothing;
}
