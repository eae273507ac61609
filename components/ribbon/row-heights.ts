import type { AccessWindow } from '../../src/model/index.js';
import { Tracks } from '../shared/tracks.js';
import { piecesOf } from './lines.js';
import { LINE } from './scale.js';

/** Up to this many windows, all rows are drawn, as high as their text needs. */
export const FEW = 60;
/** Most windows printed, about 80 pages: a browser lays out all of them before it shows the first. */
export const PRINTED_WINDOWS = 2_000;
/** Height of a window's name and state, in rem; longer names are truncated. Its hours have the same height. */
const NAME = 2.75;
const RULE = 1;

/** Row positions of a long list: heights follow from the number of lines, so that a row can be found without drawing those before it. */
export function rowTracks(
  windows: readonly AccessWindow[],
  rem: number,
  narrow: boolean,
  heightOf: (window: AccessWindow) => number = () => LINE,
): Tracks {
  const name = Math.ceil(NAME * rem);
  return new Tracks(
    windows.map((window) => {
      const drawing = piecesOf(window).length * heightOf(window);
      return RULE + (narrow ? name + drawing : Math.max(name, drawing));
    }),
  );
}

/** Row height of a long table, in rem; same as in the styles. */
const TABLE_ROW = 1.875;

export function tableTracks(count: number, rem: number): Tracks {
  return new Tracks(Array.from({ length: count }, () => TABLE_ROW * rem));
}
