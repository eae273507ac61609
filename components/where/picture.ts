import { nothing, svg, type SVGTemplateResult, type TemplateResult, html } from 'lit';
import { HOUR, MINUTE, startOfLocalDay } from '../../src/calendar/index.js';
import type { Meeting } from '../../src/engine/index.js';
import { clockText, dayText } from '../shared/format.js';
import type { Field, Piece } from './fields.js';
import type { WhereStrings } from './strings.js';
import { nameText } from '../shared/name.js';

/** Room for the times beside a field. */
export const GUTTER = 52;
const RIGHT = 8;
const HEAD = 4;
const LETTER = 7;

const round = (n: number): number => Math.round(n * 10) / 10;

/** Metres to pixels, the same for every field of a picture. */
export class PlaceScale {
  readonly from: number;
  readonly to: number;
  readonly wide: number;

  constructor(reach: { from: number; to: number }, wide: number) {
    this.from = reach.from;
    this.to = reach.to;
    this.wide = wide;
  }

  x(metres: number): number {
    const room = Math.max(1, this.wide - GUTTER - RIGHT);
    return round(GUTTER + ((metres - this.from) / (this.to - this.from)) * room);
  }

  get edges(): readonly [number, number] {
    return [this.x(this.from), this.x(this.to)];
  }

  /** Places that the axis names: 1, 2 or 5 of a power of ten apart, with room for each. */
  get ticks(): readonly number[] {
    const room = Math.max(2, (this.wide - GUTTER - RIGHT) / 90);
    const rough = (this.to - this.from) / room;
    const ten = 10 ** Math.floor(Math.log10(rough));
    const step = [1, 2, 5, 10].map((value) => value * ten).find((value) => value >= rough) ?? rough;
    const found: number[] = [];
    for (let at = Math.ceil(this.from / step) * step; at <= this.to; at += step) found.push(at);
    return found;
  }
}

/** The axis of places, in kilometres and metres: `21+480` is 21 km and 480 m. */
export function placeAxis(scale: PlaceScale, words: WhereStrings): TemplateResult {
  return html`<svg class="axis" width=${scale.wide} height="20" aria-hidden="true">
    <text class="tick" x="0" y="14">${words.place}</text>
    ${scale.ticks.map(
      (at) =>
        svg`<line class="mark" x1=${scale.x(at)} x2=${scale.x(at)} y1="15" y2="20"></line>
        <text class="tick" x=${scale.x(at)} y="12" text-anchor="middle">${placeText(at)}</text>`,
    )}
  </svg>`;
}

/** `21+480`. */
export function placeText(metres: number): string {
  const whole = Math.round(metres);
  const sign = whole < 0 ? '\u2212' : '';
  const size = Math.abs(whole);
  return `${sign}${Math.floor(size / 1000)}+${String(size % 1000).padStart(3, '0')}`;
}

/**
 * One window as a field: place along it, time down it; its work as boxes, and repeated work as lines from one end of
 * its extent towards the other by units.
 *
 * @param perHour Pixels of an hour.
 * @param meetings Pieces of this window that stand at one place at one time.
 */
export function fieldPicture(
  { window, pieces }: Field,
  scale: PlaceScale,
  perHour: number,
  meetings: readonly Meeting[],
  selected: number | null,
  words: WhereStrings,
  pick: (index: number) => void,
): TemplateResult {
  const y = (at: number): number => round(HEAD + ((at - window.start) / HOUR) * perHour);
  const high = y(window.end) + HEAD;
  const [left, right] = window.extent
    ? [scale.x(window.extent.from), scale.x(window.extent.to)]
    : scale.edges;
  const label = `${window.id}: ${words.pieces(pieces.length)}`;
  const named = new Map(pieces.map((piece) => [piece.index, piece]));
  return html`<svg class="field" width=${scale.wide} height=${high} role="img" aria-label=${label}>
    <defs>
      <pattern id="meets" width="6" height="6" patternUnits="userSpaceOnUse">
        <path class="hatch" d="M0 6 L6 0"></path>
      </pattern>
    </defs>
    ${hours(window.start, window.end, window.zone, perHour).map(
      ({ at, text }) =>
        svg`<line class="hour" x1=${left} x2=${right} y1=${y(at)} y2=${y(at)}></line>
        <text class="tick" x=${GUTTER - 6} y=${y(at) + 4} text-anchor="end">${text}</text>`,
    )}
    <rect
      class="closed ${window.status}"
      x=${left}
      y=${y(window.start)}
      width=${Math.max(1, right - left)}
      height=${y(window.end) - y(window.start)}
    ></rect>
    ${widestFirst(pieces).map((piece) => pieceShape(piece, scale, y, piece.index === selected, pick))}
    ${meetings
      .filter(
        (meeting) =>
          meeting.kind !== 'shared' && named.has(meeting.first) && named.has(meeting.second),
      )
      .map((meeting) => {
        const [from, to] = meeting.extent
          ? [scale.x(meeting.extent.from), scale.x(meeting.extent.to)]
          : [left, right];
        return svg`<rect class="meets ${meeting.kind}" x=${from} width=${Math.max(3, to - from)} y=${y(meeting.from)} height=${Math.max(2, y(meeting.to) - y(meeting.from))}></rect>`;
      })}
  </svg>`;
}

/** So that no piece hides one of a smaller place; work that says no place is widest. */
function widestFirst(pieces: readonly Piece[]): readonly Piece[] {
  const wide = ({ activity: { extent } }: Piece): number =>
    extent ? extent.to - extent.from : Number.POSITIVE_INFINITY;
  return pieces.toSorted((a, b) => {
    const [first, other] = [wide(a), wide(b)];
    return first === other ? 0 : other - first;
  });
}

function pieceShape(
  { index, placement, activity, share }: Piece,
  scale: PlaceScale,
  y: (at: number) => number,
  chosen: boolean,
  pick: (index: number) => void,
): SVGTemplateResult {
  const { extent, work } = activity;
  const [edge, end] = scale.edges;
  const x = extent ? scale.x(extent.from) : edge;
  const wide = Math.max(4, (extent ? scale.x(extent.to) : end) - x);
  const top = y(placement.from);
  const high = Math.max(3, y(placement.to) - top);
  const name = `${activity.id}${placement.units === undefined ? '' : ` \u00d7${placement.units}`}`;
  const inside = wide > name.length * LETTER + 6 && high >= 13;
  const kind = `${work.kind} ${extent ? '' : 'anywhere'} ${activity.lines.length > 1 ? 'both' : ''} ${chosen ? 'chosen' : ''}`;
  const along =
    work.kind === 'units'
      ? svg`<line class="along" x1=${x + wide * share[0]} y1=${top} x2=${x + wide * share[1]} y2=${top + high}></line>`
      : nothing;
  return svg`<g class="piece ${kind}" @click=${() => pick(index)}>
    <title>${nameText(activity)}</title>
    <rect class="box" x=${x} y=${top} width=${wide} height=${high}></rect>
    ${along}
    ${inside ? svg`<text class="name" x=${x + 4} y=${top + 11}>${name}</text>` : nameBeside(name, x, wide, top + Math.min(11, high), end)}
  </g>`;
}

/** After the box, or before it where the field ends too soon. */
function nameBeside(
  name: string,
  x: number,
  wide: number,
  y: number,
  end: number,
): SVGTemplateResult {
  const before = x + wide + 3 + name.length * LETTER > end;
  return svg`<text class="name out" x=${before ? x - 3 : x + wide + 3} y=${y} text-anchor=${before ? 'end' : 'start'}>${name}</text>`;
}

/** Whole hours within a window that its side names, with the day at midnight. */
function hours(
  from: number,
  to: number,
  zone: string,
  perHour: number,
): readonly { readonly at: number; readonly text: string }[] {
  const step = perHour >= 26 ? 1 : perHour >= 11 ? 2 : perHour >= 6 ? 4 : 12;
  const found: { at: number; text: string }[] = [];
  const first = Math.ceil(from / HOUR) * HOUR;
  for (let at = first; at <= to; at += HOUR) {
    const text = clockText(at, zone);
    const hour = Number(text.slice(0, 2));
    if (hour % step !== 0 || !text.endsWith('00')) continue;
    const isMidnight = startOfLocalDay(at, zone) === at && at - from > 30 * MINUTE;
    found.push({ at, text: isMidnight ? dayText(at, zone).slice(0, 6) : text });
  }
  return found;
}
