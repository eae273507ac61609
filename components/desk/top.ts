import { html, nothing, type TemplateResult } from 'lit';
import { countText } from '../shared/format.js';
import { countFits } from '../shared/verdicts.js';
import { provedText } from '../why/explain-plan.js';
import type { Desk } from './desk-parts.js';
import { saveWhole } from './plan-files.js';
import { deskViews, viewText, type DeskView } from './views.js';

export interface TopHandlers {
  readonly tabKey: (event: KeyboardEvent) => void;
  readonly faults: () => void;
  readonly theme: () => void;
}

/** The head of the desk: the plan's name, the views with how much there is in each, and the few tools. */
export function topView(
  desk: Desk,
  { dark }: { readonly dark: boolean },
  on: TopHandlers,
): TemplateResult {
  const faults = desk.figures.results?.faults ?? [];
  const { undoLabel: undo, redoLabel: redo } = desk;
  return html`<header class="top">
    <div class="title">
      <h1>${desk.document?.name || 'No plan yet'}</h1>
      <p>${under(desk)}</p>
    </div>
    <div class="tools">
      ${kept(desk)}
      ${
        faults.length > 0
          ? html`<button class="faulty" type="button" @click=${on.faults}>
              ✕ ${countText(faults.length, 'fault')}
            </button>`
          : nothing
      }
      ${
        undo || redo
          ? html`<button
                type="button"
                ?disabled=${!undo}
                title=${undo ? `Undo: ${undo}` : 'Nothing to undo'}
                @click=${() => desk.undo()}
              >
                Undo</button
              ><button
                type="button"
                ?disabled=${!redo}
                title=${redo ? `Redo: ${redo}` : 'Nothing to redo'}
                @click=${() => desk.redo()}
              >
                Redo
              </button>`
          : nothing
      }
      <button type="button" @click=${on.theme}>${dark ? 'Light' : 'Dark'}</button>
    </div>
    <div role="tablist" aria-label="Views" @keydown=${on.tabKey}>
      ${deskViews.map(
        (view) =>
          html`<button
            type="button"
            role="tab"
            id="tab-${view}"
            aria-controls="view"
            aria-selected=${view === desk.view}
            tabindex=${view === desk.view ? 0 : -1}
            @click=${() => {
              desk.show(view);
            }}
          >
            <strong>${viewText[view]}</strong> <span dir="auto">${countOf(desk, view)}</span>
          </button>`,
      )}
    </div>
  </header>`;
}

function under({ document }: Desk): string {
  if (!document) return 'possession-fit';
  const { rules, zone } = document;
  return `${rules.name === 'none' ? 'no rules: nothing is deducted' : rules.name}, ${zone}`;
}

function countOf(desk: Desk, view: DeskView): string {
  const { planning, figures, outlooks } = desk;
  const { results } = figures;
  if (view === 'files') return 'in and out';
  if (!results) return figures.busy ? 'working' : 'none yet';
  switch (view) {
    case 'windows':
      return `${results.plan.windows.length} booked`;
    case 'work':
      return countText(results.packages.length, 'package');
    case 'rules':
      return ruleText(desk);
    case 'site':
      return siteText(desk);
    case 'fit':
      return figures.busy ? 'working' : `${countFits(results.fits)} of ${results.fits.length}`;
    case 'plan':
      if (planning.allocation) return provedText(planning.allocation).toLowerCase();
      return planning.busy ? 'searching' : planning.isStale ? 'changed since' : 'not yet';
    case 'handback':
      return heldText(desk);
    case 'cost':
      return outlooks.price ? `${outlooks.price.curve.currency} by minute` : 'by minute';
    case 'booking':
      return lateText(desk);
  }
}

function heldText({ outlooks }: Desk): string {
  const { handbacks } = outlooks;
  if (handbacks.length === 0) return outlooks.isBusy('handback') ? 'working' : 'margins';
  const held = handbacks.filter((one) => one.verdict === 'held').length;
  return `${held} of ${handbacks.length} held`;
}

function lateText({ outlooks }: Desk): string {
  const { booked } = outlooks;
  if (!booked) return 'dates';
  const late = booked.milestones.filter((one) => one.state === 'late').length;
  return late === 0 ? 'none late' : `${late} late`;
}

function ruleText({ document }: Desk): string {
  const rules = document?.rules;
  return rules ? countText(rules.leadIn.length + rules.leadOut.length, 'step') : 'none';
}

function siteText({ document, outlooks }: Desk): string {
  if (outlooks.people) return countText(outlooks.people.breaches.length, 'breach', 'breaches');
  return document?.tables.roster ? 'roster' : 'limits';
}

/** How far the plan is safe; where it is not, the way to save it stands beside. */
function kept(desk: Desk): TemplateResult | typeof nothing {
  const { keeping, document } = desk;
  const text = keeping.textIn(document?.zone ?? 'UTC');
  if (text === '') return nothing;
  return html`<span class="kept ${keeping.isUnsafe ? 'bad' : ''}" role="status">${text}</span> ${
      keeping.isUnsafe
        ? html`<button class="strong" type="button" @click=${() => void saveWhole(desk)}>
            Save a file
          </button>`
        : nothing
    }`;
}
