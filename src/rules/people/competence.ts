import type { Assignment } from '../../model/index.js';

/** Normalizes a name: `PTS ` and `pts` are the same. */
const normalized = (name: string): string => name.trim().toLowerCase();

/**
 * Competences that a turn needs and a crew is not known to hold. A crew is taken to hold what its rostered turns need;
 * if none of them names a competence, it holds none.
 * @returns Names as written on the turn; empty when the turn needs none or the crew holds them all.
 */
export function missingCompetences(
  crew: string,
  turn: Assignment,
  turns: readonly Assignment[],
): readonly string[] {
  const { competence = [] } = turn;
  if (competence.length === 0 || crew === turn.crew) return [];
  const held = new Set(
    turns
      .filter((assignment) => assignment.crew === crew)
      .flatMap((assignment) => assignment.competence?.map(normalized) ?? []),
  );
  return competence.filter((text) => !held.has(normalized(text)));
}
