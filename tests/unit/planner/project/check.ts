// A verifier and an exhaustive solver that share no code with the search.

export interface SmallProject {
  readonly durations: readonly number[];
  readonly demands: readonly (readonly number[])[];
  readonly capacities: readonly number[];
  readonly precedence: readonly (readonly [number, number, number])[];
  readonly releases: readonly number[];
  readonly tails: readonly number[];
}

/** Why the starts are no schedule of that makespan, or undefined when they are one. */
export function projectFault(
  p: SmallProject,
  starts: ArrayLike<number>,
  makespan: number,
): string | undefined {
  const n = p.durations.length;
  let end = 0;
  for (let i = 0; i < n; i++) {
    const start = starts[i];
    if (start === undefined || !Number.isInteger(start) || start < p.releases[i]!)
      return `activity ${i} starts at ${start}, released at ${p.releases[i]}`;
    end = Math.max(end, start + p.durations[i]! + p.tails[i]!);
  }
  if (end !== makespan) return `the makespan is ${end}, not ${makespan}`;
  for (const [a, b, lag] of p.precedence)
    if (starts[b]! < starts[a]! + p.durations[a]! + lag) return `${b} starts before ${a} + ${lag}`;
  for (let time = 0; time < end; time++) {
    for (let k = 0; k < p.capacities.length; k++) {
      let used = 0;
      for (let i = 0; i < n; i++)
        if (starts[i]! <= time && time < starts[i]! + p.durations[i]!) used += p.demands[k]![i]!;
      if (used > p.capacities[k]!) return `resource ${k} is at ${used} at time ${time}`;
    }
  }
  return undefined;
}

/** The shortest makespan, by placing the activities at their earliest in every order. */
export function shortestMakespan(p: SmallProject): number {
  const n = p.durations.length;
  let best = Infinity;
  const starts: (number | undefined)[] = new Array<number | undefined>(n).fill(undefined);
  const fits = (i: number, start: number): boolean => {
    for (let time = start; time < start + p.durations[i]!; time++) {
      for (let k = 0; k < p.capacities.length; k++) {
        let used = p.demands[k]![i]!;
        for (let j = 0; j < n; j++) {
          const at = starts[j];
          if (at !== undefined && at <= time && time < at + p.durations[j]!)
            used += p.demands[k]![j]!;
        }
        if (used > p.capacities[k]!) return false;
      }
    }
    return true;
  };
  const go = (placed: number, end: number): void => {
    if (end >= best) return;
    if (placed === n) {
      best = end;
      return;
    }
    for (let i = 0; i < n; i++) {
      if (starts[i] !== undefined) continue;
      const into = p.precedence.filter(([, b]) => b === i);
      if (into.some(([a]) => starts[a] === undefined)) continue;
      let start = p.releases[i]!;
      for (const [a, , lag] of into) start = Math.max(start, starts[a]! + p.durations[a]! + lag);
      while (!fits(i, start)) start++;
      starts[i] = start;
      go(placed + 1, Math.max(end, start + p.durations[i]! + p.tails[i]!));
      starts[i] = undefined;
    }
  };
  go(0, 0);
  return best;
}
