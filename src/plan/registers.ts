// The values of a plan, each under its address. Everybody writes under a key of their own and takes away what they
// saw there, so that two entries at one address were written without knowing of each other: the later stands, and the
// other is still there to be shown.
import type * as Y from 'yjs';
import type { TableText } from '../model/index.js';
import { splitAddress } from './address.js';
import { packed, unpacked } from './table-base.js';

/** A value somebody set. */
export interface Entry {
  readonly key: string;
  readonly address: string;
  readonly value: unknown;
  /** By the clock of whoever wrote it, epoch ms. */
  readonly at: number;
  /** Who wrote it, in their own words; empty: not said. */
  readonly by: string;
  /** Of a whole part or table: the id under which its fields, cells and items stand. */
  readonly holder?: string;
}

/** Longest name of a person that is kept, in characters. */
export const longestName = 100;
const noEntries: readonly Entry[] = [];
const noGroup: ReadonlyMap<string, readonly Entry[]> = new Map();

export class Registers {
  readonly #map: Y.Map<unknown>;
  readonly #groups = new Map<string, Map<string, Entry[]>>();
  /** Addresses with more than one entry. */
  readonly #disputed = new Set<string>();

  constructor(map: Y.Map<unknown>) {
    this.#map = map;
    for (const key of map.keys()) this.read(key);
  }

  /** Addresses at which two people wrote without knowing of each other. */
  get disputed(): ReadonlySet<string> {
    return this.#disputed;
  }

  /** All values under one group, by name, each list with the one that stands first. */
  group(group: string): ReadonlyMap<string, readonly Entry[]> {
    return this.#groups.get(group) ?? noGroup;
  }

  groups(): IterableIterator<string> {
    return this.#groups.keys();
  }

  entries(address: string): readonly Entry[] {
    const { group, name } = splitAddress(address);
    return this.#groups.get(group)?.get(name) ?? noEntries;
  }

  /** The entry that stands; undefined where there is none. */
  standing(address: string): Entry | undefined {
    return this.entries(address)[0];
  }

  /** Looks again at a key of the map. Returns its address; undefined where the key is none of ours. */
  read(key: string): string | undefined {
    const cut = key.lastIndexOf('|');
    if (cut < 0) return undefined;
    const address = key.slice(0, cut);
    const { group, name } = splitAddress(address);
    const inGroup = this.#groups.get(group) ?? new Map<string, Entry[]>();
    const others = (inGroup.get(name) ?? []).filter((item) => item.key !== key);
    const entry = entryOf(key, address, this.#map.get(key));
    const now = entry ? [...others, entry].sort(laterFirst) : others;
    if (now.length > 0) {
      inGroup.set(name, now);
      this.#groups.set(group, inGroup);
    } else {
      inGroup.delete(name);
      if (inGroup.size === 0) this.#groups.delete(group);
    }
    if (now.length > 1) this.#disputed.add(address);
    else this.#disputed.delete(address);
    return address;
  }

  /** Sets a value, in place of all that stands at its address. Inside a transaction of the doc. */
  set(address: string, value: unknown, said: Said, holder?: string): void {
    const held = this.entries(address);
    const own = `${address}|${this.#map.doc!.clientID.toString(36)}`;
    for (const { key } of held) if (key !== own) this.#map.delete(key);
    // Whatever the clocks say, what was written in sight of another value is later than it.
    const at = Math.max(said.at, ...held.map((entry) => entry.at + 1));
    const written = address.startsWith('t/') && value ? packed(value as TableText) : value;
    this.#map.set(
      own,
      holder === undefined ? [written, at, said.by] : [written, at, said.by, holder],
    );
    for (const { key } of held) this.read(key);
    this.read(own);
  }

  /** Takes away every entry of an address. */
  clear(address: string): void {
    for (const { key } of [...this.entries(address)]) this.take(key);
  }

  clearGroup(group: string): void {
    for (const entries of [...this.group(group).values()])
      for (const { key } of [...entries]) this.take(key);
  }

  /** Takes one entry away. */
  take(key: string): void {
    this.#map.delete(key);
    this.read(key);
  }
}

/** Who writes, and when. */
export interface Said {
  readonly by: string;
  readonly at: number;
}

function laterFirst(a: Entry, b: Entry): number {
  return b.at - a.at || (a.key < b.key ? 1 : -1);
}

/** The entry that a key holds; undefined where it is not formed as one. */
function entryOf(key: string, address: string, held: unknown): Entry | undefined {
  if (!Array.isArray(held) || held.length < 3 || held.length > 4) return undefined;
  const [written, at, by, holder] = held as unknown[];
  if (typeof at !== 'number' || !Number.isFinite(at)) return undefined;
  if (typeof by !== 'string' || by.length > longestName) return undefined;
  if (holder !== undefined && (typeof holder !== 'string' || !/^[0-9a-z]{1,30}$/.test(holder)))
    return undefined;
  const value = address.startsWith('t/') ? unpacked(written) : written;
  // A cell holds text and nothing else.
  if (address.startsWith('c/') && typeof value !== 'string') return undefined;
  return { key, address, value, at, by, ...(holder !== undefined && { holder }) };
}
