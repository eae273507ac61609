import { html, nothing, type TemplateResult } from 'lit';
import { countText, momentText } from '../shared/format.js';
import { planText } from './agreed-view.js';
import { countOfPlace, countOfView } from './counts.js';
import type { Desk } from './desk-parts.js';
import { saveWhole } from './plan-files.js';
import {
  placeIds,
  placeOf,
  placeText,
  shownName,
  viewsOf,
  viewText,
  type PlaceId,
} from './views.js';

export interface TopHandlers {
  readonly placeKey: (event: KeyboardEvent) => void;
  readonly faults: () => void;
  readonly find: () => void;
  readonly theme: () => void;
}

/** The head of the desk: the plan's name with its menu, the places with how much there is in each, and the few tools. */
export function topView(
  desk: Desk,
  { dark }: { readonly dark: boolean },
  on: TopHandlers,
): TemplateResult {
  const faults = desk.figures.results?.faults ?? [];
  const { undoLabel: undo, redoLabel: redo } = desk;
  return html`<header class="top">
    <div class="title">
      <p class="product"><strong>possession-fit</strong> which work fits which track possession</p>
      <div class="named">
        <h1>
          <button
            type="button"
            class="plan-name"
            aria-expanded=${desk.menu === 'plan'}
            aria-controls="menu"
            @click=${() => {
              desk.menu = desk.menu === 'plan' ? '' : 'plan';
            }}
          >
            ${desk.document?.name || 'No plan yet'}
          </button>
        </h1>
        <p>${under(desk)}</p>
      </div>
    </div>
    <p class="paper-line">
      ${shownName(desk.view, desk)}; ${planText(desk) === '' ? nothing : `of ${planText(desk)};`}
      printed ${momentText(desk.moment(), desk.document?.zone ?? 'UTC')};
      ${desk.keeping.textIn(desk.document?.zone ?? 'UTC')}
    </p>
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
      <button type="button" aria-keyshortcuts="/" title="Key: /" @click=${on.find}>Find</button>
      <button
        type="button"
        aria-expanded=${desk.menu === 'help'}
        aria-controls="menu"
        @click=${() => {
          desk.menu = desk.menu === 'help' ? '' : 'help';
        }}
      >
        Help
      </button>
      <button type="button" class="theme" @click=${on.theme}>${dark ? 'Light' : 'Dark'}</button>
    </div>
    <div role="tablist" aria-label="Places" @keydown=${on.placeKey}>
      ${placeIds.map((place) => placeTab(desk, place))}
    </div>
    ${placeIds.map((place) => ways(desk, place))}
  </header>`;
}

function placeTab(desk: Desk, place: PlaceId): TemplateResult {
  const chosen = place === placeOf(desk.view);
  return html`<button
    type="button"
    role="tab"
    id="tab-${place}"
    aria-controls="view"
    aria-selected=${chosen}
    tabindex=${chosen ? 0 : -1}
    @click=${() => desk.showPlace(place)}
  >
    <strong>${placeText[place]}</strong> <span dir="auto">${countOfPlace(desk, place)}</span>
  </button>`;
}

/** The ways to look at a place; those of the others wait unseen. */
function ways(desk: Desk, place: PlaceId): TemplateResult | typeof nothing {
  const views = viewsOf[place];
  if (views.length < 2) return nothing;
  return html`<div
    class="ways"
    role="group"
    aria-label="${placeText[place]}: ways to look at it"
    ?hidden=${place !== placeOf(desk.view)}
  >
    ${views.map(
      (view) =>
        html`<button
          type="button"
          id="tab-${view}"
          aria-pressed=${view === desk.view}
          @click=${() => desk.show(view)}
        >
          ${viewText[view]} <span dir="auto">${countOfView(desk, view)}</span>
        </button>`,
    )}
  </div>`;
}

function under({ document }: Desk): string {
  if (!document) return '';
  const { rules, zone } = document;
  return `${rules.name === 'none' ? 'no rules: nothing is deducted' : rules.name}, ${zone}`;
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
