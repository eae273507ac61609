import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { durationText, HOUR, MINUTE, type Instant } from '../../src/calendar/index.js';
import type { RuleSketch, SketchStep } from '../../src/engine/rule-change/rule-sketch.js';
import { clockText, dayText, stretchText } from '../shared/format.js';
import { kindFill, kindPatterns } from '../shared/kinds.js';
import type { RulesStrings } from './strings.js';
import { ruleName } from '../shared/said.js';

const WINDOW = 26;
const ROW = 20;
const EDGE = 6;

/** The rules laid along the time of one window: the window itself, then each step on a line of its own. */
export function sketchPicture(
  sketch: RuleSketch,
  width: number,
  words: RulesStrings,
): TemplateResult {
  const { window, ledger, steps } = sketch;
  const from = Math.min(window.start, ...steps.flatMap((step) => step.at?.start ?? []));
  const to = Math.max(window.end, ...steps.flatMap((step) => step.at?.end ?? []));
  const x = (at: Instant): number =>
    Math.round((EDGE + ((at - from) / (to - from)) * Math.max(1, width - 2 * EDGE)) * 100) / 100;
  const lines = guides(sketch);
  const margin = ledger.rows.find((row) => row.kind === 'margin');
  return html`<div class="sketch" part="picture">
      <div class="line axis" aria-hidden="true">
        <span class="name"></span>
        <div class="drawing-room">
          <svg width=${width} height="18">${ticks(from, to, x, window.zone)}</svg>
        </div>
      </div>
      <div class="line whole">
        <span class="name"
          ><strong>${words.wholeWindow}</strong>
          <span class="quiet run">${stretchText(window.start, window.end, window.zone)}</span></span
        >
        <svg class="drawing" width=${width} height=${WINDOW} aria-hidden="true">
          ${kindPatterns}
          ${ledger.rows
            .filter((row) => row.end > row.start)
            .map((row) => {
              const wide = x(row.end) - x(row.start);
              const text = durationText(row.minutes);
              return svg`<rect class="edge ${row.kind}" data-kind=${row.kind} x=${x(row.start) + 0.5} y="3.5" width=${Math.max(0.5, wide - 1)} height=${WINDOW - 7} fill=${kindFill(row.kind)}><title>${words.kind[row.kind]}: ${ruleName(row)}, ${text}</title></rect>
              ${row.kind === 'usable' && wide > text.length * 6.6 + 8 ? svg`<text class="inside" x=${x(row.start) + wide / 2} y="17" text-anchor="middle">${text}</text>` : nothing}`;
            })}
        </svg>
      </div>
      <ol class="laid">
        ${steps.map((step) => stepLine(step, x, width, lines, window.zone, words))}
        ${
          margin
            ? html`<li class="line">
                <span class="name"
                  >${words.margin}
                  <span class="quiet run"
                    >${between(margin, window.zone)}, ${durationText(margin.minutes)},
                    ${words.kept}</span
                  ></span
                >
                <svg class="drawing" width=${width} height=${ROW} aria-hidden="true">
                  ${kindPatterns}${posts(lines, x)}
                  <rect
                    class="edge margin"
                    x=${x(margin.start) + 0.5}
                    y="4.5"
                    width=${Math.max(0.5, x(margin.end) - x(margin.start) - 1)}
                    height=${ROW - 9}
                    fill=${kindFill('margin')}
                  ></rect>
                </svg>
              </li>`
            : nothing
        }
      </ol>
    </div>
    <p class="outcome run" role="status">
      ${
        ledger.shortfallMinutes > 0
          ? html`<strong class="lost"
              >✕ ${words.tooShort(durationText(ledger.shortfallMinutes))}</strong
            >`
          : html`<strong
              >${words.usableIn(
                durationText(ledger.usableMinutes),
                durationText(ledger.grossMinutes),
              )}</strong
            >`
      }
    </p>`;
}

function stepLine(
  item: SketchStep,
  x: (at: Instant) => number,
  width: number,
  lines: readonly Instant[],
  zone: string,
  words: RulesStrings,
): TemplateResult {
  const { step, at, list } = item;
  const kind = list === 'leadIn' ? 'lead-in' : 'lead-out';
  if (!at)
    return html`<li class="line absent">
      <span class="name"
        >${step.step}
        <span class="quiet run">${words.notHere(words.whenText[step.when])}</span></span
      >
      <svg class="drawing" width=${width} height=${ROW} aria-hidden="true">${posts(lines, x)}</svg>
    </li>`;
  const { low = step.minutes, high = step.minutes } = step;
  const spread = low !== step.minutes || high !== step.minutes;
  const [near, far] = [x(at.start + low * MINUTE), x(at.start + high * MINUTE)];
  return html`<li class="line" data-list=${list} data-index=${item.index}>
    <span class="name"
      >${step.step}
      <span class="quiet run"
        >${between(at, zone)},
        ${durationText(step.minutes)}${
          spread ? ` (${words.spread(durationText(low), durationText(high))})` : ''
        }${item.beside === undefined ? '' : `, ${words.with(item.beside)}`}</span
      ></span
    >
    <svg class="drawing" width=${width} height=${ROW} aria-hidden="true">
      ${kindPatterns}${posts(lines, x)}
      <rect
        class="edge ${kind} bar"
        data-start=${at.start}
        x=${x(at.start) + 0.5}
        y="4.5"
        width=${Math.max(0.5, x(at.end) - x(at.start) - 1)}
        height=${ROW - 9}
        fill=${kindFill(kind)}
      ></rect>
      ${
        spread
          ? svg`<path class="whisker ${kind}" d=${`M${near} ${ROW - 2.5} H${far} M${near} ${ROW - 5} V${ROW} M${far} ${ROW - 5} V${ROW}`}></path>`
          : nothing
      }
    </svg>
  </li>`;
}

function between({ start, end }: { readonly start: Instant; readonly end: Instant }, zone: string) {
  return `${clockText(start, zone)}\u2013${clockText(end, zone)}`;
}

/** Where the usable middle begins and ends. */
function guides({ ledger }: RuleSketch): readonly Instant[] {
  const [first] = ledger.usable;
  const last = ledger.usable.at(-1);
  return first && last ? [first.start, last.end] : [];
}

function posts(lines: readonly Instant[], x: (at: Instant) => number): SVGTemplateResult[] {
  return lines.map(
    (at) => svg`<line class="post" x1=${x(at)} x2=${x(at)} y1="0" y2="100%"></line>`,
  );
}

/** Whole hours, as many as there is room for; days in a window of more than two. */
function ticks(
  from: Instant,
  to: Instant,
  x: (at: Instant) => number,
  zone: string,
): SVGTemplateResult[] {
  const hours = (to - from) / HOUR;
  const room = (x(to) - x(from)) / Math.max(1, hours);
  const step =
    [1, 2, 3, 6, 12, 24, 48, 96].find((value) => value * room > (value < 24 ? 54 : 72)) ?? 168;
  const marks: SVGTemplateResult[] = [];
  for (let at = Math.ceil(from / HOUR) * HOUR; at <= to; at += step * HOUR) {
    const text = step < 24 ? clockText(at, zone) : dayText(at, zone);
    const anchor = x(at) - x(from) < 20 ? 'start' : x(to) - x(at) < 20 ? 'end' : 'middle';
    marks.push(svg`<text x=${x(at)} y="13" text-anchor=${anchor}>${text}</text>`);
  }
  return marks;
}
