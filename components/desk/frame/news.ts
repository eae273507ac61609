import { html, nothing, type TemplateResult } from 'lit';
import type { Desk } from '../desk-parts.js';

export interface News {
  /** What was done or found, until the next act; empty for nothing. */
  readonly said: string;
  /** Takes the page to a newer version of itself; null while there is none. */
  readonly newer: (() => void) | null;
  /** Shows the plan that was shown before one that came by a link. */
  readonly back: () => void;
}

/** What a person should know and may act on: a plan under review, a newer version, changes set aside. */
export function newsView(desk: Desk, { said, newer, back }: News): TemplateResult {
  const { keeping, plan, words } = desk;
  const aside = keeping.aside.length + (plan?.kept.length ?? 0);
  return html`<div role="status">
    ${said ? html`<p class="news">${said}</p>` : nothing}
    ${
      desk.sharing.reads
        ? html`<p class="news">
            ${words.sharedToRead}
            <button type="button" @click=${() => void desk.sharing.leave()}>
              ${words.leaveShared}
            </button>
          </p>`
        : nothing
    }
    ${
      keeping.reviewed && plan
        ? html`<p class="news">
            ${words.byLink}
            <button type="button" @click=${() => void keeping.create(plan)}>
              ${words.keepHere}
            </button>
            <button type="button" @click=${back}>${words.planBefore}</button>
          </p>`
        : nothing
    }
    ${
      aside > 0
        ? html`<p class="news">
            ${words.metAnother(aside)}
            <button
              type="button"
              @click=${() => {
                desk.menu = 'plan';
              }}
            >
              ${words.lookAtThem}
            </button>
          </p>`
        : nothing
    }
    ${
      newer
        ? html`<p class="news">
            ${words.newer}
            <button
              type="button"
              @click=${() => void keeping.flush().then((safe) => (safe ? newer() : desk.complain(words.notReloaded)))}
            >
              ${words.reload}
            </button>
          </p>`
        : nothing
    }
  </div>`;
}
