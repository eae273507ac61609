import type { AccessWindow } from '../../src/model/index.js';
import { sightOf } from '../shared/in-sight.js';
import { placesWith, Tracks, type Places } from '../shared/tracks.js';
import { FEW, rowTracks, tableTracks } from './row-heights.js';
import { LINE } from './scale.js';

/** Position of a row in a partly drawn list. */
export interface RowPlace {
  /** Pixels from the start of the list. */
  readonly top: number;
  readonly height: number;
  /** From 1. */
  readonly position: number;
  readonly count: number;
}

/** Pixels drawn beyond the visible part, so that a fast scroll does not show blank space. */
const OVERSCAN = 320;
/** Rows drawn before the page is measured. */
const INITIAL_ROWS = 24;
/** Up to this width of the element, in rem, names are above the drawings; same as in the styles. */
const NARROW = 46;

/** Which rows of the ribbon are drawn: all of a short list, only the visible ones of a long list. */
export class RowsInSight {
  readonly #host: HTMLElement & { readonly renderRoot?: ParentNode };
  #windows: readonly AccessWindow[] = [];
  #tracks = new Tracks([]);
  #part: Places = { first: 0, end: INITIAL_ROWS };
  #seen = 0;
  #rem = 16;
  #narrow = false;
  #asTable = false;
  #heightOf: (window: AccessWindow) => number = () => LINE;

  constructor(host: HTMLElement & { readonly renderRoot?: ParentNode }) {
    this.#host = host;
  }

  get many(): boolean {
    return this.#windows.length > FEW;
  }

  /** Height of all rows of a long list, in pixels. */
  get total(): number {
    return this.#tracks.total;
  }

  /** Height of the sticky part above the rows, in pixels. */
  get covered(): number {
    return this.#host.renderRoot?.querySelector('.axis')?.clientHeight ?? 0;
  }

  /** Rows a page key moves by; 0 where all rows are drawn. */
  get page(): number {
    return this.many ? Math.max(1, this.#seen - 1) : 0;
  }

  take(
    windows: readonly AccessWindow[],
    asTable: boolean,
    heightOf: (window: AccessWindow) => number,
  ): void {
    this.#heightOf = heightOf;
    this.#windows = windows;
    this.#asTable = asTable;
    this.#measure();
  }

  /** Blank pixels before the first drawn row and after the last. */
  get gaps(): { readonly before: number; readonly after: number } {
    if (!this.many) return { before: 0, after: 0 };
    const { first, end } = this.#part;
    return { before: this.#tracks.start(first), after: this.total - this.#tracks.start(end) };
  }

  /** Indexes of the rows to draw, in order, always including `kept` if it is a row. */
  places(kept: number): number[] {
    const count = this.#windows.length;
    if (!this.many) return [...this.#windows.keys()];
    const { first, end } = this.#part;
    return placesWith({ first: Math.min(first, count), end: Math.min(end, count) }, kept, count);
  }

  placeOf(at: number): RowPlace | undefined {
    if (!this.many) return undefined;
    return {
      top: this.#tracks.start(at),
      height: this.#tracks.size(at),
      position: at + 1,
      count: this.#windows.length,
    };
  }

  /** Measures what is visible. Returns whether other rows have to be drawn. */
  look(): boolean {
    const list = this.many ? this.#host.renderRoot?.querySelector('.rows') : undefined;
    if (!list) return false;
    const narrow = this.#host.clientWidth <= NARROW * this.#rem;
    if (narrow !== this.#narrow) {
      this.#narrow = narrow;
      this.#measure();
      return true;
    }
    const { blockStart, blockEnd } = sightOf(list);
    const seen = this.#tracks.between(blockStart, blockEnd);
    this.#seen = seen.end - seen.first;
    const part = this.#tracks.between(blockStart - OVERSCAN, blockEnd + OVERSCAN);
    if (part.first === this.#part.first && part.end === this.#part.end) return false;
    this.#part = part;
    return true;
  }

  #measure(): void {
    if (!this.many) return;
    if (this.#host.isConnected)
      this.#rem = parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
    this.#tracks = this.#asTable
      ? tableTracks(this.#windows.length, this.#rem)
      : rowTracks(this.#windows, this.#rem, this.#narrow, this.#heightOf);
  }
}
