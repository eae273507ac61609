/** At least one member of each of some sets, and how few at the least. */
export interface Hitting {
  readonly chosen: readonly number[];
  /** No choice has fewer. */
  readonly atLeast: number;
}

/** Choices looked at before the answer is only a bound. */
const STEPS = 20_000;

/**
 * The fewest members that hit every set. Depth-first on the smallest set that is not hit; sets that share nothing need
 * a member each.
 */
export function fewestHitting(sets: readonly (readonly number[])[]): Hitting {
  let best: readonly number[] = greedy(sets);
  let steps = STEPS;
  const visit = (chosen: readonly number[], open: readonly (readonly number[])[]): void => {
    if (open.length === 0) {
      if (chosen.length < best.length) best = chosen;
      return;
    }
    steps -= 1;
    if (steps < 0 || chosen.length + apart(open) >= best.length) return;
    const smallest = open.reduce((least, set) => (set.length < least.length ? set : least));
    const often = (member: number): number => open.filter((set) => set.includes(member)).length;
    for (const member of smallest.toSorted((a, b) => often(b) - often(a) || a - b))
      visit(
        [...chosen, member],
        open.filter((set) => !set.includes(member)),
      );
  };
  visit([], sets);
  return { chosen: best, atLeast: steps < 0 ? apart(sets) : best.length };
}

/** How many sets that share no member come to hand, the smallest first. */
function apart(sets: readonly (readonly number[])[]): number {
  const taken = new Set<number>();
  let count = 0;
  for (const set of sets.toSorted((a, b) => a.length - b.length)) {
    if (set.some((member) => taken.has(member))) continue;
    for (const member of set) taken.add(member);
    count += 1;
  }
  return count;
}

function greedy(sets: readonly (readonly number[])[]): number[] {
  const chosen: number[] = [];
  let open = sets;
  while (open.length > 0) {
    const counts = new Map<number, number>();
    for (const set of open)
      for (const member of set) counts.set(member, (counts.get(member) ?? 0) + 1);
    const [most] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a));
    chosen.push(most);
    open = open.filter((set) => !set.includes(most));
  }
  return chosen;
}
