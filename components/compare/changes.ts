import type { Allocation, KeyDateForecast, Placement } from '../../src/engine/index.js';

/**
 * What became of one piece of work between two plans. `moved`: another window; `retimed`: the same window at another
 * time or with other units; `placed`, `dropped`: the activity had, or has, no place at all; `visit-more`, `visit-less`:
 * an activity that has places in both plans has one visit more or less.
 */
export type ChangeKind = 'moved' | 'retimed' | 'placed' | 'dropped' | 'visit-more' | 'visit-less';

export interface WorkChange {
  readonly kind: ChangeKind;
  readonly activity: string;
  readonly before: Placement | null;
  readonly after: Placement | null;
}

export interface Changes {
  /** In the order the earlier plan first names the activity, then that of the later plan. */
  readonly work: readonly WorkChange[];
  /** Placements that are the same in both plans, to the minute and the unit. */
  readonly unchanged: number;
}

/** One key date in both plans; null where a plan has none for the package. */
export interface DatePair {
  readonly package: string;
  readonly before: KeyDateForecast | null;
  readonly after: KeyDateForecast | null;
}

/**
 * How the work of two plans differs. Equal placements are set aside first; of what is left, visits to the same window
 * are paired, then the rest in time order.
 */
export function changesOf(before: Allocation, after: Allocation): Changes {
  const earlier = byActivity(before.placements);
  const later = byActivity(after.placements);
  const work: WorkChange[] = [];
  let unchanged = 0;
  for (const activity of new Set([...earlier.keys(), ...later.keys()])) {
    const old = earlier.get(activity) ?? [];
    const now = later.get(activity) ?? [];
    const same = takePairs(old, now, equal);
    unchanged += same.pairs.length;
    const inWindow = takePairs(same.old, same.now, (a, b) => a.window === b.window);
    const rest = takePairs(inWindow.old, inWindow.now, () => true);
    const found: WorkChange[] = [
      ...inWindow.pairs.map(([a, b]) => change('retimed', a, b)),
      ...rest.pairs.map(([a, b]) => change('moved', a, b)),
      ...rest.old.map((placement) =>
        change(now.length === 0 ? 'dropped' : 'visit-less', placement, null),
      ),
      ...rest.now.map((placement) =>
        change(old.length === 0 ? 'placed' : 'visit-more', null, placement),
      ),
    ];
    work.push(...found.sort((a, b) => startOf(a) - startOf(b)));
  }
  return { work, unchanged };

  function change(kind: ChangeKind, a: Placement | null, b: Placement | null): WorkChange {
    return { kind, activity: (a ?? b)!.activity, before: a, after: b };
  }
}

/** Key dates of both plans, matched by package. */
export function datePairs(before: Allocation, after: Allocation): DatePair[] {
  const names = new Set([...before.keyDates, ...after.keyDates].map((date) => date.package));
  return [...names].map((name) => ({
    package: name,
    before: before.keyDates.find((date) => date.package === name) ?? null,
    after: after.keyDates.find((date) => date.package === name) ?? null,
  }));
}

function byActivity(placements: readonly Placement[]): Map<string, Placement[]> {
  const found = new Map<string, Placement[]>();
  for (const placement of placements)
    found.set(placement.activity, [...(found.get(placement.activity) ?? []), placement]);
  for (const list of found.values()) list.sort((a, b) => a.from - b.from || a.to - b.to);
  return found;
}

function equal(a: Placement, b: Placement): boolean {
  return a.window === b.window && a.from === b.from && a.to === b.to && a.units === b.units;
}

/** Pairs each old placement with the first free new one that suits; what finds no partner is left. */
function takePairs(
  old: readonly Placement[],
  now: readonly Placement[],
  suits: (a: Placement, b: Placement) => boolean,
) {
  const free = [...now];
  const pairs: [Placement, Placement][] = [];
  const left: Placement[] = [];
  for (const placement of old) {
    const at = free.findIndex((other) => suits(placement, other));
    const [partner] = at < 0 ? [] : free.splice(at, 1);
    if (partner) pairs.push([placement, partner]);
    else left.push(placement);
  }
  return { pairs, old: left, now: free };
}

function startOf(change: WorkChange): number {
  return (change.before ?? change.after)!.from;
}
