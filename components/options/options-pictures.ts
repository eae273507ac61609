import { html, svg, type TemplateResult } from 'lit';
import type { OptionPart, PricedOption, StopOutlook } from '../../src/engine/index.js';
import { sumText } from '../overrun/money-text.js';
import { stretchLabel } from './stretch-label.js';
import type { OptionsStrings } from './strings.js';

const partsInOrder: readonly OptionPart['part'][] = ['overrun', 're-booking', 'booking', 'plant'];
const BAR = 14;

/** The parts of one option end to end, on the scale of the dearest of all. */
export function costBar(
  option: PricedOption,
  currency: string,
  most: number,
  width: number,
  strings: OptionsStrings,
): TemplateResult {
  const sums = partsInOrder.map((part) => ({
    part,
    sum: option.parts
      .filter((one) => one.part === part)
      .reduce((total, one) => total + Number(one.amount), 0),
  }));
  let x = 0;
  const told = sums
    .filter((one) => one.sum !== 0)
    .map((one) => `${strings.parts[one.part]} ${sumText(one.sum.toFixed(2), currency)}`)
    .join(', ');
  return html`<svg class="bar" role="img" width=${width} height=${BAR} aria-label=${told}>
    ${sums.map(({ part, sum }) => {
      const wide = most > 0 ? (Math.max(0, sum) / most) * width : 0;
      const at = x;
      x += wide;
      return svg`<rect class=${part} x=${at} y="0" width=${wide} height=${BAR}></rect>`;
    })}
  </svg>`;
}

/** What the shades of the bars stand for. */
export function barKeys(strings: OptionsStrings): TemplateResult {
  return html`<p class="keys">
    ${partsInOrder.map(
      (part) =>
        html`<span
          ><svg class="bar" width="12" height="12" aria-hidden="true">
            <rect class=${part} width="12" height="12"></rect>
          </svg>
          ${strings.parts[part]}</span
        >`,
    )}
  </p>`;
}

const PLOT = 110;
const FOOT = 18;

/** Expected cost by units done. */
export function stopPicture(
  stop: StopOutlook,
  width: number,
  strings: OptionsStrings,
): TemplateResult {
  const costs = stop.rows.map((one) => Number(one.expectedTotal));
  const most = Math.max(...costs, 1);
  const wide = width / stop.rows.length;
  const every = stretchLabel(stop.rows.length, width);
  return html`<svg
    class="stops"
    role="img"
    width=${width}
    height=${PLOT + FOOT}
    aria-label=${strings.stopPicture}
  >
    ${stop.rows.map((one, index) => {
      const high = (Math.max(0, costs[index]!) / most) * (PLOT - 4);
      return svg`<rect class=${one.units === stop.bestUnits ? 'best' : ''} x=${index * wide + 2} y=${PLOT - high} width=${Math.max(2, wide - 4)} height=${high}></rect>
        ${index % every === 0 ? svg`<text x=${(index + 0.5) * wide} y=${PLOT + 14} text-anchor="middle">${one.units}</text>` : ''}`;
    })}
  </svg>`;
}
