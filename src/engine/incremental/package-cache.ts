import { packagesIn } from '../../planner/problem/packages-in.js';
import type { Activity } from '../../model/index.js';
import { packageOf } from '../packages.js';
import type { PackageSummary } from '../types.js';
import { reuseList } from './memo.js';

/** A package with all its activities in file order, and how many of its rows could not be read. */
export interface Packed {
  readonly id: string;
  readonly activities: readonly Activity[];
  readonly rowsLeftOut: number;
}

interface KnownPackage {
  readonly packed: Packed;
  readonly summary: PackageSummary;
}

/** The packages of plans that follow one another: each is the same object as before where its activities are. */
export class PackageMemory {
  #activities: readonly Activity[] = [];
  #leftOut: ReadonlyMap<string, number> | undefined;
  #known: readonly KnownPackage[] = [];
  packed: readonly Packed[] = [];
  summaries: readonly PackageSummary[] = [];

  /** Takes in the activities of a plan, and how many rows of each package could not be read. */
  take(activities: readonly Activity[], leftOut: ReadonlyMap<string, number>): void {
    if (activities === this.#activities && leftOut === this.#leftOut) return;
    const replaced =
      leftOut === this.#leftOut ? replacedIn(this.#activities, activities) : undefined;
    this.#known = replaced
      ? withReplaced(this.#known, replaced)
      : packagesOf(activities, leftOut, this.#known);
    this.#activities = activities;
    this.#leftOut = leftOut;
    this.packed = reuseList(
      this.packed,
      this.#known.map((item) => item.packed),
    );
    this.summaries = reuseList(
      this.summaries,
      this.#known.map((item) => item.summary),
    );
  }
}

function packagesOf(
  activities: readonly Activity[],
  leftOut: ReadonlyMap<string, number>,
  before: readonly KnownPackage[],
): readonly KnownPackage[] {
  const known = new Map(before.map((item) => [item.packed.id, item]));
  return [...packagesIn(activities)].map(([id, own]): KnownPackage => {
    const old = known.get(id);
    const list = reuseList(old?.packed.activities, own);
    const rows = leftOut.get(id) ?? 0;
    if (old?.packed.activities === list && old.packed.rowsLeftOut === rows) return old;
    return made(id, list, rows);
  });
}

/** What stands in the place of what, all of it in the same package; `undefined` where more than that has changed. */
function replacedIn(
  before: readonly Activity[],
  after: readonly Activity[],
): ReadonlyMap<Activity, Activity> | undefined {
  if (before.length !== after.length) return undefined;
  const replaced = new Map<Activity, Activity>();
  for (let at = 0; at < after.length; at += 1) {
    const [old, now] = [before[at]!, after[at]!];
    if (old === now) continue;
    if (old.package !== now.package || bindingOf(old) !== bindingOf(now)) return undefined;
    replaced.set(old, now);
  }
  return replaced;
}

/** What of an activity decides which work of other packages is bound to it. */
const bindingOf = ({ madeGoodBy, after, place }: Activity): string =>
  JSON.stringify([madeGoodBy, after, place]);

function withReplaced(
  known: readonly KnownPackage[],
  replaced: ReadonlyMap<Activity, Activity>,
): readonly KnownPackage[] {
  if (replaced.size === 0) return known;
  const touched = new Set([...replaced.values()].map((activity) => activity.package));
  return known.map((item) => {
    const { id, activities, rowsLeftOut } = item.packed;
    // The work of other packages that makes some of it good stands last.
    const isAlone = activities.at(-1)!.package === id;
    if (!touched.has(id) && (isAlone || !activities.some((each) => replaced.has(each))))
      return item;
    return made(
      id,
      activities.map((each) => replaced.get(each) ?? each),
      rowsLeftOut,
    );
  });
}

function made(id: string, activities: readonly Activity[], rowsLeftOut: number): KnownPackage {
  return {
    packed: { id, activities, rowsLeftOut },
    summary: packageOf(
      id,
      activities.filter((activity) => activity.package === id),
      rowsLeftOut,
    ),
  };
}
