import type { Instant } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { AccessWindow, Plan } from '../../model/index.js';
import type { RiskNetwork } from '../kernel/network.js';
import { withPlanRisk } from '../plan-risk.js';
import type { HandbackOptions } from '../types.js';
import { isGrantedByLine, leadIns, leadOuts } from './leads.js';
import { NetworkBuilder, type NodeMeaning } from './network-builder.js';
import { linkVisits } from './visit-links.js';
import { visitNodes } from './visit-nodes.js';
import { visitsOf } from './visits.js';

/** A window's work as a network whose zero is the window's start. */
export interface HandbackNetwork {
  readonly network: RiskNetwork;
  readonly meanings: readonly NodeMeaning[];
  /** Planned handback by the arithmetic of the ledgers: last finish of each kind of work + its lead-out. */
  readonly plannedHandback: Instant;
  readonly plannedClear: Instant;
  /** Lead-out minutes of each activity's needs. */
  readonly leadOutOf: ReadonlyMap<string, number>;
  /** First to last, the nodes of the lead-out that each activity's needs have. */
  readonly leadOutNodes: ReadonlyMap<string, readonly number[]>;
  /** Activities of this window that each activity's links wait for. */
  readonly needs: ReadonlyMap<string, readonly string[]>;
}

/**
 * The window's lead-in, visits and lead-out as a network, in the planned order.
 *
 * Each kind of needs has the lead-in and lead-out its own ledger has. A visit waits for its lead-in, for what its
 * activity's links ask for where that is done in this window, and for plant that another visit has before it. Work
 * placed elsewhere counts as done in time. Late work still waits for the end of a curfew; shift breaks are those of the
 * booked window.
 *
 * @throws {RangeError} When a placement in the window names an activity that is not in the plan.
 */
export function handbackNetwork(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  asked: HandbackOptions,
): HandbackNetwork {
  const options = withPlanRisk(plan.rules, window, asked);
  const build = new NetworkBuilder(plan, window, options);
  const visits = visitsOf(plan, window, placements, isGrantedByLine(build));
  const kinds = leadIns(build, visits);
  const unitsSeen = new Map<string, number>();
  const nodesOf = visits.map((visit) => {
    const { ready, stops } = kinds.get(visit.key)!;
    const before = unitsSeen.get(visit.activity) ?? 0;
    unitsSeen.set(visit.activity, before + (visit.units ?? 0));
    return visitNodes(build, visit, before, ready, stops);
  });
  linkVisits(build, visits, nodesOf);
  const found = leadOuts(build, visits, nodesOf, kinds);

  const dated = (options.events ?? []).flatMap((event) =>
    event.at === undefined
      ? []
      : [
          {
            atMinutes: build.minutesAt(event.at),
            probability: event.probability,
            delay: build.delay(event.delay),
          },
        ],
  );
  return {
    network: {
      nodes: build.nodes,
      ...(dated.length > 0 && { datedEvents: dated }),
      ...(options.commonFactor && { commonFactor: build.delay(options.commonFactor) }),
    },
    meanings: build.meanings,
    ...found,
    plannedClear: Math.max(window.start, ...visits.map((visit) => visit.to)),
    needs: new Map(
      visits.map((visit) => [visit.activity, visit.activityRow.after.map((link) => link.activity)]),
    ),
  };
}
