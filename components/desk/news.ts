import { html, nothing, type TemplateResult } from 'lit';
import { countText } from '../shared/format.js';
import type { Desk } from './desk-parts.js';

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
  const { keeping, plan } = desk;
  const aside = keeping.aside.length + (plan?.kept.length ?? 0);
  return html`<div role="status">
    ${said ? html`<p class="news">${said}</p>` : nothing}
    ${
      keeping.reviewed && plan
        ? html`<p class="news">
            This plan came by a link. Look at it: nothing of it is kept yet.
            <button type="button" @click=${() => void keeping.create(plan)}>
              Keep it on this device
            </button>
            <button type="button" @click=${back}>Back to the plan before</button>
          </p>`
        : nothing
    }
    ${
      aside > 0
        ? html`<p class="news">
            ${countText(aside, 'value')} met another person's or tab's and
            ${aside === 1 ? 'does' : 'do'} not stand.
            <button
              type="button"
              @click=${() => {
                desk.menu = 'plan';
              }}
            >
              Look at them
            </button>
          </p>`
        : nothing
    }
    ${
      newer
        ? html`<p class="news">
            A newer version is ready. The plan is saved first.
            <button
              type="button"
              @click=${() => void keeping.flush().then((safe) => safe && newer())}
            >
              Reload
            </button>
          </p>`
        : nothing
    }
  </div>`;
}
