import { boundsOf, type Activity } from '../../model/index.js';

/** Tasks bound to one window by what makes the line good: all of them are done in it, or none. */
export interface Block {
  /** Tasks of which every unit lies in the block's window. */
  readonly members: readonly number[];
  /** Repeated tasks of which only the window of the last unit is the block's. */
  readonly runners: readonly number[];
}

/** Blocks that a list of tasks cannot tell apart, with what lies between them: placed at one go or not at all. */
export interface Cluster {
  readonly blocks: readonly number[];
  /** In an order in which what is waited for comes first. */
  readonly tasks: readonly number[];
}

/** What a task is to the block it is part of. */
export interface Role {
  readonly block: number;
  readonly lastOnly?: true;
}

export function rolesOf(blocks: readonly Block[]): ReadonlyMap<number, Role> {
  const roles = new Map<number, Role>();
  blocks.forEach(({ members, runners }, block) => {
    for (const task of members) roles.set(task, { block });
    for (const task of runners) roles.set(task, { block, lastOnly: true });
  });
  return roles;
}

/** An implied link: what makes good and waits for it by no chain starts once it has finished. */
export interface ImpliedLink {
  readonly from: number;
  readonly to: number;
}

/** The links that bounds add. `indexOf`: place of each activity that has something left. */
export function impliedLinks(
  all: readonly Activity[],
  indexOf: ReadonlyMap<string, number>,
): ImpliedLink[] {
  return boundsOf(all).flatMap(({ activity, unlinked }) => {
    const from = indexOf.get(activity);
    return from === undefined
      ? []
      : unlinked.flatMap((id) => {
          const to = indexOf.get(id);
          return to === undefined ? [] : [{ from, to }];
        });
  });
}

/** The blocks of some activities: bounds that share a member are one. O(n + links) for each bound. */
export function blocksOf(
  all: readonly Activity[],
  indexOf: ReadonlyMap<string, number>,
): readonly Block[] {
  const bounds = boundsOf(all).flatMap(({ activity, members }) => {
    const opener = indexOf.get(activity);
    const own = members.flatMap((id) => indexOf.get(id) ?? []);
    // Of an opener that was done before, what makes it good is still bound together: until all of it is finished, nobody
    // says that the line is fit.
    return own.length === 0 ? [] : [{ opener: opener ?? own[0]!, own }];
  });
  if (bounds.length === 0) return [];
  const bound = new Set(bounds.flatMap(({ own }) => own));
  const root = new Map<number, number>();
  const find = (index: number): number => {
    const up = root.get(index) ?? index;
    return up === index ? index : find(up);
  };
  for (const { opener, own } of bounds)
    for (const member of own) root.set(find(member), find(opener));
  const tasks = new Set(bounds.flatMap(({ opener, own }) => [opener, ...own]));
  const blocks = new Map<number, { members: number[]; runners: number[] }>();
  const repeated = new Set(
    all.flatMap(({ id, work }) => (work.kind === 'units' ? (indexOf.get(id) ?? []) : [])),
  );
  for (const task of [...tasks].sort((a, b) => a - b)) {
    const at = find(task);
    let block = blocks.get(at);
    if (!block) blocks.set(at, (block = { members: [], runners: [] }));
    if (repeated.has(task) && !bound.has(task)) block.runners.push(task);
    else block.members.push(task);
  }
  return [...blocks.values()];
}

/**
 * The clusters of some blocks: with every block thought one step, the steps that wait for one another in a ring.
 *
 * @param after Followers of each task.
 * @param order Tasks in an order in which what is waited for comes first.
 */
export function clustersOf(
  blocks: readonly Block[],
  after: readonly (readonly { readonly task: number }[])[],
  order: readonly number[],
): readonly Cluster[] {
  if (blocks.length === 0) return [];
  // Nodes: a block stands for its tasks, every other task for itself.
  const nodeOf = after.map((_, task) => blocks.length + task);
  blocks.forEach(({ members, runners }, at) => {
    for (const task of [...members, ...runners]) nodeOf[task] = at;
  });
  const followers: Set<number>[] = Array.from(
    { length: blocks.length + after.length },
    () => new Set<number>(),
  );
  after.forEach((ties, task) => {
    for (const tie of ties) {
      const [from, to] = [nodeOf[task]!, nodeOf[tie.task]!];
      if (from !== to) followers[from]!.add(to);
    }
  });
  const ringOf = ringsOf(followers);
  const byRing = new Map<number, { blocks: number[]; tasks: number[] }>();
  blocks.forEach((_, at) => {
    const known = byRing.get(ringOf[at]!);
    if (known) known.blocks.push(at);
    else byRing.set(ringOf[at]!, { blocks: [at], tasks: [] });
  });
  for (const task of order) byRing.get(ringOf[nodeOf[task]!]!)?.tasks.push(task);
  return [...byRing.values()];
}

/** A number for each node, the same for those that reach one another. */
function ringsOf(followers: readonly ReadonlySet<number>[]): number[] {
  const ring = followers.map(() => -1);
  const low = followers.map(() => 0);
  const met = followers.map(() => 0);
  const path: number[] = [];
  const open: boolean[] = followers.map(() => false);
  let clock = 0;
  const begin = (node: number): { node: number; rest: number[] } => {
    clock += 1;
    met[node] = clock;
    low[node] = clock;
    path.push(node);
    open[node] = true;
    return { node, rest: [...followers[node]!] };
  };
  for (let first = 0; first < followers.length; first += 1) {
    if (met[first] !== 0) continue;
    const stack = [begin(first)];
    while (stack.length > 0) {
      const { node, rest } = stack.at(-1)!;
      const next = rest.pop();
      if (next !== undefined) {
        if (met[next] === 0) stack.push(begin(next));
        else if (open[next]) low[node] = Math.min(low[node]!, met[next]!);
        continue;
      }
      stack.pop();
      const above = stack.at(-1);
      if (above) low[above.node] = Math.min(low[above.node]!, low[node]!);
      if (low[node] !== met[node]) continue;
      for (let each = path.pop()!; ; each = path.pop()!) {
        open[each] = false;
        ring[each] = node;
        if (each === node) break;
      }
    }
  }
  return ring;
}
