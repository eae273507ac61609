import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { durationText, MINUTE, type Instant } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import type { Figure } from '../shared/figure-ask-event.js';
import { clockText } from '../shared/format.js';
import { askButton } from './ask-button.js';
import { kindFill, kindPatterns } from '../shared/kinds.js';
import { endScale, ticksOf } from './end-scale.js';
import { endName, type Setting } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { clockBeside, percentText } from './times.js';

const MARK = 16;
/** The same at any width, so that measuring the width never changes the height. */
const BARS = 128;
const STRIP = 22;
const GAP = 20;
const LETTER = 6.3;

/** Bars that a picture so many pixels wide has room for. */
const barsIn = (width: number): number => Math.max(8, Math.floor(width / 9));

interface Mark {
  readonly at: Instant;
  readonly label: string;
}

/** The strip of the plan: work, lead-out, then margin or what runs past the booked end. */
function planStrip(
  result: HandbackResult,
  x: (at: Instant) => number,
  top: number,
  strings: HandbackStrings,
): SVGTemplateResult {
  const { plannedClear, plannedHandback, bookedEnd, requiredMinutes } = result;
  const piece = (
    from: Instant,
    to: Instant,
    kind: 'usable' | 'lead-out' | 'margin',
    word: string,
  ): SVGTemplateResult | typeof nothing => {
    const width = x(to) - x(from);
    if (!(width > 0)) return nothing;
    return svg`<rect class="edge ${kind}" x=${x(from)} y=${top} width=${width} height=${STRIP} fill=${kindFill(kind)}><title>${word}</title></rect>
      ${
        width > word.length * LETTER + 10
          ? svg`<text class="piece ${kind}" x=${x(from) + width / 2} y=${top + 15} text-anchor="middle">${word}</text>`
          : nothing
      }`;
  };
  const margin = durationText(result.marginMinutes);
  const needed = bookedEnd - requiredMinutes * MINUTE;
  const below = top + STRIP + 6;
  return svg`${piece(plannedClear - 1e9, plannedClear, 'usable', strings.work)}
    ${piece(plannedClear, plannedHandback, 'lead-out', `${strings.leadOut} ${durationText(result.leadOutMinutes)}`)}
    ${piece(plannedHandback, bookedEnd, 'margin', `${strings.margin} ${margin}`)}
    ${
      plannedHandback > bookedEnd
        ? svg`<rect class="beyond" x=${x(bookedEnd)} y=${top} width=${x(plannedHandback) - x(bookedEnd)} height=${STRIP}><title>${strings.beyond} ${durationText(-result.marginMinutes)}</title></rect>`
        : nothing
    }
    ${
      requiredMinutes > 0
        ? svg`<path class="needed" d="M${x(needed)} ${below} v5 H${x(bookedEnd)} v-5"></path>
      <text class="soft" x=${x(bookedEnd) - 4} y=${below + 18} text-anchor="end">${strings.requiredMargin} ${durationText(requiredMinutes)}</text>`
        : nothing
    }`;
}

/**
 * The end of a window along time: when the runs of the simulation hand back, and under them the plan's own arithmetic
 * up to the booked end. Runs on time are solid, late ones hatched.
 */
export function endPicture(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
  width: number,
): TemplateResult {
  const { simulation: run, bookedEnd } = result;
  const scale = endScale(result, barsIn(width));
  const { bars } = scale.histogram;
  const x = (at: Instant): number => {
    const share = (at - scale.from) / (scale.to - scale.from);
    return Math.round(Math.min(1, Math.max(0, share)) * width * 10) / 10;
  };
  const at = (minutes: number): Instant => scale.windowStart + minutes * MINUTE;
  const marks: Mark[] = [
    { at: run.p50, label: 'P50' },
    { at: run.p80, label: 'P80' },
    { at: run.p90, label: 'P90' },
    { at: run.p95, label: 'P95' },
  ];
  const barsTop = (marks.length + 1) * MARK + 4;
  const floor = barsTop + BARS;
  const stripTop = floor + GAP;
  const height = stripTop + STRIP + 28;
  const most = Math.max(1, ...bars.map((bar) => bar.runs));
  const chance = run.outlook.onTime.probability;
  const end = x(bookedEnd);
  const endLabel = `${endName(result, strings)} ${clockText(bookedEnd, zone)}`;
  const label = (
    place: number,
    y: number,
    words: string,
    style: string,
    point: number,
  ): SVGTemplateResult => {
    const left = place + words.length * LETTER + 8 > width;
    return svg`<circle class="dot ${style}" cx=${place} cy=${y - 4} r=${point}></circle>
      <text class="halo ${style}" x=${left ? place - 6 : place + 6} y=${y} text-anchor=${left ? 'end' : 'start'}>${words}</text>`;
  };
  const ticks = ticksOf(scale, zone, width, 54).filter(
    (tick) => x(tick) >= 16 && x(tick) <= width - 16,
  );
  const told = [
    `${strings.plannedClear} ${clockText(result.plannedClear, zone)}`,
    `${strings.plannedHandback} ${clockText(result.plannedHandback, zone)}`,
    endLabel,
    ...marks.map((one) => `${one.label} ${clockBeside(one.at, bookedEnd, zone)}`),
    `${percentText(chance, run.runs)} ${strings.handedBackOnTime}`,
  ].join(', ');
  return html`<svg
    class="end-drawing"
    width=${width}
    height=${height}
    role="img"
    aria-label="${strings.end}: ${told}"
  >
    ${kindPatterns}
    <defs>
      <pattern id="late-bars" width="5" height="5" patternUnits="userSpaceOnUse">
        <rect class="late-ground" width="5" height="5"></rect>
        <path class="late-hatch" d="M-1 6 L6 -1 M-1 1 L1 -1 M4 6 L6 4"></path>
      </pattern>
    </defs>
    ${ticks.map(
      (
        tick,
      ) => svg`<line class="tick" x1=${x(tick)} x2=${x(tick)} y1=${barsTop} y2=${stripTop + STRIP}></line>
        <text class="soft halo" x=${x(tick)} y=${floor + 14} text-anchor="middle">${clockText(tick, zone)}</text>`,
    )}
    ${bars.map((bar) => {
      const left = x(at(bar.from));
      const tall = (bar.runs / most) * BARS;
      return svg`<rect
        class="bar ${bar.late ? 'late' : 'on-time'}"
        x=${left + 0.5} y=${floor - tall}
        width=${Math.max(0.5, x(at(bar.to)) - left - 1)} height=${tall}
        fill=${bar.late ? 'url(#late-bars)' : nothing}
      ><title>${clockText(at(bar.from), zone)} to ${clockText(at(bar.to), zone)}: ${bar.runs}</title></rect>`;
    })}
    <line class="floor" x1="0" x2=${width} y1=${floor} y2=${floor}></line>
    ${planStrip(result, x, stripTop, strings)}
    <path
      class="booked"
      d="M${end} 4 V${floor + 2} M${end} ${stripTop - 2} V${stripTop + STRIP + 6}"
    ></path>
    ${marks.map((mark, row) => {
      const y = (row + 2) * MARK - 4;
      return svg`<line class="mark-line" x1=${x(mark.at)} x2=${x(mark.at)} y1=${y - 4} y2=${floor}></line>
        ${label(x(mark.at), y, `${mark.label} ${clockBeside(mark.at, bookedEnd, zone)}`, 'pvalue', 2.5)}`;
    })}
    ${label(end, MARK - 4, endLabel, 'booked-text', 0)}
  </svg>`;
}

/** The picture's figures, and the bars of a picture of that width on request. */
export function endTables(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
  width: number,
  ask: (figure: Figure) => void,
): TemplateResult {
  const { simulation: run, bookedEnd, window } = result;
  const { windowStart, histogram } = endScale(result, barsIn(width));
  const time = (at: Instant): string => clockBeside(at, bookedEnd, zone);
  const rows: readonly (readonly [name: string, value: string, figure?: Figure])[] = [
    [strings.plannedClear, time(result.plannedClear)],
    [strings.leadOut, durationText(result.leadOutMinutes)],
    [strings.plannedHandback, time(result.plannedHandback)],
    [endName(result, strings), time(bookedEnd)],
    [strings.margin, durationText(result.marginMinutes), { of: 'handback-margin', window }],
    [strings.requiredMargin, durationText(result.requiredMinutes)],
    [
      strings.onTime,
      percentText(run.outlook.onTime.probability, run.runs),
      { of: 'on-time', window },
    ],
    ...([50, 80, 90, 95] as const).map(
      (percent) =>
        [`P${percent}`, time(run[`p${percent}`]), { of: 'p-value', window, percent }] as const,
    ),
    [
      strings.meanLate,
      `${run.outlook.expectedOverrunMinutes.toFixed(1)} min`,
      { of: 'expected-overrun', window },
    ],
    ...run.outlook.laterThan.map(
      (one) =>
        [
          strings.moreThan(time(bookedEnd + one.minutes * MINUTE)),
          one.probability === 0
            ? strings.noRunOf(run.runs.toLocaleString('en-GB'))
            : percentText(one.probability),
          { of: 'later-than', window, minutes: one.minutes },
        ] as const,
    ),
  ];
  const clock = (minutes: number): string => time(windowStart + minutes * MINUTE);
  return html`<div class="figures">
      <table>
        <thead class="unseen">
          <tr>
            <th scope="col">${strings.item}</th>
            <th scope="col">${strings.value}</th>
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ([name, value, figure]) =>
              html`<tr>
                <th scope="row">${name}</th>
                <td class="figure">
                  ${figure ? askButton(value, strings.explain, () => ask(figure)) : value}
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <details>
      <summary>${strings.asTable}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">${strings.between}</th>
            <th scope="col" class="figure">${strings.runs}</th>
            <th scope="col" class="figure">${strings.share}</th>
          </tr>
        </thead>
        <tbody>
          ${histogram.bars.map(
            (bar) =>
              html`<tr>
                <td>
                  ${clock(bar.from)}&ndash;${clock(bar.to)}
                  ${bar.late ? html`<span class="quiet">${strings.handedBackLate}</span>` : nothing}
                </td>
                <td class="figure">${bar.runs.toLocaleString('en-GB')}</td>
                <td class="figure">${percentText(bar.runs / Math.max(1, run.runs), run.runs)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </details>
    ${
      histogram.outside > 0
        ? html`<p class="quiet">${strings.outside(histogram.outside.toLocaleString('en-GB'))}</p>`
        : nothing
    }`;
}
