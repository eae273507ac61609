import { html, type TemplateResult } from 'lit';
import type { ExpectedCost } from '../../src/engine/index.js';
import type { Figure } from '../shared/figure-ask-event.js';
import { askFigure, type AskFigure } from './ask-figure.js';
import type { ChartShown } from '../chart/shown.js';
import { moneyText, sumText } from './money-text.js';
import type { OverrunStrings } from './strings.js';
import { numberText } from '../shared/format.js';

/** Expected cost of an overrun of the planned work, and the chance of exceeding each amount. */
export function expectedPart(
  expected: ExpectedCost | null,
  chart: ChartShown | null,
  ask: AskFigure,
  words: OverrunStrings,
): TemplateResult {
  if (!expected)
    return html`<section class="expected">
      <h3>${words.expected}</h3>
      <p class="quiet">${words.noChance}</p>
    </section>`;
  const { currency } = expected;
  const figure = (amount: string, of: Figure): TemplateResult => {
    const text = sumText(amount, currency);
    return askFigure(text, text, of, ask, words);
  };
  return html`<section class="expected">
    <h3>${words.expected}</h3>
    <p class="quiet">${words.runs(numberText(expected.runs))} ${words.expectedNote}</p>
    <dl>
      <div class="mean">
        <dt>${words.expectedCost}</dt>
        <dd>
          <strong>${figure(expected.expected, { of: 'cost-expected' })}</strong>
          <span class="quiet"
            >&plusmn;${moneyText(expected.standardError)} ${words.standardError}</span
          >
        </dd>
      </div>
      <div>
        <dt>${words.p50}</dt>
        <dd>
          <strong>${figure(expected.p50, { of: 'cost-p', percent: 50 })}</strong>
          <span class="quiet">${words.pNote('50 %')}</span>
        </dd>
      </div>
      <div>
        <dt>${words.p80}</dt>
        <dd>
          <strong>${figure(expected.p80, { of: 'cost-p', percent: 80 })}</strong>
          <span class="quiet">${words.pNote('80 %')}</span>
        </dd>
      </div>
      <div>
        <dt>${words.p95}</dt>
        <dd>
          <strong>${figure(expected.p95, { of: 'cost-p', percent: 95 })}</strong>
          <span class="quiet">${words.pNote('95 %')}</span>
        </dd>
      </div>
    </dl>
    <h4>${words.exceedance}</h4>
    ${
      chart
        ? html`<possession-chart class="chances" .shown=${chart}></possession-chart>`
        : html`<p class="quiet">${words.noSpread}</p>`
    }
  </section>`;
}
