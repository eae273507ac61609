/**
 * What is free of something over time: `free[i]` from `at[i]` until `at[i + 1]`; the last level holds for ever.
 * `at` rises strictly and begins at minus infinity.
 */
export interface Profile {
  readonly at: number[];
  readonly free: number[];
}

export function copyOf(profile: Profile): Profile {
  return { at: profile.at.slice(), free: profile.free.slice() };
}

/** Index of the level in force at a moment. O(log n). */
export function indexAt({ at }: Pick<Profile, 'at'>, moment: number): number {
  let low = 0;
  let high = at.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at[middle]! <= moment) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The first moment from `from` on at which `amount` is free for `minutes` on end; infinity when never. */
export function firstFree(profile: Profile, amount: number, from: number, minutes: number): number {
  if (minutes === 0) return from;
  const { at, free } = profile;
  let start = from;
  for (let i = indexAt(profile, from); i < at.length; i += 1) {
    if (free[i]! < amount) {
      if (i + 1 === at.length) return Number.POSITIVE_INFINITY;
      start = Math.max(from, at[i + 1]!);
    } else if (i + 1 === at.length || at[i + 1]! >= start + minutes) return start;
  }
  return Number.POSITIVE_INFINITY;
}

/** Until when `amount` stays free from `from` on; `from` itself when it is not free then. */
export function freeUntil(profile: Profile, amount: number, from: number): number {
  const { at, free } = profile;
  let i = indexAt(profile, from);
  if (free[i]! < amount) return from;
  while (i + 1 < at.length && free[i + 1]! >= amount) i += 1;
  return i + 1 < at.length ? at[i + 1]! : Number.POSITIVE_INFINITY;
}

/** The most that is free at once in [from, to). */
export function mostFree(profile: Profile, from: number, to: number): number {
  let most = 0;
  for (let i = indexAt(profile, from); i < profile.at.length && profile.at[i]! < to; i += 1)
    most = Math.max(most, profile.free[i]!);
  return most;
}

/** Amount times minutes free in [from, to), counting levels below zero as none. */
export function areaFree(profile: Profile, from: number, to: number): number {
  let area = 0;
  for (let i = indexAt(profile, from); i < profile.at.length && profile.at[i]! < to; i += 1) {
    const end = Math.min(to, profile.at[i + 1] ?? to);
    area += Math.max(0, profile.free[i]!) * (end - Math.max(from, profile.at[i]!));
  }
  return area;
}

/** Takes `amount` away in [from, to); a negative amount gives it back. */
export function take(profile: Profile, amount: number, from: number, to: number): void {
  if (from >= to || amount === 0) return;
  const first = cut(profile, from);
  const last = cut(profile, to);
  const { at, free } = profile;
  for (let i = first; i < last; i += 1) free[i] = free[i]! - amount;
  // Levels made equal are one level again, so that taking and giving back leaves no trace.
  for (const i of [last, first])
    if (i > 0 && free[i] === free[i - 1]) {
      at.splice(i, 1);
      free.splice(i, 1);
    }
}

/** Makes a level begin at a moment; its index. */
function cut(profile: Profile, moment: number): number {
  const i = indexAt(profile, moment);
  if (profile.at[i] === moment) return i;
  profile.at.splice(i + 1, 0, moment);
  profile.free.splice(i + 1, 0, profile.free[i]!);
  return i + 1;
}

/**
 * The last moment up to `from` from which `amount` is free for `minutes` on end; minus infinity when there is none, or
 * none from `floor` on.
 */
export function latestFree(
  profile: Profile,
  amount: number,
  from: number,
  minutes: number,
  floor = Number.NEGATIVE_INFINITY,
): number {
  if (minutes === 0) return from;
  const { at, free } = profile;
  let start = from;
  // From the level in which the work would end, back to the one in which it would start.
  for (let i = indexAt(profile, start + minutes); i >= 0 && start >= floor; i -= 1) {
    if (at[i]! >= start + minutes) continue;
    if (free[i]! < amount) start = at[i]! - minutes;
    else if (at[i]! <= start) return start;
  }
  return Number.NEGATIVE_INFINITY;
}
