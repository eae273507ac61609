import type { AccessWindow } from '../../src/model/index.js';
import { Tracks } from '../shared/tracks.js';
import { piecesOf } from './lines.js';
import { LINE } from './scale.js';

/** Up to this many windows every row is drawn, as high as its words need. */
export const FEW = 60;
/** Windows put on paper at most, some 80 pages: a browser lays out all of them before it shows the first. */
export const PRINTED_WINDOWS = 2_000;
/** Name and state of a window under each other, in rem; longer names are cut to fit. Its hours are as high. */
const NAME = 2.75;
const RULE = 1;

/** Rows of a long list: each as high as its lines, so that any of them can be found without drawing those before it. */
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

/** Rows of a long table, in rem. As in the styles. */
const TABLE_ROW = 1.875;

export function tableTracks(count: number, rem: number): Tracks {
  return new Tracks(Array.from({ length: count }, () => TABLE_ROW * rem));
}
