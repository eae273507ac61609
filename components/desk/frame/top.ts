import { html, nothing, type TemplateResult } from 'lit';
import { momentText } from '../../shared/format.js';
import { planText } from '../views/agreed-view.js';
import { countOfPlace, countOfView } from '../results/counts.js';
import type { Desk } from '../desk-parts.js';
import { saveWhole } from '../files/save-whole.js';
import { shownName } from './shown-name.js';
import { placeIds, placeOf, viewsOf, type PlaceId } from '../views.js';

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
  const { undoLabel: undo, redoLabel: redo, words } = desk;
  return html`<header class="top">
    <div class="title">
      <p class="product"><strong>possession-fit</strong> ${words.whatFor}</p>
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
            ${desk.document?.name || (desk.opening ? words.opening : words.noPlanYet)}
          </button>
        </h1>
        <p>${under(desk)}</p>
      </div>
    </div>
    <p class="paper-line">
      ${shownName(desk.view, desk, words)};
      ${planText(desk) === '' ? nothing : words.ofPlan(planText(desk))}
      ${words.printed(momentText(desk.moment(), desk.document?.zone ?? 'UTC'))}
      ${desk.keeping.textIn(desk.document?.zone ?? 'UTC')}
    </p>
    <div class="tools">
      ${desk.sharing.chip()} ${kept(desk)}
      ${
        faults.length > 0
          ? html`<button class="faulty" type="button" @click=${on.faults}>
              ✕ ${words.faults(faults.length)}
            </button>`
          : nothing
      }
      ${
        undo || redo
          ? html`<button
                type="button"
                ?disabled=${!undo || desk.sharing.reads}
                title=${undo ? words.undoWhat(undo) : words.nothingToUndo}
                @click=${() => desk.undo()}
              >
                ${words.undo}</button
              ><button
                type="button"
                ?disabled=${!redo || desk.sharing.reads}
                title=${redo ? words.redoWhat(redo) : words.nothingToRedo}
                @click=${() => desk.redo()}
              >
                ${words.redo}
              </button>`
          : nothing
      }
      <button type="button" aria-keyshortcuts="/" title=${words.findKey} @click=${on.find}>
        ${words.find}
      </button>
      <button
        type="button"
        aria-expanded=${desk.menu === 'help'}
        aria-controls="menu"
        @click=${() => {
          desk.menu = desk.menu === 'help' ? '' : 'help';
        }}
      >
        ${words.help}
      </button>
      <button type="button" class="theme" @click=${on.theme}>
        ${dark ? words.light : words.dark}
      </button>
    </div>
    <div role="tablist" aria-label=${words.places} @keydown=${on.placeKey}>
      ${placeIds.map((place) => placeTab(desk, place))}
    </div>
    ${placeIds.map((place) => viewLinks(desk, place))}
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
    <strong>${desk.words.place[place]}</strong> <span dir="auto">${countOfPlace(desk, place)}</span>
  </button>`;
}

/** The ways to look at a place; those of the others wait unseen. */
function viewLinks(desk: Desk, place: PlaceId): TemplateResult | typeof nothing {
  const views = viewsOf[place];
  if (views.length < 2) return nothing;
  return html`<div
    class="ways"
    role="group"
    aria-label=${desk.words.waysOf(desk.words.place[place])}
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
          ${desk.words.view[view]} <span dir="auto">${countOfView(desk, view)}</span>
        </button>`,
    )}
  </div>`;
}

function under({ document, words }: Desk): string {
  if (!document) return '';
  const { rules, zone } = document;
  return `${rules.name === 'none' ? words.noRules : rules.name}, ${zone}`;
}

/** How far the plan is safe; where it is not, the way to save it stands beside. */
function kept(desk: Desk): TemplateResult | typeof nothing {
  const { keeping, document } = desk;
  const text = keeping.textIn(document?.zone ?? 'UTC');
  if (text === '') return nothing;
  return html`<span class="kept ${keeping.isUnsafe ? 'bad' : ''}" role="status">${text}</span> ${
      keeping.isUnsafe
        ? html`<button class="strong" type="button" @click=${() => void saveWhole(desk)}>
            ${desk.words.saveFile}
          </button>`
        : nothing
    }`;
}
