import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { durationText, MINUTE, type Instant } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { clockText, dayText } from '../shared/format.js';
import { kindFill } from '../shared/kinds.js';
import type { RibbonLine } from './lines.js';
import { GUTTER, LANE, lineHeight, type Scale } from './scale.js';
import type { RibbonStrings } from './strings.js';
import { laneCount, lanedPieces, type WindowWork } from './work.js';
import { ruleName, whyText } from '../shared/said.js';

/** The hours over the drawing. */
export function axis(scale: Scale): TemplateResult {
  return html`<svg width=${scale.wide} height="20">
    ${scale.hours.map(
      ({ at, text }) => svg`<text x=${scale.x(at)} y="14" text-anchor="middle">${text}</text>`,
    )}
  </svg>`;
}

/** A window drawn over time, one line from noon to noon. Its fill patterns are defined elsewhere in the element. */
export function windowPicture(
  window: AccessWindow,
  lines: readonly RibbonLine[],
  scale: Scale,
  words: RibbonStrings,
  { work, week = '' }: { readonly work?: WindowWork | undefined; readonly week?: string } = {},
): TemplateResult {
  const high = lineHeight(laneCount(work));
  return html`<svg
    class="drawing"
    width=${scale.wide}
    height=${lines.length * high}
    aria-hidden="true"
  >
    ${lines.map((line, at) => lineOf(window, line, { top: at * high, high, week: at === 0 ? week : '', work }, scale, words))}
  </svg>`;
}

interface LineLook {
  readonly top: number;
  readonly high: number;
  /** Text above the date of the line; may be empty. */
  readonly week: string;
  readonly work: WindowWork | undefined;
}

/** The work of a line: a box per piece, with its name if there is room. */
function piecesIn(
  line: RibbonLine,
  work: WindowWork,
  x: (at: Instant) => number,
  top: number,
): readonly SVGTemplateResult[] {
  return lanedPieces(work)
    .filter((piece) => piece.from < line.end && piece.to > line.start)
    .map((piece) => {
      const left = x(Math.max(piece.from, line.start));
      const width = Math.max(2, x(Math.min(piece.to, line.end)) - left - 1);
      const y = top + piece.lane * LANE;
      const word = [piece.label, piece.short].find((text) => width > text.length * 7.8 + 6) ?? '';
      return svg`<g class="piece"><title>${piece.title}</title><rect x=${left + 0.5} y=${y} width=${width} height=${LANE - 2}></rect>${word !== '' ? svg`<text x=${left + 5} y=${y + 11}>${word}</text>` : nothing}</g>`;
    });
}

function lineOf(
  window: AccessWindow,
  line: RibbonLine,
  { top, high, week, work }: LineLook,
  scale: Scale,
  words: RibbonStrings,
): SVGTemplateResult {
  const x = (at: Instant): number => scale.x((at - line.noon) / MINUTE);
  const midnight = scale.x(720);
  const bar = { y: top + 6, height: high - 10 };
  const base = top + high / 2 + 5;
  const start = x(line.start);
  const end = x(line.end);
  return svg`<g>
      <line class="tick midnight" x1=${midnight} x2=${midnight} y1=${top} y2=${top + high}></line>
      ${week === '' ? nothing : svg`<text class="week" x="0" y=${base - 7}>${week}</text>`}
      <text class="date" x="0" y=${week === '' ? base : base + 7}>${dayText(line.start, window.zone)}</text>
      ${line.rows.map((row) => {
        const left = x(row.start);
        const width = x(row.end) - left;
        const minutes = Math.round((row.end - row.start) / MINUTE);
        const word = row.kind === 'usable' && !work ? durationText(minutes) : '';
        return svg`<rect class="edge ${row.kind} ${work && row.kind === 'usable' ? 'free' : ''}" x=${left + 0.5} y=${bar.y} width=${Math.max(0.5, width - 1)} height=${bar.height} fill=${work && row.kind === 'usable' ? 'none' : kindFill(row.kind)}><title>${ruleName(row)}: ${durationText(row.minutes)}. ${whyText(row)}</title></rect>
        ${
          word !== '' && width > word.length * 6.6 + 8
            ? svg`<text class="inside usable" x=${left + width / 2} y=${base} text-anchor="middle">${word}</text>`
            : nothing
        }`;
      })}
      ${
        line.rows.length === 0
          ? svg`<rect class="outline ${window.status}" x=${start + 0.5} y=${bar.y} width=${Math.max(1, end - start - 1)} height=${bar.height}></rect>`
          : nothing
      }
      ${work ? piecesIn(line, work, x, bar.y + 1) : nothing}
      ${line.first ? svg`<text class="end halo" x=${start - 4} y=${base} text-anchor="end">${clockText(window.start, window.zone)}</text>` : nothing}
      ${line.last ? svg`<text class="end halo" x=${end + 4} y=${base}>${clockText(window.end, window.zone)}</text>` : nothing}
      ${line.changes.map(
        (
          change,
        ) => svg`<line class="change" x1=${x(change.at)} x2=${x(change.at)} y1=${top + 1} y2=${top + high - 1}></line>
        ${changeWords(change, { before: start - BESIDE_TIME, after: end + BESIDE_TIME, base }, scale, words)}`,
      )}
    </g>`;
}

/** Width of a time such as `22:50` beside its window, gap included. */
const BESIDE_TIME = 50;

/** Text goes on the side of the window with more room. */
function changeWords(
  change: RibbonLine['changes'][number],
  { before, after, base }: { before: number; after: number; base: number },
  scale: Scale,
  words: RibbonStrings,
): SVGTemplateResult {
  const room = { right: scale.wide - after, left: before - GUTTER };
  const right = room.right > room.left;
  const size = durationText(Math.abs(change.forwardMinutes));
  const long = change.forwardMinutes > 0 ? words.clocksForward(size) : words.clocksBack(size);
  const short = words.clocks(`${change.forwardMinutes > 0 ? '+' : '\u2212'}${size}`);
  const text = Math.max(room.right, room.left) > long.length * 7.6 ? long : short;
  return svg`<text class="change-text halo" x=${right ? after : before} y=${base} text-anchor=${right ? 'start' : 'end'}>${text}</text>`;
}
