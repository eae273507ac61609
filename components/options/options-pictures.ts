import { html, svg, type TemplateResult } from 'lit';
import type { OptionPart, PricedOption, StopOutlook } from '../../src/engine/index.js';
import { shortMoney, sumText } from '../overrun/money-text.js';
import { moneyTicks } from '../overrun/step-line.js';
import { stretchLabel } from './stretch-label.js';
import type { OptionsStrings } from './strings.js';

const partsInOrder: readonly OptionPart['part'][] = [
  'overrun',
  'key-dates',
  're-booking',
  'booking',
  'plant',
];
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
export const barKeys = (strings: OptionsStrings): TemplateResult => partKeys(partsInOrder, strings);

export function partKeys(
  parts: readonly OptionPart['part'][],
  strings: OptionsStrings,
): TemplateResult {
  return html`<p class="keys">
    ${parts.map(
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

const PLOT = 150;
const LEFT = 44;
const TOP = 18;
const FOOT = 18;

/** Expected cost by units done: the overrun, and on it what booking the rest again costs. */
export function stopPicture(
  stop: StopOutlook,
  width: number,
  strings: OptionsStrings,
): TemplateResult {
  const most = Math.max(...stop.rows.map((one) => Number(one.expectedTotal)), 1);
  const wide = (width - LEFT) / stop.rows.length;
  const every = stretchLabel(stop.rows.length, width - LEFT);
  const high = (sum: number): number => (Math.max(0, sum) / most) * PLOT;
  const foot = TOP + PLOT;
  const bar = Math.min(48, Math.max(2, wide - 4));
  return html`<svg
    class="stops"
    role="img"
    width=${width}
    height=${foot + FOOT}
    aria-label=${strings.stopPicture}
  >
    ${moneyTicks(most, 4).map(
      (
        tick,
      ) => svg`<line class="grid" x1=${LEFT} x2=${width} y1=${foot - high(tick)} y2=${foot - high(tick)}></line>
        <text class="soft" x=${LEFT - 6} y=${foot - high(tick) + 4} text-anchor="end">${shortMoney(tick)}</text>`,
    )}
    ${stop.rows.map((one, index) => {
      const middle = LEFT + (index + 0.5) * wide;
      const x = middle - bar / 2;
      const overrun = high(Number(one.expectedOverrunCost));
      const again = high(Number(one.reBooking));
      const best = one.units === stop.bestUnits;
      return svg`<rect class="overrun" x=${x} y=${foot - overrun} width=${bar} height=${overrun}></rect>
        <rect class="re-booking" x=${x} y=${foot - overrun - again} width=${bar} height=${again}></rect>
        ${best ? svg`<path class="least" d="M${middle - 5} ${foot - overrun - again - 12}h10l-5 8z"></path>` : ''}
        ${index % every === 0 || best ? svg`<text class=${best ? 'best' : ''} x=${middle} y=${foot + 14} text-anchor="middle">${one.units}</text>` : ''}`;
    })}
  </svg>`;
}
