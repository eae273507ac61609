import { sameItems } from '../edits/index.js';
import type { Activity, MadeGoodBy, TableKind, TableText } from '../model/index.js';
import type { LinkContext } from './links/link-context.js';
import { checkLinks, type LinkedActivities } from './links/links.js';
import { RowCache, sameIn } from './kinds/row-cache.js';
import { newReading, takeReading, type WorkReading } from './kinds/work-reading.js';
import { tableOf, type Table, type TableRow } from './text/table.js';
import type { WindowRow } from './kinds/windows.js';

interface Kept {
  readonly from: readonly unknown[];
  readonly made: unknown;
}

interface Links {
  readonly activities: readonly Activity[];
  readonly context: LinkContext;
  /** What was said, to say again of the rows as they lie now. */
  readonly said: readonly Parameters<LinkContext['say']>[];
  readonly out: ReadonlySet<string>;
}

/**
 * What came of reading a document, so that the next one is read only where it differs. Both must share what is equal
 * in them: rows, tables and parts are told apart by being the same object, never by looking into them.
 */
export class PlanCache {
  readonly windows = new RowCache<WindowRow>();
  #work = newReading();
  readonly #kept = new Map<string, Kept>();
  readonly #lists = new Map<string, readonly unknown[]>();
  readonly #rows = new Map<TableKind, readonly TableRow[]>();
  #links: Links | undefined;

  get work(): WorkReading {
    return this.#work;
  }

  /** Goes on from what an import made of the rows of a table of work. */
  goOnFrom(text: TableText): void {
    this.#work = takeReading(text) ?? this.#work;
  }

  /** What was made of the same things before, else what `make` makes of them. */
  of<T>(name: string, from: readonly unknown[], make: () => T): T {
    const kept = this.#kept.get(name);
    if (kept && sameItems(kept.from, from)) return kept.made as T;
    const made = make();
    this.#kept.set(name, { from, made });
    return made;
  }

  table(kind: TableKind, text: TableText): Table {
    return this.of(`table ${kind}`, [text], () => {
      const table = tableOf(text, this.#rows.get(kind));
      this.#rows.set(kind, table.rows);
      return table;
    });
  }

  /** The list as it was before, where it holds the same things or such as are `alike`. */
  list<T>(name: string, list: readonly T[], alike?: (item: T, other: T) => boolean): readonly T[] {
    const before = this.#lists.get(name) as readonly T[] | undefined;
    if (before && sameItems(before, list, alike)) return before;
    this.#lists.set(name, list);
    return list;
  }

  /** The rows of a table as they were before, where the cells of some columns are the same on the same lines. */
  cells(name: string, { rows }: Table, columns: readonly number[]): readonly TableRow[] {
    return this.list(
      `cells of ${name}: ${columns.join()}`,
      rows,
      (row, other) => row.line === other.line && sameIn(columns, row, other),
    );
  }

  /** As `checkLinks`, without looking again where nothing that it looks at has changed. */
  links(activities: readonly Activity[], context: LinkContext): LinkedActivities {
    const before = this.#links;
    if (
      before &&
      sameContext(before.context, context) &&
      sameLinks(before.activities, activities)
    ) {
      this.#links = { ...before, activities, context };
      return {
        activities:
          before.out.size === 0
            ? activities
            : activities.filter((activity) => !before.out.has(activity.id)),
        faults: before.said.map((item) => context.say(...item)),
      };
    }
    const said: Parameters<LinkContext['say']>[] = [];
    const found = checkLinks(activities, {
      ...context,
      say(...item) {
        said.push(item);
        return context.say(...item);
      },
    });
    const out = new Set<string>();
    if (found.activities.length < activities.length) {
      const kept = new Set(found.activities);
      for (const activity of activities) if (!kept.has(activity)) out.add(activity.id);
    }
    this.#links = { activities, context, said, out };
    return out.size === 0 ? { activities, faults: found.faults } : found;
  }
}

function sameContext(a: LinkContext, b: LinkContext): boolean {
  return (
    a.curing === b.curing &&
    sameItems(
      a.windows,
      b.windows,
      (window, other) => window.id === other.id && window.status === other.status,
    ) &&
    sameNames(a.windowRows, b.windowRows) &&
    sameNames(a.activityRows, b.activityRows) &&
    (a.resources === b.resources ||
      (a.resources !== undefined &&
        b.resources !== undefined &&
        sameItems(a.resources, b.resources, (resource, other) => resource.id === other.id)))
  );
}

function sameLinks(a: readonly Activity[], b: readonly Activity[]): boolean {
  return sameItems(
    a,
    b,
    (activity, other) =>
      activity.id === other.id &&
      activity.window === other.window &&
      activity.place === other.place &&
      sameMadeGood(activity.madeGoodBy, other.madeGoodBy) &&
      sameItems(
        activity.after,
        other.after,
        (link, also) =>
          link.activity === also.activity && link.from === also.from && link.cured === also.cured,
      ) &&
      sameItems(
        activity.resources,
        other.resources,
        (need, also) => need.resource === also.resource,
      ),
  );
}

function sameMadeGood(a: MadeGoodBy | undefined, b: MadeGoodBy | undefined): boolean {
  if (a === b) return true;
  return Array.isArray(a) && Array.isArray(b) && sameItems<string>(a, b);
}

function sameNames(a: ReadonlyMap<string, number>, b: ReadonlyMap<string, number>): boolean {
  if (a === b) return true;
  if (a.size !== b.size) return false;
  // In the same order too: what is said of a name like another names the first of them.
  const names = b.keys();
  for (const name of a.keys()) if (name !== names.next().value) return false;
  return true;
}
