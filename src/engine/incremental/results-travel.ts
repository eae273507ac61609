import { MadeOf } from '../../edits/index.js';
import { ordinaryNeeds, type AccessWindow, type PlanRules } from '../../model/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Ledger } from '../../rules/types.js';
import type { PackageSummary, Results } from '../types.js';
import { Receiver, Sender, type Sent } from './chain.js';
import { FitMemory, statesOf, type Packed } from './fit-memory.js';
import { KeptBy } from './kept-by.js';

/**
 * Results as they travel to another thread: of ledgers and verdicts only the numbers that are asked for at once. The
 * rest is worked out there, by the same functions, where it is read.
 */
interface Travelling extends Omit<Results, 'ledgers' | 'fits'> {
  /** Gross, usable and missing minutes of each ledger, in turn. */
  readonly minutes: Int32Array;
  /** Of every pair, by packages, then windows. */
  readonly states: Int32Array;
}

const none = new Int32Array(0);
const noFits: Results['fits'] = [];

/** The end at which results are worked out. */
export class ResultsSender {
  readonly #sender = new Sender<Travelling>();
  readonly #minutes = new KeptBy<Int32Array>();

  /** An outline has no verdicts yet: the far end keeps those it has for the results that follow. */
  next(results: Results, isOutline: boolean): Sent {
    const { ledgers, fits, ...rest } = results;
    return this.#sender.next({
      ...rest,
      minutes: this.#minutes.of([ledgers], () =>
        Int32Array.from(
          ledgers.flatMap((one) => [one.grossMinutes, one.usableMinutes, one.shortfallMinutes]),
        ),
      ),
      states: isOutline ? (this.#sender.last?.states ?? none) : statesOf(fits),
    });
  }

  forget(): void {
    this.#sender.forget();
  }
}

/** The end at which results are read. What has not changed since the last that came is the same object. */
export class ResultsReceiver {
  readonly #receiver = new Receiver<Travelling>();
  readonly #ledgers = new MadeOf<AccessWindow, Ledger>();
  readonly #packed = new WeakMap<PackageSummary, Packed>();
  readonly #fits = new FitMemory();

  /** `undefined` where results that these build on never came. */
  take(sent: Sent, isOutline: boolean): Results | undefined {
    const got = this.#receiver.take(sent);
    if (!got) return undefined;
    const { minutes, states, ...rest } = got;
    const { windows, rules } = rest.plan;
    const ledgers = this.#ledgers.of(
      rules,
      windows,
      (at, before) =>
        before ?? ledgerToldBy(minutes.subarray(3 * at, 3 * at + 3), windows[at]!, rules),
    );
    const fits =
      isOutline || states.length === 0
        ? noFits
        : this.#fits.of(rest.plan, this.#packagesOf(rest), states);
    return { ...rest, ledgers, fits };
  }

  #packagesOf({ plan, packages }: Pick<Results, 'plan' | 'packages'>): readonly Packed[] {
    // A summary is the same object as long as its activities are.
    if (packages.some((one) => !this.#packed.has(one))) {
      const activities = new Map(plan.activities.map((one) => [one.id, one]));
      for (const one of packages)
        if (!this.#packed.has(one))
          this.#packed.set(one, {
            id: one.id,
            activities: one.activities.map((id) => activities.get(id)!),
            rowsLeftOut: one.rowsLeftOut,
          });
    }
    return packages.map((one) => this.#packed.get(one)!);
  }
}

/** A ledger of which the totals are known. Its entries are those of `ledgerOf`, and as plain. */
function ledgerToldBy(
  [grossMinutes, usableMinutes, shortfallMinutes]: Int32Array,
  window: AccessWindow,
  rules: PlanRules,
): Ledger {
  let whole: Ledger | undefined;
  const read = (): Ledger => (whole ??= ledgerOf(window, ordinaryNeeds, rules));
  return {
    window: window.id,
    needs: ordinaryNeeds,
    grossMinutes: grossMinutes!,
    usableMinutes: usableMinutes!,
    get rows() {
      return read().rows;
    },
    get usable() {
      return read().usable;
    },
    shortfallMinutes: shortfallMinutes!,
    get barred() {
      return read().barred;
    },
  };
}
