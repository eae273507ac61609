import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Needs, PlanRules } from '../../model/index.js';
import { minutesAfterWork, usableTime } from '../../rules/index.js';
import { CurfewCache } from './curfew-cache.js';
import type { Slot } from './problem.js';
import { minutesDown, minutesUp } from './skeleton.js';

/** Stretches of usable time of a window in whole minutes after its own start. */
export interface Usable {
  readonly slots: readonly Slot[];
  /** Whether the window takes no such work at all. */
  readonly barred: boolean;
  /** Equal where slots and `barred` are, under one rule set: such windows are alike to such work. */
  readonly shape: number;
}

/** Answers up to which windows that are alike share theirs, so that edits without end do not fill the memory. */
const MOST_SHARED = 50_000;
/** Needs kept of one window, and lengths of it for each. */
const MOST_OWN = 16;

/**
 * Usable time of windows under one rule set, also of windows made longer by whole minutes. Worked out once for all
 * windows of one length that meet the same curfews.
 */
export class UsableTimes {
  readonly curfews: CurfewCache;
  readonly #rules: PlanRules;
  /** By needs, then by how much longer the window is thought. */
  readonly #own = new WeakMap<AccessWindow, Map<string, Map<number, Usable>>>();
  readonly #tails = new Map<string, number>();
  readonly #shared = new Map<string, Usable>();
  readonly #alike = new Map<string, Usable>();
  #shapes = 0;

  constructor(rules: PlanRules) {
    this.#rules = rules;
    this.curfews = new CurfewCache(rules);
  }

  of(window: AccessWindow, needs: Needs, longerBy: number): Usable {
    const key = keyOf(needs);
    let byNeeds = this.#own.get(window);
    if (!byNeeds) this.#own.set(window, (byNeeds = new Map()));
    let own = byNeeds.get(key);
    if (!own) {
      if (byNeeds.size >= MOST_OWN) byNeeds.clear();
      byNeeds.set(key, (own = new Map()));
    }
    let known = own.get(longerBy);
    if (!known) {
      if (own.size >= MOST_OWN) own.clear();
      known =
        longerBy > 0 && isMovable(window, needs)
          ? this.#sharedOf(window, needs, longerBy, key)
          : this.#workOut(window, needs, longerBy);
      own.set(longerBy, known);
    }
    return known;
  }

  /** Minutes before a window's end by which such work must be clear of it, where no isolation ends sooner. */
  tail(needs: Needs): number {
    const key = keyOf(needs);
    let known = this.#tails.get(key);
    if (known === undefined) this.#tails.set(key, (known = minutesAfterWork(needs, this.#rules)));
    return known;
  }

  #sharedOf(window: AccessWindow, needs: Needs, longerBy: number, needsKey: string): Usable {
    const length = window.end + longerBy * MINUTE - window.start;
    const booked = window.isolation.map((section) => section.section).join('\u0000');
    const met = this.curfews.text(window, needs.loud, length);
    const key = `${window.start % MINUTE} ${length} ${window.status === 'withdrawn'}${needsKey}\u0001${booked}\u0001${met}`;
    let known = this.#shared.get(key);
    if (!known) {
      if (this.#shared.size >= MOST_SHARED) this.#shared.clear();
      this.#shared.set(key, (known = this.#workOut(window, needs, longerBy)));
    }
    return known;
  }

  #workOut(window: AccessWindow, needs: Needs, longerBy: number): Usable {
    const longer = longerBy === 0 ? window : { ...window, end: window.end + longerBy * MINUTE };
    const length = longer.end - longer.start;
    const curfews = this.curfews.stretches(window, needs.loud, length);
    const base = Math.floor(window.start / MINUTE) * MINUTE;
    const slots = usableTime(longer, needs, this.#rules, curfews)
      .map((interval) => ({
        window: 0,
        start: minutesUp(interval.start, base),
        end: minutesDown(interval.end, base),
      }))
      .filter((slot) => slot.end > slot.start);
    const barred =
      window.status === 'withdrawn' ||
      needs.isolation.some((id) => !window.isolation.some(({ section }) => section === id));
    const text = `${barred ? 'barred' : ''}${slots.map((slot) => `${slot.start}-${slot.end}`).join()}`;
    let known = this.#alike.get(text);
    if (!known) {
      if (this.#alike.size >= MOST_SHARED) this.#alike.clear();
      this.#alike.set(text, (known = { slots, barred, shape: (this.#shapes += 1) }));
    }
    return known;
  }
}

/** Whether nothing hangs on the day itself: no isolation with times of its own, no time that the site closes. */
function isMovable({ isolation }: AccessWindow, { heeds }: Needs): boolean {
  return (heeds?.length ?? 0) === 0 && isolation.every((section) => section.during === undefined);
}

const keys = new WeakMap<Needs, string>();

/** As `needsKey`, but worked out once. Needs must not change. */
export function keyOf(needs: Needs): string {
  let key = keys.get(needs);
  if (key === undefined) keys.set(needs, (key = keyMade(needs)));
  return key;
}

function keyMade({ isolation, loud, heeds = [] }: Needs): string {
  const plain = isolation.length < 2 && heeds.length < 2;
  return plain
    ? `${loud ? '!' : ' '}${isolation[0] ?? ''}\u0000${heeds[0] ?? ''}`
    : `${loud ? '!' : ' '}${JSON.stringify([isolation.toSorted(), heeds.toSorted()])}`;
}
