// Names of lines and sections that work needs and no window has, and names that look like several in one.
import type { AccessWindow, Activity, NotePlace, PlanNote } from '../../model/index.js';
import { near } from './near.js';
import { sayNote } from '../note-sentences.js';
import { firstNames } from '../some-names.js';

/** The names in the cells of a column. */
export interface Names {
  readonly all: ReadonlySet<string>;
  /** Ids of those who give a name; gone through when it is asked, as few names are. */
  readonly idsOf: (name: string) => readonly string[];
}

/** One side's cells: where a name stands is a row of this column. */
export interface NamedCells {
  readonly place: (ids: readonly string[]) => NotePlace;
  readonly of: Names;
}

export type NameKind = 'lines' | 'isolation';

/**
 * Notes on names of one kind: each that work needs and no window has, and each that is written as several joined, of
 * which every part stands elsewhere by itself. Names are compared letter for letter. O(cells).
 */
export function unmetNames(kind: NameKind, windows: NamedCells, work: NamedCells): PlanNote[] {
  const [given, needed] = [windows.of, work.of];
  return [
    ...(given.all.size === 0 ? [] : missing(kind, given, needed, work)),
    ...joined(kind, given, needed, windows, work),
  ];
}

/** The lines of windows and of inside work, or the sections that windows make dead and that work needs dead. */
export function namesOf(kind: NameKind, things: readonly (AccessWindow | Activity)[]): Names {
  // Cells that say the same share one list.
  const lists = new Set<(AccessWindow | Activity)[NameKind]>();
  for (const thing of things) lists.add(thing[kind]);
  const all = new Set([...lists].flatMap((list) => list.map(sectionOf)));
  return {
    all,
    idsOf: (name) =>
      things
        .filter((thing) => thing[kind].some((each) => sectionOf(each) === name))
        .map(({ id }) => id),
  };
}

const sectionOf = (each: string | { readonly section: string }): string =>
  typeof each === 'string' ? each : each.section;

function missing(kind: NameKind, given: Names, needed: Names, work: NamedCells): PlanNote[] {
  return [...needed.all].flatMap((name): PlanNote[] => {
    if (given.all.has(name)) return [];
    const ids = needed.idsOf(name);
    return [
      {
        code: `${kind}-in-no-window`,
        ...sayNote(`${kind}-in-no-window`, {
          name: shown(name),
          one: ids.length === 1 ? ids[0] : undefined,
          count: ids.length,
          ...firstNames([...given.all]),
          near: near(name, given.all),
        }),
        count: ids.length,
        places: [work.place(ids)],
      },
    ];
  });
}

/** What people write between several names, beside the `;` that is read so. */
const joints = /[,&+/|]|\band\b/i;

function joined(
  kind: NameKind,
  given: Names,
  needed: Names,
  windows: NamedCells,
  work: NamedCells,
): PlanNote[] {
  const stands = (name: string): boolean => given.all.has(name) || needed.all.has(name);
  return [...new Set([...given.all, ...needed.all])].flatMap((name): PlanNote[] => {
    const parts = name.split(joints).map((part) => part.trim());
    if (parts.length < 2 || !parts.every(stands)) return [];
    const [ofWindows, ofWork] = [given.idsOf(name), needed.idsOf(name)];
    return [
      {
        code: `${kind}-joined`,
        ...sayNote(`${kind}-joined`, { name: shown(name), parts: parts.map(shown) }),
        count: ofWindows.length + ofWork.length,
        places: [
          ...(ofWindows.length > 0 ? [windows.place(ofWindows)] : []),
          ...(ofWork.length > 0 ? [work.place(ofWork)] : []),
        ],
      },
    ];
  });
}

const shown = (name: string): string => name.slice(0, 60);
