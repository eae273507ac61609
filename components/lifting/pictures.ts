import { html, svg, type TemplateResult } from 'lit';
import { startOfLocalDay } from '../../src/calendar/index.js';
import type { CuringOfPour, WindAnswer } from '../../src/engine/index.js';
import { dayText, momentText } from '../shared/format.js';
import type { LiftingStrings } from './strings.js';

const LEFT = 34;
const RIGHT = 8;
const TOP = 18;
const BASE = 150;
const HEIGHT = 172;

interface Axes {
  readonly x: (at: number) => number;
  readonly y: (value: number) => number;
}

function axesOf(from: number, to: number, most: number, width: number): Axes {
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    x: (at) => round(LEFT + ((at - from) / Math.max(1, to - from)) * (width - LEFT - RIGHT)),
    y: (value) => round(BASE - (value / most) * (BASE - TOP)),
  };
}

/** Local midnights with their dates as far as they have room, and the figures of the upright axis. */
function grid(
  from: number,
  to: number,
  most: number,
  zone: string,
  width: number,
  { x, y }: Axes,
): unknown {
  const days: number[] = [];
  for (let day = startOfLocalDay(from, zone, 1); day < to; day = startOfLocalDay(day, zone, 1))
    days.push(day);
  const every = Math.max(1, Math.ceil((days.length * 66) / Math.max(1, width - LEFT)));
  const step = most > 400 ? 200 : most > 150 ? 100 : most > 60 ? 25 : most > 16 ? 5 : 2;
  const figures = Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
  return svg`${figures.map(
    (
      value,
    ) => svg`<line class="hair" x1=${LEFT} x2=${width - RIGHT} y1=${y(value)} y2=${y(value)}></line>
      <text class="soft" text-anchor="end" x=${LEFT - 4} y=${y(value) + 4}>${value}</text>`,
  )}${days.map(
    (day, index) => svg`<line class="hair" x1=${x(day)} x2=${x(day)} y1=${TOP} y2=${BASE}></line>
      ${index % every === 0 && x(day) + 58 < width ? svg`<text class="soft" x=${x(day) + 2} y=${BASE + 15}>${dayText(day, zone)}</text>` : ''}`,
  )}<line class="rule" x1=${LEFT} x2=${width - RIGHT} y1=${BASE} y2=${BASE}></line>`;
}

/** The gusts of a forecast as steps along time, the limit as a line, and the stretches in which lifting stops. */
export function windPicture(
  { gusts, stops, limitMps }: WindAnswer,
  zone: string,
  width: number,
  words: LiftingStrings,
): TemplateResult {
  const from = gusts[0]!.start;
  const to = Math.max(gusts.at(-1)!.end, ...stops.map((one) => one.end));
  const highest = Math.max(0, ...gusts.map((one) => one.gustMps ?? 0));
  const most = Math.max(highest, limitMps) * 1.15;
  const axes = axesOf(from, to, most, width);
  const { x, y } = axes;
  const known = gusts.filter((one) => one.gustMps !== null);
  const steps = known
    .map((one, i) => {
      const go = i > 0 && known[i - 1]!.end === one.start ? 'L' : 'M';
      return `${go}${x(one.start)} ${y(one.gustMps!)} L${x(one.end)} ${y(one.gustMps!)}`;
    })
    .join(' ');
  return html`<svg
    role="img"
    width=${width}
    height=${HEIGHT}
    aria-label="${words.wind}. ${words.windTold(limitMps.toFixed(1), highest.toFixed(1), stops.length)}"
  >
    ${grid(from, to, most, zone, width, axes)}
    ${stops.map((one) => {
      const wide = Math.max(1, x(one.end) - x(one.start));
      return svg`<g><title>${momentText(one.start, zone)}: ${one.why}</title>
        <rect class="shut" x=${x(one.start)} y=${TOP} width=${wide} height=${BASE - TOP}></rect>
        <path class="slash" d="M${x(one.start)} ${BASE} L${x(one.start) + wide} ${TOP}"></path>
        ${wide > 46 ? svg`<text class="on-shut" x=${x(one.start) + 3} y=${BASE - 5}>${words.stop}</text>` : ''}</g>`;
    })}
    <path class="curve" d=${steps}></path>
    <line class="limit" x1=${LEFT} x2=${width - RIGHT} y1=${y(limitMps)} y2=${y(limitMps)}></line>
    <text class="limit-word" text-anchor="end" x=${width - RIGHT} y=${y(limitMps) - 5}>
      ${words.limitLine(limitMps.toFixed(1))}
    </text>
  </svg>`;
}

/** Maturity along time from one pour, the figure asked for, and the moment it is reached. */
export function curingPicture(
  pour: CuringOfPour,
  zone: string,
  unit: string,
  width: number,
  words: LiftingStrings,
): TemplateResult {
  const { curve, needed, readyAt, pouredAt } = pour;
  const to = Math.max(curve.at(-1)!.at, pouredAt + 3_600_000);
  const most = Math.max(needed, ...curve.map((one) => one.maturity)) * 1.1;
  const axes = axesOf(pouredAt, to, most, width);
  const { x, y } = axes;
  const told = readyAt === null ? words.notKnown : `${words.ready} ${momentText(readyAt, zone)}`;
  return html`<svg
    role="img"
    width=${width}
    height=${HEIGHT}
    aria-label="${words.concrete}. ${words.curveTold(pour.activity, told)}"
  >
    ${grid(pouredAt, to, most, zone, width, axes)}
    <line class="limit" x1=${LEFT} x2=${width - RIGHT} y1=${y(needed)} y2=${y(needed)}></line>
    <text class="limit-word" x=${LEFT + 4} y=${y(needed) - 5}>${needed} ${unit}</text>
    <path
      class="curve"
      d=${curve.map((one, i) => `${i === 0 ? 'M' : 'L'}${x(one.at)} ${y(one.maturity)}`).join(' ')}
    ></path>
    ${
      readyAt === null
        ? ''
        : svg`<line class="rule" x1=${x(readyAt)} x2=${x(readyAt)} y1=${y(needed)} y2=${BASE}></line>
          <path class="ready" d="M${x(readyAt)} ${y(needed) - 6} l6 6 l-6 6 l-6 -6 z"></path>`
    }
  </svg>`;
}
