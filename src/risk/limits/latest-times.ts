import { lengthMinutes } from '../../calendar/index.js';
import type { AccessWindow, Commitment } from '../../model/index.js';
import type { HandbackNetwork } from '../handback-network/handback-network.js';
import { backwardPass, latestStart, type NodeTimes } from '../kernel/network.js';

/**
 * By when each node must start and finish: one pass back from the booked end through everything that must follow, the
 * tests after irreversible work and the giving up after it included. Minutes after the window's start.
 */
export interface LatestTimes {
  /** So that the required margin is kept. */
  readonly keeping: readonly NodeTimes[];
  /** So that the line is handed back at the booked end. */
  readonly onTime: readonly NodeTimes[];
  /** By activity: latest moment to abandon it, put the railway back and keep the margin. */
  readonly abandonBy: ReadonlyMap<string, number>;
}

/** Minutes that irreversible work asks for between its own finish and handback, beside what the plan has follow it. */
export function keptAfter(
  built: HandbackNetwork,
  commitments: readonly Commitment[],
): (index: number) => number {
  const minutes = new Map<number, number>();
  for (const { activity, irreversible, testMinutes = 0, giveUpMinutes } of commitments) {
    const last = built.meanings.findLastIndex((meaning) => meaning.activity === activity);
    if (!irreversible || last < 0) continue;
    minutes.set(last, testMinutes + (giveUpMinutes ?? built.leadOutOf.get(activity) ?? 0));
  }
  return (index) => minutes.get(index) ?? 0;
}

export function latestTimes(
  built: HandbackNetwork,
  window: AccessWindow,
  requiredMinutes: number,
  commitments: readonly Commitment[],
): LatestTimes {
  const { nodes } = built.network;
  const minutes = (index: number): number => built.meanings[index]!.minutes;
  const after = keptAfter(built, commitments);
  const gross = lengthMinutes(window);
  const keeping = backwardPass(nodes, minutes, gross - requiredMinutes, after);
  const abandonBy = new Map(
    commitments.flatMap(({ activity, reinstatementMinutes, giveUpMinutes }) => {
      const node = built.meanings.findIndex((meaning) => meaning.activity === activity);
      if (reinstatementMinutes === undefined || node < 0) return [];
      // Put back, the work still has its lead-out before it, as it would have had when finished.
      const by = Math.min(
        gross - requiredMinutes - (giveUpMinutes ?? 0),
        ...(built.leadOutNodes.get(activity) ?? []).map((index) => keeping[index]!.start),
      );
      return [
        [activity, latestStart(nodes[node]!.closed ?? [], by, reinstatementMinutes)] as const,
      ];
    }),
  );
  return { keeping, onTime: backwardPass(nodes, minutes, gross, after), abandonBy };
}
