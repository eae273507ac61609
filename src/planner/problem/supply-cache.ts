import { DAY, MINUTE, type Interval } from '../../calendar/index.js';
import type { Resource } from '../../model/index.js';
import { indexAt, type Profile } from './profile.js';
import { supplyOf } from './supply.js';

interface Known {
  readonly profile: Profile;
  readonly range: Interval;
}

/** Days by which a profile is worked out beyond what was asked for, so that the next question finds it. */
const AHEAD_DAYS = 120;

/** What there is of a plan's resources, each profile worked out once for all the time anyone asked about. */
export class SupplyCache {
  readonly resources: readonly Resource[];
  readonly #zone: string;
  // In minutes since 1970.
  readonly #known = new WeakMap<Resource, Known>();

  constructor(resources: readonly Resource[], zone: string) {
    this.resources = resources;
    this.#zone = zone;
  }

  /**
   * The profile of a resource in minutes after `base` (whole minutes since 1970), right from `from` to `to` minutes
   * after it; before and after, the level at either end holds. It must not be changed.
   */
  part(resource: Resource, base: number, from: number, to: number): Profile {
    const { profile } = this.#reaching(resource, {
      start: (base + from) * MINUTE,
      end: (base + to) * MINUTE,
    });
    return slice(profile, base, base + from, base + to);
  }

  #reaching(resource: Resource, range: Interval): Known {
    const known = this.#known.get(resource);
    if (known && known.range.start <= range.start && range.end <= known.range.end) return known;
    const wide = {
      start: Math.min(known?.range.start ?? range.start, range.start) - AHEAD_DAYS * DAY,
      end: Math.max(known?.range.end ?? range.end, range.end) + AHEAD_DAYS * DAY,
    };
    const made = { profile: supplyOf(resource, this.#zone, 0, wide), range: wide };
    this.#known.set(resource, made);
    return made;
  }
}

/** Profiles of one level, by it. */
const level = new Map<number, Profile>();

function flat(free: number): Profile {
  let known = level.get(free);
  if (!known) level.set(free, (known = { at: [Number.NEGATIVE_INFINITY], free: [free] }));
  return known;
}

function slice(profile: Profile, base: number, from: number, to: number): Profile {
  const { at, free } = profile;
  const low = indexAt(profile, from);
  if (low + 1 === at.length || at[low + 1]! >= to) return flat(free[low]!);
  const part: Profile = { at: [Number.NEGATIVE_INFINITY], free: [free[low]!] };
  for (let i = low + 1; i < at.length && at[i]! < to; i += 1) {
    part.at.push(at[i]! - base);
    part.free.push(free[i]!);
  }
  return part;
}
