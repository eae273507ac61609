import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { PriceResult } from '../../src/engine/index.js';
import type { Instant } from '../../src/calendar/index.js';
import { clockText, dayText } from '../shared/format.js';
import { moneyText } from './money-text.js';
import type { OnSiteLeaves } from './on-site-event.js';
import type { OverrunStrings } from './strings.js';
import { saidText } from '../shared/said.js';

/** Called when a reader sets when a resource leaves. */
export type ChangeLeaves = (resource: string, leaves: OnSiteLeaves) => void;

/**
 * Plant and people of the window: call, last work, departure, planned cost, and what this overrun adds.
 * @param editable When each leaves can be set.
 */
export function onSitePart(
  at: PriceResult,
  zone: string,
  editable: boolean,
  change: ChangeLeaves,
  words: OverrunStrings,
): TemplateResult | typeof nothing {
  if (at.onSite.length === 0) return nothing;
  const seen = new Set<string>();
  return html`<section class="on-site">
    <h3>${words.onSite}</h3>
    <p class="quiet">${words.onSiteNote}</p>
    <div class="scroll" tabindex="0" role="region" aria-label=${words.onSite}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.resource}</th>
            <th scope="col" class="figure">${words.number}</th>
            <th scope="col">${words.called}</th>
            <th scope="col">${words.lastWork}</th>
            <th scope="col">${words.leaves}</th>
            <th scope="col" class="figure">${words.owed}</th>
            <th scope="col" class="figure">${words.added}</th>
          </tr>
        </thead>
        <tbody>
          ${at.onSite.map((item) => {
            const first = !seen.has(item.resource);
            seen.add(item.resource);
            const added = at.rows.find((row) => row.code === `standing-${item.resource}`)?.amount;
            const leaves = item.kept ? words.atHandback : whenText(item.leaves, zone);
            return html`<tr class=${item.kept ? '' : 'gone'}>
              <th scope="row">${item.resource}</th>
              <td class="figure">${item.amount}</td>
              <td>${whenText(item.call, zone)}</td>
              <td>${whenText(item.lastWork, zone)}</td>
              <td>
                ${leaves}
                ${
                  editable && first
                    ? html`<select
                        class="on-screen"
                        aria-label="${words.leaves}: ${item.resource}"
                        .value=${live(ruleOf(item))}
                        @change=${(event: Event) => {
                          const { value } = event.target as HTMLSelectElement;
                          change(item.resource, value === '' ? null : (value as OnSiteLeaves));
                        }}
                      >
                        <option value="" ?selected=${ruleOf(item) === ''}>
                          ${words.asPlanned}
                        </option>
                        <option
                          value="after its work"
                          ?selected=${ruleOf(item) === 'after its work'}
                        >
                          ${words.afterWork}
                        </option>
                        <option value="at handback" ?selected=${ruleOf(item) === 'at handback'}>
                          ${words.atHandback}
                        </option>
                      </select>`
                    : nothing
                }
                <span class="quiet">${saidText(item.why)}</span>
              </td>
              <td class="figure">${moneyText(item.owed)}</td>
              <td class="figure">${first && added !== undefined ? moneyText(added) : nothing}</td>
            </tr>`;
          })}
        </tbody>
      </table>
    </div>
  </section>`;
}

/** A time of the window, without the year. */
const whenText = (at: Instant, zone: string): string =>
  `${dayText(at, zone)} ${clockText(at, zone)}`;

/** The rule of the price book that a stay's reason names. */
function ruleOf({ why }: PriceResult['onSite'][number]): string {
  const key = typeof why === 'object' && 'key' in why ? why.key : undefined;
  if (key === 'stays-by-price-book') return 'at handback';
  return key === 'leaves-by-price-book' ? 'after its work' : '';
}
