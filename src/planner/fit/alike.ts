import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Activity, Resource } from '../../model/index.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import { minutesDown, minutesUp, type Skeleton } from '../problem/skeleton.js';

/** One answer, and how far after a window's start it stands on what is there. */
interface Known<T> {
  readonly curfews: string;
  /** In milliseconds. */
  readonly until: number;
  readonly answer: T;
}

/** Answers of one list of work, each found again for every window that is alike as far as the answer looked. */
export class AlikeAnswers<T> {
  readonly #isMovable: boolean;
  readonly #isLoud: boolean;
  readonly #sections: ReadonlySet<string>;
  readonly #dated: readonly Activity[];
  readonly #resources: readonly Resource[];
  readonly #book: LedgerCache;
  readonly #most: number;
  readonly #known = new Map<string, Known<T>[]>();
  #count = 0;

  /** @param most Answers up to which all are kept. */
  constructor(
    { activities, groups, named, cures, hasOutside }: Skeleton,
    book: LedgerCache,
    most: number,
  ) {
    const heeds = groups.some(({ needs }) => (needs.heeds?.length ?? 0) > 0);
    this.#isMovable = cures === 0 && !hasOutside && !heeds;
    this.#isLoud = groups.some(({ needs }) => needs.loud);
    this.#sections = new Set(groups.flatMap(({ needs }) => needs.isolation));
    this.#dated = activities.filter(
      ({ notBefore, keyDate }) => notBefore !== undefined || keyDate !== undefined,
    );
    this.#resources = book.supplies.resources.filter(({ id }) => named.has(id));
    this.#book = book;
    this.#most = most;
  }

  /**
   * What movable work can see of a window and of so many minutes after it, curfews left aside: two windows of one text
   * that meet the same curfews give the same answer of time, minute for minute after their starts. `undefined` where the
   * answer hangs on the day itself: work outside the window, curing, time that the site closes, isolation with times of
   * its own.
   *
   * O(sections + activities with dates + resources asked for).
   */
  likenessOf(window: AccessWindow, beyond: number): string | undefined {
    if (!this.#isMovable) return undefined;
    if (window.isolation.some((section) => section.during !== undefined)) return undefined;

    const base = Math.floor(window.start / MINUTE);
    const last = minutesUp(window.end, base * MINUTE) + beyond;
    let text = `${window.start - base * MINUTE} ${(window.end - window.start) / MINUTE};`;
    for (const { section } of window.isolation)
      if (this.#sections.has(section)) text += `${section};`;
    for (const { notBefore, keyDate } of this.#dated) {
      // A date that has passed, or that lies past all that is tried, is like any other such date.
      if (notBefore !== undefined)
        text += `b${Math.min(Math.max(0, minutesUp(notBefore, base * MINUTE)), last + 1)}`;
      if (keyDate !== undefined)
        text += `d${Math.min(minutesDown(keyDate, base * MINUTE), last + 1)}`;
    }
    for (const resource of this.#resources) {
      const { at, free } = this.#book.supplies.part(resource, base, 0, last);
      text += at.length === 1 ? `;${free[0]!}` : `;${at.join()} ${free.join()}`;
    }
    return text;
  }

  of(window: AccessWindow, likeness: string): T | undefined {
    for (const { curfews, until, answer } of this.#known.get(likeness) ?? [])
      if (this.#met(window, until) === curfews) return answer;
    return undefined;
  }

  /** @param beyond Minutes after the window's end as far as the answer looked. */
  keep(window: AccessWindow, likeness: string, beyond: number, answer: T): void {
    if (this.#count >= this.#most) {
      this.#known.clear();
      this.#count = 0;
    }
    this.#count += 1;
    const until = window.end - window.start + beyond * MINUTE;
    const entry = { curfews: this.#met(window, until), until, answer };
    const known = this.#known.get(likeness);
    if (known) known.push(entry);
    else this.#known.set(likeness, [entry]);
  }

  #met(window: AccessWindow, until: number): string {
    return this.#book.usable.curfews.text(window, this.#isLoud, until);
  }
}
