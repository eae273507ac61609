import { addMinutes, lengthMinutes, minutesBetween, type Instant } from '../calendar/index.js';
import type { AccessWindow } from '../model/index.js';
import type { HandbackNetwork } from './handback-network/handback-network.js';
import type { NodeMeaning } from './handback-network/network-builder.js';
import { backwardPass, forwardPass, type NodeTimes, type RiskNode } from './network.js';
import type { CutOff, DecisionPoint, HandbackOptions } from './types.js';

export type NodeState = CutOff['state'];

/** Steps and activities with the indices of their nodes, in the order in which they first appear. */
export function groupsOf(meanings: readonly NodeMeaning[]): ReadonlyMap<string, readonly number[]> {
  const groups = new Map<string, number[]>();
  meanings.forEach((one, index) => {
    const key = JSON.stringify([one.kind, one.activity ?? one.name]);
    groups.set(key, [...(groups.get(key) ?? []), index]);
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

/**
 * By when each step and activity must start and finish, to keep the required margin and to be on time at all: a
 * backward pass from the booked end through the links of the window and the order on shared plant.
 */
export function cutOffsOf(
  built: HandbackNetwork,
  window: AccessWindow,
  requiredMinutes: number,
  states: readonly NodeState[],
): readonly CutOff[] {
  const { meanings } = built;
  const { nodes } = built.network;
  const minutes = (index: number): number => meanings[index]!.minutes;
  const gross = lengthMinutes(window);
  const planned = plannedTimes(built, window);
  const keeping = backwardPass(nodes, minutes, gross - requiredMinutes);
  const onTime = backwardPass(nodes, minutes, gross);
  const at = (value: number): Instant => addMinutes(window.start, value);
  return [...groupsOf(meanings).values()]
    .map((group): CutOff => {
      const { kind, name, activity } = meanings[group[0]!]!;
      const least = (times: readonly NodeTimes[], edge: 'start' | 'finish', of = group): number =>
        Math.min(...of.map((index) => times[index]![edge]));
      // A step seen by several kinds of work is one step: all its nodes bind. An activity starts with its first node
      // and ends with its last.
      const first = activity === undefined ? group : group.slice(0, 1);
      const last = activity === undefined ? group : group.slice(-1);
      const plannedStart = least(planned, 'start');
      const latestStart = least(keeping, 'start', first);
      const done = group.every((index) => states[index] === 'done');
      const begun = group.some((index) => states[index] !== 'to-come');
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
        slackMinutes: latestStart - plannedStart,
        state: done ? 'done' : begun ? 'begun' : 'to-come',
      };
    })
    .sort((a, b) => a.plannedStart - b.plannedStart || a.plannedFinish - b.plannedFinish);
}

/**
 * Points of no return and latest times to abandon.
 *
 * @see values 5.3: deadline - (finish + test + give-up + margin), and deadline - restore time (marked D, derived)
 */
export function decisionsOf(
  built: HandbackNetwork,
  window: AccessWindow,
  requiredMinutes: number,
  commitments: NonNullable<HandbackOptions['commitments']>,
): readonly DecisionPoint[] {
  const planned = plannedTimes(built, window);
  return commitments.flatMap((one) => {
    const nodes = [...built.meanings.keys()].filter(
      (index) => built.meanings[index]!.activity === one.activity,
    );
    if (nodes.length === 0) return [];
    const from = Math.min(...nodes.map((index) => planned[index]!.start));
    const to = Math.max(...nodes.map((index) => planned[index]!.finish));
    const giveUp = one.giveUpMinutes ?? built.leadOutOf.get(one.activity) ?? 0;
    const needed = to - from + (one.testMinutes ?? 0) + giveUp + requiredMinutes;
    return [
      {
        activity: one.activity,
        pointOfNoReturn: one.irreversible ? addMinutes(window.end, -needed) : null,
        latestAbort:
          one.reinstatementMinutes === undefined
            ? null
            : addMinutes(window.end, -one.reinstatementMinutes),
      },
    ];
  });
}
