// Words for what is wrong with the weather and the turns that a site is planned by.
import type { ProblemWords } from '../model/index.js';

/** A row of the weather, 1 for the first, and the figure in it that is wrong. */
export interface InRow {
  readonly row: number;
  readonly figure: number;
}

const correctRow = 'Correct the row; until then the row before it holds on.';
const inRow =
  (what: (figure: number) => string) =>
  ({ row, figure }: InRow): ProblemWords => [`Weather row ${row}: ${what(figure)}`, correctRow];

export const weatherProblems = {
  'bad-time': inRow(() => 'the time cannot be read.'),
  'time-out-of-order': inRow(() => 'the time is not after that of the row before.'),
  'bad-wind': inRow((figure) => `no wind blows at ${figure} m/s.`),
  'bad-wind/gust': inRow((figure) => `no gust blows at ${figure} m/s.`),
  'bad-temperature': inRow((figure) => `${figure} °C is no such temperature.`),
};

export const turnProblems = {
  'turn-ends-before-start': ({ turn }: { readonly turn: string }): ProblemWords => [
    `Turn ${turn}: it ends at or before its start.`,
    'Correct the times.',
  ],
  'bad-travel': ({ turn }: { readonly turn: string }): ProblemWords => [
    `Turn ${turn}: travel is below zero.`,
    'Give 0 or more minutes.',
  ],
};

export type WeatherProblems = typeof weatherProblems;
export type TurnProblems = typeof turnProblems;
