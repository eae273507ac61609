import type { Interval, IntervalSet } from '../../calendar/index.js';
import type { AccessWindow, Curfew, PlanRules } from '../../model/index.js';
import { barsWork, curfewStretches } from '../../rules/index.js';

/** What was looked up of one window: how far after its start, and by curfew what lies there. */
interface Seen {
  readonly until: number;
  readonly stretches: readonly IntervalSet[];
}

/** The curfews of a rule set as windows and later ends of them meet them, each looked up in the calendar once. */
export class CurfewCache {
  readonly #all: readonly Curfew[];
  readonly #loud: WeakMap<AccessWindow, Seen> = new WeakMap();
  readonly #quiet: WeakMap<AccessWindow, Seen> = new WeakMap();

  constructor({ curfews }: Pick<PlanRules, 'curfews'>) {
    this.#all = curfews;
  }

  /** Stretches that bar work from a window's start until so many milliseconds later, or beyond. They may overlap. */
  stretches(window: AccessWindow, loud: boolean, until: number): readonly Interval[] {
    if (!this.#bears(loud)) return none;
    return this.#seen(window, loud, until).stretches.flat();
  }

  /** The same as a text in milliseconds after the start, curfew by curfew: equal where the stretches are. */
  text(window: AccessWindow, loud: boolean, until: number): string {
    if (!this.#bears(loud)) return '';
    let text = '';
    for (const stretches of this.#seen(window, loud, until).stretches) {
      for (const stretch of stretches) {
        const start = stretch.start - window.start;
        if (start >= until) break;
        text += `${start}-${Math.min(stretch.end - window.start, until)},`;
      }
      text += '/';
    }
    return text;
  }

  #bears(loud: boolean): boolean {
    return this.#all.some((item) => barsWork(item, loud));
  }

  #seen(window: AccessWindow, loud: boolean, until: number): Seen {
    const kept = loud ? this.#loud : this.#quiet;
    let seen = kept.get(window);
    if (!seen || seen.until < until) {
      const range = { start: window.start, end: window.start + until };
      const stretches = this.#all
        .filter((item) => barsWork(item, loud))
        .map((item) => curfewStretches(item, range, window.zone));
      kept.set(window, (seen = { until, stretches }));
    }
    return seen;
  }
}

const none: readonly Interval[] = [];
