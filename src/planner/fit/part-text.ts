import type { MostThatFits } from './types.js';

/** Whether some of it goes, though not all. */
export const goesInPart = (most: MostThatFits | undefined): most is MostThatFits =>
  most !== undefined && most.pieces + most.units > 0 && most.pieces < most.ofPieces;

/** How much of a package goes: units while some are left over, else pieces; `none` where nothing does. */
export function partText({ pieces, ofPieces, units, ofUnits, proven }: MostThatFits): string {
  const least = proven ? '' : 'at least ';
  if (units > 0 && units < ofUnits) return `${least}${units} of ${ofUnits} units`;
  if (pieces > 0) return `${least}${pieces} of ${ofPieces} ${ofPieces === 1 ? 'piece' : 'pieces'}`;
  return proven ? 'none' : 'none found';
}

/** The more of it goes, the more this is: 1 is all of it. */
export function shareOf({ pieces, ofPieces, units, ofUnits }: MostThatFits): number {
  return (pieces + units / (ofUnits + 1)) / Math.max(1, ofPieces);
}
