import type { Assignment } from '../../model/index.js';

/** One name, however it is written: `PTS ` and `pts`. */
const plain = (name: string): string => name.trim().toLowerCase();

/**
 * What a turn needs that a crew is not known to hold. A crew holds what the turns it is rostered for need; where none of
 * them names a competence nothing is known of it, and it holds none.
 * @returns Names as the turn writes them; empty where the turn needs none, or the crew holds them all.
 */
export function lacks(
  crew: string,
  turn: Assignment,
  turns: readonly Assignment[],
): readonly string[] {
  const { competence = [] } = turn;
  if (competence.length === 0 || crew === turn.crew) return [];
  const held = new Set(
    turns
      .filter((assignment) => assignment.crew === crew)
      .flatMap((assignment) => assignment.competence?.map(plain) ?? []),
  );
  return competence.filter((text) => !held.has(plain(text)));
}
