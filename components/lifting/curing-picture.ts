import { html, svg, type TemplateResult } from 'lit';
import { HOUR } from '../../src/calendar/index.js';
import type { CuringOfPour } from '../../src/engine/index.js';
import { momentText } from '../shared/format.js';
import type { LiftingStrings } from './strings.js';
import { axesOf, BASE, grid, HEIGHT, LEFT, limitLine } from './time-axes.js';

/** Maturity along time from one pour, the figure asked for, and the moment it is reached. */
export function curingPicture(
  pour: CuringOfPour,
  zone: string,
  unit: string,
  width: number,
  words: LiftingStrings,
): TemplateResult {
  const { curve, needed, readyAt, pouredAt } = pour;
  const to = Math.max(curve.at(-1)!.at, pouredAt + HOUR);
  const most = Math.max(needed, ...curve.map((item) => item.maturity)) * 1.1;
  const axes = axesOf(pouredAt, to, most, width);
  const { x, y } = axes;
  const readyText =
    readyAt === null ? words.notKnown : `${words.ready} ${momentText(readyAt, zone)}`;
  return html`<svg
    role="img"
    width=${width}
    height=${HEIGHT}
    aria-label="${words.concrete}. ${words.curveTold(pour.activity, readyText)}"
  >
    ${grid(pouredAt, to, most, zone, width, axes)} ${limitLine(y(needed), width)}
    <text class="limit-word" x=${LEFT + 4} y=${y(needed) - 5}>${needed} ${unit}</text>
    <path
      class="curve"
      d=${curve.map((item, i) => `${i === 0 ? 'M' : 'L'}${x(item.at)} ${y(item.maturity)}`).join(' ')}
    ></path>
    ${
      readyAt === null
        ? ''
        : svg`<line class="rule" x1=${x(readyAt)} x2=${x(readyAt)} y1=${y(needed)} y2=${BASE}></line>
          <path class="ready" d="M${x(readyAt)} ${y(needed) - 6} l6 6 l-6 6 l-6 -6 z"></path>`
    }
  </svg>`;
}
