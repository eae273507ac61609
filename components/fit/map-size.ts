import { durationText } from '../../src/calendar/index.js';
import type { PackageSummary } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { FitStrings } from './strings.js';

/** Sizes of the map in pixels. All rows are alike and all columns are, so that any cell can be found by counting. */
export interface MapSize {
  /** The column of names. */
  readonly names: number;
  /** The row of windows. */
  readonly head: number;
  readonly row: number;
  readonly column: number;
}

// In rem.
const NARROW = 46;
const HEAD = 3.5;
const ROW = 2.875;
const COLUMN = { least: 9.25, most: 12 };
const NAMES = { least: 11, most: 16, narrow: 8.875 };
const PADDING = 1.0625;
/** Heights of a line of a name and of what stands under it. */
const LINE = { name: 1.1, under: 0.95, around: 0.625 };

/** What stands under the name of a package. */
export function packageText(pack: PackageSummary, words: FitStrings): string {
  return words.inPieces(durationText(pack.minutes), pack.activities.length);
}

/** Widths of texts as they will be drawn, in pixels. */
class Widths {
  readonly #context: CanvasRenderingContext2D | null;
  readonly #rem: number;
  readonly #family: string;

  constructor(family: string, rem: number) {
    this.#context = document.createElement('canvas').getContext('2d');
    this.#rem = rem;
    this.#family = family;
  }

  /** Of many texts only those with the most letters are measured. */
  longest(texts: readonly string[], weight: number, size: number): number {
    const most = texts.reduce((length, text) => Math.max(length, text.length), 0);
    const long = new Set(texts.filter((text) => text.length >= most * 0.7));
    if (this.#context) this.#context.font = `${weight} ${size * this.#rem}px ${this.#family}`;
    let longest = 0;
    for (const text of [...long].slice(0, 100)) {
      const guess = text.length * size * this.#rem * 0.6;
      longest = Math.max(longest, this.#context?.measureText(text).width ?? guess);
    }
    return longest;
  }
}

/**
 * @param room Width of the part that scrolls, in pixels; few columns are widened to fill it.
 * @param rem Pixels of the page's letter size.
 */
export function mapSize(
  packages: readonly PackageSummary[],
  windows: readonly AccessWindow[],
  words: FitStrings,
  { room, rem, family }: { room: number; rem: number; family: string },
): MapSize {
  const widths = new Widths(family, rem);
  const padding = PADDING * rem;
  const ids = widths.longest(
    packages.map((summary) => summary.id),
    650,
    0.875,
  );
  const under = widths.longest(
    packages.map((summary) => packageText(summary, words)),
    400,
    0.75,
  );
  const within = (width: number, least: number, most: number): number =>
    Math.round(Math.min(most * rem, Math.max(least * rem, width + padding)));
  const narrow = room <= NARROW * rem;
  const names = narrow
    ? Math.round(NAMES.narrow * rem)
    : within(Math.max(ids, under), NAMES.least, NAMES.most);
  const lines = (width: number): number => (width > names - padding ? 2 : 1);
  const needed = LINE.around + lines(ids) * LINE.name + lines(under) * LINE.under;
  const heads = widths.longest(
    windows.map((window) => window.id),
    650,
    0.875,
  );
  const column = within(heads, COLUMN.least, COLUMN.most);
  return {
    names,
    head: Math.round(HEAD * rem),
    row: Math.round(Math.max(ROW, needed) * rem),
    column: windows.length > 0 ? Math.max(column, (room - names) / windows.length) : column,
  };
}
