import type { MostThatFits } from './types.js';

/** Whether some of it goes, though not all. */
export const goesInPart = (most: MostThatFits | undefined): most is MostThatFits =>
  most !== undefined && most.pieces + most.units > 0 && most.pieces < most.ofPieces;

/** The words of how much goes, in the language of whoever is told. */
interface PartWords {
  readonly atLeast: (amount: string) => string;
  readonly unitsOf: (units: number, of: number) => string;
  readonly piecesOf: (pieces: number, of: number) => string;
  readonly none: string;
  readonly noneFound: string;
}

const english: PartWords = {
  atLeast: (amount) => `at least ${amount}`,
  unitsOf: (units, of) => `${units} of ${of} units`,
  piecesOf: (pieces, of) => `${pieces} of ${of} ${of === 1 ? 'piece' : 'pieces'}`,
  none: 'none',
  noneFound: 'none found',
};

/** How much of a package goes: units while some are left over, else pieces; `none` where nothing does. */
export function partText(most: MostThatFits, words: PartWords = english): string {
  const { pieces, ofPieces, units, ofUnits, proven } = most;
  const amount =
    units > 0 && units < ofUnits
      ? words.unitsOf(units, ofUnits)
      : pieces > 0
        ? words.piecesOf(pieces, ofPieces)
        : '';
  if (amount === '') return proven ? words.none : words.noneFound;
  return proven ? amount : words.atLeast(amount);
}

/** The more of it goes, the more this is: 1 is all of it. */
export function shareOf({ pieces, ofPieces, units, ofUnits }: MostThatFits): number {
  return (pieces + units / (ofUnits + 1)) / Math.max(1, ofPieces);
}
