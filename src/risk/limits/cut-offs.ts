import { addMinutes, minutesBetween, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Commitment } from '../../model/index.js';
import type { ChanceLimit, NodeGroup } from './chance-limits.js';
import type { HandbackNetwork } from '../handback-network/handback-network.js';
import type { NodeMeaning } from '../handback-network/network-builder.js';
import type { LatestTimes } from './latest-times.js';
import { forwardPass, type NodeTimes, type RiskNode } from '../kernel/network.js';
import type { CutOff, DecisionPoint } from '../types.js';

export type NodeState = CutOff['state'];

/** Steps and activities with the indices of their nodes, in the order in which they first appear. */
export function groupsOf(meanings: readonly NodeMeaning[]): ReadonlyMap<string, NodeGroup> {
  const groups = new Map<string, [number, ...number[]]>();
  meanings.forEach((meaning, index) => {
    // No step that anybody does: it stands for what may delay the handback.
    if (meaning.part === 'handed-back') return;
    const key = JSON.stringify([meaning.kind, meaning.activity ?? meaning.name]);
    const group = groups.get(key);
    if (group) group.push(index);
    else groups.set(key, [index]);
  });
  return groups;
}

/** Where every node lies when each takes its most likely minutes and no visit starts before it was placed. */
export function plannedTimes(built: HandbackNetwork, window: AccessWindow): readonly NodeTimes[] {
  const nodes: readonly RiskNode[] = built.network.nodes.map((node, index) => {
    const at = built.meanings[index]!.plannedStart;
    if (at === undefined) return node;
    const placed = minutesBetween(window.start, at);
    return { ...node, releaseMinutes: Math.max(node.releaseMinutes ?? 0, placed) };
  });
  return forwardPass(nodes, (index) => built.meanings[index]!.minutes);
}

/** Of several copies of a step of the lead-out, the last: it is over when it has been done for all work. */
function lastCopy(group: readonly number[], planned: readonly NodeTimes[]): number {
  return group.reduce((last, index) =>
    planned[index]!.start > planned[last]!.start ? index : last,
  );
}

/** The nodes of a group that its cut-off looks at, and those of them by which it must have begun. */
function boundBy(
  { meanings }: HandbackNetwork,
  all: NodeGroup,
  planned: readonly NodeTimes[],
): { readonly group: NodeGroup; readonly first: NodeGroup } {
  const { kind, activity } = meanings[all[0]]!;
  const group: NodeGroup = kind === 'lead-out' ? [lastCopy(all, planned)] : all;
  // A step seen by several kinds of work is one step: all its nodes bind. An activity starts with its first node.
  return { group, first: activity === undefined ? group : [group[0]] };
}

/** For each cut-off, the nodes whose latest start it tells. */
export function startNodes(built: HandbackNetwork, window: AccessWindow): readonly NodeGroup[] {
  const planned = plannedTimes(built, window);
  return [...groupsOf(built.meanings).values()].map((all) => boundBy(built, all, planned).first);
}

/**
 * By when each step and activity must start and finish, to keep the required margin and to be on time at all, in order
 * of their planned start, the lead-out after all else.
 */
export function cutOffsOf(
  built: HandbackNetwork,
  window: AccessWindow,
  { keeping, onTime }: LatestTimes,
  states: readonly NodeState[],
  chance?: ReadonlyMap<number, ChanceLimit>,
): readonly CutOff[] {
  const { meanings } = built;
  const planned = plannedTimes(built, window);
  const at = (value: number): Instant => addMinutes(window.start, value);
  return [...groupsOf(meanings).values()]
    .map((all): CutOff => {
      const { kind, name, activity } = meanings[all[0]]!;
      const { group, first }: { readonly group: readonly number[]; readonly first: NodeGroup } =
        boundBy(built, all, planned);
      const least = (times: readonly NodeTimes[], edge: 'start' | 'finish', of = group): number =>
        Math.min(...of.map((index) => times[index]![edge]));
      // An activity ends with its last node.
      const last = activity === undefined ? group : group.slice(-1);
      const plannedStart = least(planned, 'start');
      const latestStart = least(keeping, 'start', first);
      const limit = chance?.get(first[0]);
      const done = all.every((index) => states[index] === 'done');
      const begun = all.some((index) => states[index] !== 'to-come');
      return {
        kind,
        name,
        ...(activity !== undefined && { activity }),
        plannedStart: at(plannedStart),
        plannedFinish: at(Math.max(...group.map((index) => planned[index]!.finish))),
        latestStart: at(latestStart),
        latestFinish: at(least(keeping, 'finish', last)),
        onTimeStart: at(least(onTime, 'start', first)),
        onTimeFinish: at(least(onTime, 'finish', last)),
        chanceStart: limit ? at(Math.floor(limit.start)) : null,
        chanceErrorMinutes: limit ? limit.errorMinutes : null,
        slackMinutes: latestStart - plannedStart,
        state: done ? 'done' : begun ? 'begun' : 'to-come',
      };
    })
    .sort(
      (a, b) =>
        Number(a.kind === 'lead-out') - Number(b.kind === 'lead-out') ||
        a.plannedStart - b.plannedStart ||
        a.plannedFinish - b.plannedFinish,
    );
}

/**
 * Points of no return and latest times to abandon, read off the same pass as the cut-offs: none is ever later than
 * what must follow allows.
 */
export function decisionsOf(
  built: HandbackNetwork,
  window: AccessWindow,
  { keeping, abandonBy }: LatestTimes,
  commitments: readonly Commitment[],
): readonly DecisionPoint[] {
  return commitments.flatMap(({ activity, irreversible }) => {
    const first = built.meanings.findIndex((meaning) => meaning.activity === activity);
    if (first < 0) return [];
    const abandon = abandonBy.get(activity);
    return [
      {
        activity,
        pointOfNoReturn: irreversible ? addMinutes(window.start, keeping[first]!.start) : null,
        latestAbort: abandon === undefined ? null : addMinutes(window.start, abandon),
      },
    ];
  });
}
