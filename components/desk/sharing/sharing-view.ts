import { html, nothing, type TemplateResult } from 'lit';
import type { Server } from '../../share/connection.js';
import type { Other } from '../../share/presence.js';
import type { Desk } from '../desk-parts.js';
import type { ShownSharing } from './sharing-parts.js';
import type { SharingStrings } from './strings.js';
import type { DeskView } from '../views.js';

/** Sharing the plan with others: off until an address and a token are given. */
export function sharingView(desk: Desk, sharing: ShownSharing): TemplateResult | typeof nothing {
  if (!desk.keeping.store) return nothing;
  return html`<h2>${sharing.words.heading}</h2>
    ${sharing.state ? sharedNow(desk, sharing) : toShare(desk, sharing)}`;
}

/** In a few words, for the head of the desk; nothing where the plan is not shared. */
export function sharingChip(desk: Desk, sharing: ShownSharing): TemplateResult | typeof nothing {
  const { state } = sharing;
  if (!state) return nothing;
  return html`<button
    type="button"
    class="kept ${state.kind === 'refused' ? 'bad' : ''}"
    aria-expanded=${desk.menu === 'plan'}
    aria-controls="menu"
    @click=${() => {
      desk.menu = desk.menu === 'plan' ? '' : 'plan';
    }}
  >
    ${shortText(sharing)}
  </button>`;
}

function shortText({ state, others, reads, words }: ShownSharing): string {
  const may = reads ? words.readOnly : '';
  switch (state?.kind) {
    case 'together':
      return others.length === 0
        ? `${words.shared}${may}`
        : `${words.shared}${may}: ${words.othersHere(others.length)}`;
    case 'away':
      return `${words.isAway}${may}`;
    case 'refused':
      return words.isRefused;
    default:
      return words.joining;
  }
}

function toShare({ keeping }: Desk, sharing: ShownSharing): TemplateResult {
  const { words } = sharing;
  return html`<p class="quiet">${words.about}</p>
    <form
      class="share"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const given = serverIn(sharing, event.target as HTMLFormElement);
        if ((event.submitter as HTMLButtonElement | null)?.value === 'share') sharing.share(given);
        else void sharing.look(given);
      }}
    >
      <label
        >${words.yourName} <input name="who" required maxlength="60" .value=${sharing.name}
      /></label>
      <label>
        ${words.address}
        <input name="address" required inputmode="url" placeholder="ws://127.0.0.1:4174" />
      </label>
      <label>
        ${words.token}
        <input name="token" type="password" required autocomplete="off" spellcheck="false" />
      </label>
      <div class="acts">
        <button
          type="submit"
          value="share"
          ?disabled=${keeping.kept === null || sharing.busy}
          title=${keeping.kept ? '' : words.keepFirst}
        >
          ${words.share}
        </button>
        <button type="submit" value="look" ?disabled=${sharing.busy}>${words.look}</button>
      </div>
    </form>
    <div role="status">
      ${sharing.busy ? html`<p class="quiet">${words.asked}</p>` : nothing}
      ${sharing.trouble ? html`<p class="trouble" lang="en">${sharing.trouble}</p>` : nothing}
      ${offered(sharing)}
    </div>`;
}

function offered({
  offered: plans,
  busy,
  open,
  words,
}: ShownSharing): TemplateResult | typeof nothing {
  if (!plans) return nothing;
  if (plans.length === 0) return html`<p>${words.noneThere}</p>`;
  return html`<ul>
    ${plans.map(
      ({ id, name }) =>
        html`<li>
          <strong>${name || words.noName}</strong>
          <div class="acts">
            <button type="button" ?disabled=${busy} @click=${() => void open(id)}>
              ${words.open}
            </button>
          </div>
        </li>`,
    )}
  </ul>`;
}

function serverIn(sharing: ShownSharing, form: HTMLFormElement): Server {
  const given = new FormData(form);
  const text = (name: string): string => String(given.get(name) ?? '').trim();
  sharing.rename(text('who'));
  return { address: text('address'), token: text('token') };
}

function sharedNow(desk: Desk, sharing: ShownSharing): TemplateResult {
  const { words } = sharing;
  return html`<div role="status">
      <p class=${sharing.state?.kind === 'refused' ? 'trouble' : ''}>${stateText(sharing)}</p>
      ${sharing.reads ? html`<p>${words.reads}</p>` : nothing}
    </div>
    <p class="quiet">${words.at(sharing.address, sharing.name)}</p>
    ${
      sharing.others.length === 0
        ? nothing
        : html`<ul aria-label=${words.others}>
            ${sharing.others.map(
              (other) =>
                html`<li>
                  <strong>${other.name || words.somebody}</strong>
                  <span class="quiet">${atText(desk, other, words)}</span>
                </li>`,
            )}
          </ul>`
    }
    <div class="acts">
      <button type="button" @click=${() => sharing.leave()}>${desk.words.leaveShared}</button>
    </div>`;
}

function stateText({ state, reads, words }: ShownSharing): TemplateResult | string {
  switch (state?.kind) {
    case 'together':
      return reads ? words.togetherReads : words.together;
    case 'away':
      return html`${why(state.why)} ${reads ? words.awayReads : words.away}`;
    case 'refused':
      return html`${why(state.why)} ${words.refused}`;
    default:
      return words.asked;
  }
}

/** A reason of the server or the connection, which speak English. */
const why = (text: string): TemplateResult => html`<span lang="en">${text}</span>`;

/** What somebody else is at, in words. */
function atText({ words }: Desk, { view, cell, reads }: Other, own: SharingStrings): string {
  const where = Object.hasOwn(words.view, view) ? words.view[view as DeskView] : '';
  const place = cell ? own.cell(cell.table, cell.row + 1) : '';
  return [where, place, reads ? own.mayRead : ''].filter((text) => text !== '').join('; ');
}
