/** Of so many columns in so much room, every how many can carry its number. */
export function stretchLabel(columns: number, width: number): number {
  return Math.max(1, Math.ceil((columns * 24) / Math.max(1, width)));
}
