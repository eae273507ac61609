import { html, nothing, type TemplateResult } from 'lit';
import type { Server } from '../../share/connection.js';
import type { Other } from '../../share/presence.js';
import { countText } from '../../shared/format.js';
import type { Desk } from '../desk-parts.js';
import type { ShownSharing } from './sharing-parts.js';
import type { DeskView } from '../views.js';

/** Sharing the plan with others: off until an address and a token are given. */
export function sharingView(desk: Desk, sharing: ShownSharing): TemplateResult | typeof nothing {
  if (!desk.keeping.store) return nothing;
  return html`<h2>Shared with others</h2>
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

function shortText({ state, others, reads }: ShownSharing): string {
  const may = reads ? ', read only' : '';
  switch (state?.kind) {
    case 'together':
      return others.length === 0
        ? `Shared${may}`
        : `Shared${may}: ${countText(others.length, 'other')} here`;
    case 'away':
      return `Away from the others${may}`;
    case 'refused':
      return 'Sharing refused';
    default:
      return 'Joining the others';
  }
}

function toShare({ keeping }: Desk, sharing: ShownSharing): TemplateResult {
  return html`<p class="quiet">
      Several people work on one plan by a server that one of them runs: possession-fit share. It
      prints an address and two tokens, one to read and one to write. The token is kept on this
      device until you leave, and is sent to that server alone.
    </p>
    <form
      class="share"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const given = serverIn(sharing, event.target as HTMLFormElement);
        if ((event.submitter as HTMLButtonElement | null)?.value === 'share') sharing.share(given);
        else void sharing.look(given);
      }}
    >
      <label>Your name <input name="who" required maxlength="60" .value=${sharing.name} /></label>
      <label>
        Address <input name="address" required inputmode="url" placeholder="ws://127.0.0.1:4174" />
      </label>
      <label>
        Token <input name="token" type="password" required autocomplete="off" spellcheck="false" />
      </label>
      <div class="acts">
        <button
          type="submit"
          value="share"
          ?disabled=${keeping.kept === null || sharing.busy}
          title=${keeping.kept ? '' : 'Keep the plan on this device first.'}
        >
          Share this plan there
        </button>
        <button type="submit" value="look" ?disabled=${sharing.busy}>Open a plan from there</button>
      </div>
    </form>
    <div role="status">
      ${sharing.busy ? html`<p class="quiet">The server is asked.</p>` : nothing}
      ${sharing.trouble ? html`<p class="trouble">${sharing.trouble}</p>` : nothing}
      ${offered(sharing)}
    </div>`;
}

function offered({ offered: plans, busy, open }: ShownSharing): TemplateResult | typeof nothing {
  if (!plans) return nothing;
  if (plans.length === 0) return html`<p>Nobody has shared a plan there yet.</p>`;
  return html`<ul>
    ${plans.map(
      ({ id, name }) =>
        html`<li>
          <strong>${name || 'a plan without a name'}</strong>
          <div class="acts">
            <button type="button" ?disabled=${busy} @click=${() => void open(id)}>Open</button>
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
  return html`<div role="status">
      <p class=${sharing.state?.kind === 'refused' ? 'trouble' : ''}>${stateText(sharing)}</p>
      ${sharing.reads ? html`<p>Your token lets you read the plan, not change it.</p>` : nothing}
    </div>
    <p class="quiet">
      ${sharing.address}, as ${sharing.name || 'somebody without a name'}. A name is what a person
      wrote; it proves nothing.
    </p>
    ${
      sharing.others.length === 0
        ? nothing
        : html`<ul aria-label="Others who have the plan open">
            ${sharing.others.map(
              (other) =>
                html`<li>
                  <strong>${other.name || 'somebody without a name'}</strong>
                  <span class="quiet">${atText(desk, other)}</span>
                </li>`,
            )}
          </ul>`
    }
    <div class="acts">
      <button type="button" @click=${() => sharing.leave()}>${desk.words.leaveShared}</button>
    </div>`;
}

function stateText({ state, reads }: ShownSharing): string {
  switch (state?.kind) {
    case 'together':
      return reads
        ? 'What the others change comes here as it is made.'
        : 'What is changed here goes to the others as it is made, and theirs comes here.';
    case 'away':
      return reads
        ? `${state.why} What the others change comes when the server answers again.`
        : `${state.why} Work goes on here; it is joined with that of the others when the server answers again.`;
    case 'refused':
      return `${state.why} The plan on this device stays as it is, and goes to nobody.`;
    default:
      return 'The server is asked.';
  }
}

/** What somebody else is at, in words. */
function atText({ words }: Desk, { view, cell, reads }: Other): string {
  const where = Object.hasOwn(words.view, view) ? words.view[view as DeskView] : '';
  const place = cell ? `${cell.table}, row ${cell.row + 1}` : '';
  return [where, place, reads ? 'may only read' : ''].filter((text) => text !== '').join('; ');
}
