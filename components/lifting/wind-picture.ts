import { html, svg, type TemplateResult } from 'lit';
import type { WindAnswer } from '../../src/engine/index.js';
import { momentText, numberText } from '../shared/format.js';
import type { LiftingStrings } from './strings.js';
import { axesOf, BASE, grid, HEIGHT, RIGHT, TOP, limitLine } from './time-axes.js';
import { whyText } from '../shared/said.js';

/** The gusts of a forecast as steps along time, the limit as a line, and the stretches in which lifting stops. */
export function windPicture(
  { gusts, stops, limitMps }: WindAnswer,
  zone: string,
  width: number,
  words: LiftingStrings,
): TemplateResult {
  const from = gusts[0]!.start;
  const to = Math.max(gusts.at(-1)!.end, ...stops.map((stop) => stop.end));
  const highest = Math.max(0, ...gusts.map((gust) => gust.gustMps ?? 0));
  const most = Math.max(highest, limitMps) * 1.15;
  const axes = axesOf(from, to, most, width);
  const { x, y } = axes;
  const known = gusts.filter((gust) => gust.gustMps !== null);
  const steps = known
    .map((item, i) => {
      const go = i > 0 && known[i - 1]!.end === item.start ? 'L' : 'M';
      return `${go}${x(item.start)} ${y(item.gustMps!)} L${x(item.end)} ${y(item.gustMps!)}`;
    })
    .join(' ');
  return html`<svg
    role="img"
    width=${width}
    height=${HEIGHT}
    aria-label="${words.wind}. ${words.windTold(numberText(limitMps, 1), numberText(highest, 1), stops.length)}"
  >
    ${grid(from, to, most, zone, width, axes)}
    ${stops.map((stop) => {
      const wide = Math.max(1, x(stop.end) - x(stop.start));
      return svg`<g><title>${momentText(stop.start, zone)}: ${whyText(stop)}</title>
        <rect class="shut" x=${x(stop.start)} y=${TOP} width=${wide} height=${BASE - TOP}></rect>
        <path class="slash" d="M${x(stop.start)} ${BASE} L${x(stop.start) + wide} ${TOP}"></path>
        ${wide > 46 ? svg`<text class="on-shut" x=${x(stop.start) + 3} y=${BASE - 5}>${words.stop}</text>` : ''}</g>`;
    })}
    <path class="curve" d=${steps}></path>
    ${limitLine(y(limitMps), width)}
    <text class="limit-word" text-anchor="end" x=${width - RIGHT} y=${y(limitMps) - 5}>
      ${words.limitLine(numberText(limitMps, 1))}
    </text>
  </svg>`;
}
