// Verifiers and exhaustive solvers that share no code with the kernels.

/** Why the bins are no answer, or undefined when they are one. */
export function balanceFault(
  times: ArrayLike<number>,
  capacity: number,
  precedence: readonly (readonly [number, number])[],
  bins: ArrayLike<number>,
  count: number,
): string | undefined {
  const load = new Map<number, number>();
  for (let task = 0; task < times.length; task++) {
    const bin = bins[task];
    if (bin === undefined || !Number.isInteger(bin) || bin < 0 || bin >= count)
      return `task ${task} is in bin ${bin} of ${count}`;
    load.set(bin, (load.get(bin) ?? 0) + times[task]!);
  }
  if (load.size !== count) return `${count} bins are claimed, ${load.size} are used`;
  for (const [bin, sum] of load) if (sum > capacity) return `bin ${bin} holds ${sum}`;
  for (const [a, b] of precedence) if (bins[a]! > bins[b]!) return `${b} lies before ${a}`;
  return undefined;
}

/** The fewest bins, by trying every assignment in which no bin is skipped. */
export function fewestBins(
  times: readonly number[],
  capacity: number,
  precedence: readonly (readonly [number, number])[],
): number {
  const n = times.length;
  const memo = new Map<number, number>();
  const needs = (done: number): number => {
    if (done === (1 << n) - 1) return 0;
    const known = memo.get(done);
    if (known !== undefined) return known;
    let best = Infinity;
    for (let load = 1; load < 1 << n; load++) {
      if ((load & done) !== 0) continue;
      const after = done | load;
      let sum = 0;
      for (let i = 0; i < n; i++) if ((load >> i) & 1) sum += times[i]!;
      if (sum > capacity) continue;
      if (precedence.some(([a, b]) => (after >> b) & 1 && !((after >> a) & 1))) continue;
      best = Math.min(best, 1 + needs(after));
    }
    memo.set(done, best);
    return best;
  };
  return needs(0);
}

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
