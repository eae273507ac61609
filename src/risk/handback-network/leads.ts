import { MINUTE, type Instant, type IntervalSet } from '../../calendar/index.js';
import { needsOf, type Needs, type Step } from '../../model/index.js';
import {
  isolationOpens,
  layOut,
  ledgerOf,
  stopsOfWork,
  type Ledger,
  type PlacedStep,
} from '../../rules/index.js';
import { constant } from '../kernel/distribution.js';
import { grantStep, handedBackStep, lineGrantStep } from '../types.js';
import type { RiskLink } from '../kernel/network.js';
import { finishOf, type NetworkBuilder } from './network-builder.js';
import { linesNeeded, type Visit } from './visits.js';

/** The visits of one kind of needs: what they wait for, and the ledger that their lead-out is read from. */
export interface KindOfWork {
  readonly needs: Needs;
  readonly ledger: Ledger;
  /** When they must stop. */
  readonly stops: IntervalSet;
  /** The last steps of their lead-in. */
  readonly ready: readonly RiskLink[];
}

/** Whether lines of the window are granted one by one, by what was recorded of the shift. */
export function isGrantedByLine({ window, options }: NetworkBuilder): boolean {
  const steps = new Set(window.lines.map(lineGrantStep));
  return (options.actuals ?? []).some(({ step }) => step !== undefined && steps.has(step));
}

/** Puts the grant and each kind's lead-in into the network. Kinds are in the order of their first visits. */
export function leadIns(
  build: NetworkBuilder,
  visits: readonly Visit[],
): ReadonlyMap<string, KindOfWork> {
  const { plan, window } = build;
  const grant = build.add({ kind: 'lead-in', name: grantStep, minutes: 0 }, constant(0), []);
  const late = build.events((event) => event.step === grantStep);
  if (late.length > 0) build.nodes[grant]!.events = late;

  const byLine = new Map(
    isGrantedByLine(build)
      ? window.lines.map((line) => {
          const name = lineGrantStep(line);
          const meaning = { kind: 'lead-in', name, minutes: 0 } as const;
          return [line, build.add(meaning, constant(0), [finishOf(grant)])] as const;
        })
      : [],
  );
  const kinds = new Map<string, KindOfWork>();
  for (const visit of visits) {
    if (kinds.has(visit.key)) continue;
    const lines = byLine.size > 0 ? linesNeeded(visit.activityRow, window) : [];
    const granted = [grant, ...lines.flatMap((line) => byLine.get(line) ?? [])].map(finishOf);
    const needs = needsOf(visit.activityRow);
    const opens = isolationOpens(window, needs, plan.rules);
    const notBefore = (step: Step): Instant => (step.when === 'isolation' ? opens : window.start);
    const made = build.steps(
      'lead-in',
      layOut(plan.rules.leadIn, needs, window.start, notBefore),
      granted,
      (step) => build.minutesAt(notBefore(step)),
      byLine.size > 0 ? lines : undefined,
    );
    const ready = made.length > 0 ? made.map(finishOf) : granted;
    kinds.set(visit.key, {
      needs,
      ledger: ledgerOf(window, needs, plan.rules),
      stops: stopsOfWork(window, needs, plan.rules),
      ready,
    });
  }
  return kinds;
}

/** What the lead-outs come to by the arithmetic of the ledgers. */
export interface LeadOuts {
  readonly plannedHandback: Instant;
  /** Minutes by activity. */
  readonly leadOutOf: ReadonlyMap<string, number>;
  /** Nodes by activity, first to last. */
  readonly leadOutNodes: ReadonlyMap<string, readonly number[]>;
}

/**
 * Puts each kind's lead-out into the network, after the last of its visits.
 *
 * @param nodesOf Nodes of each visit, first to last.
 */
export function leadOuts(
  build: NetworkBuilder,
  visits: readonly Visit[],
  nodesOf: readonly (readonly number[])[],
  kinds: ReadonlyMap<string, KindOfWork>,
): LeadOuts {
  let plannedHandback = build.window.start;
  const leadOutOf = new Map<string, number>();
  const leadOutNodes = new Map<string, readonly number[]>();
  for (const [key, { needs, ledger }] of kinds) {
    const placed = layOut(build.plan.rules.leadOut, needs, 0);
    const { total, idle } = leadOutMinutes(ledger, placed);
    const own = visits.filter((visit) => visit.key === key);
    const clear = visits
      .flatMap((visit, k) => (visit.key === key ? nodesOf[k]!.slice(-1) : []))
      .map(finishOf);
    const made = build.steps('lead-out', placed, clear, () => 0);
    if (idle > 0)
      build.add(
        { kind: 'lead-out', name: 'Isolation given up before the margin begins', minutes: idle },
        constant(idle),
        made.length > 0 ? made.map(finishOf) : clear,
      );
    for (const visit of own) {
      leadOutOf.set(visit.activity, total);
      leadOutNodes.set(visit.activity, made);
    }
    plannedHandback = Math.max(
      plannedHandback,
      Math.max(...own.map((visit) => visit.to)) + total * MINUTE,
    );
  }
  handedBack(build);
  return { plannedHandback, leadOutOf, leadOutNodes };
}

/** Where something may delay the handback itself: a last node that takes no time, after all else. */
function handedBack(build: NetworkBuilder): void {
  const events = build.events((event) => event.step === handedBackStep);
  if (events.length === 0) return;
  const all = build.nodes.map((_, index) => finishOf(index));
  const meaning = {
    kind: 'lead-out',
    name: handedBackStep,
    part: 'handed-back',
    minutes: 0,
  } as const;
  build.nodes[build.add(meaning, constant(0), all)]!.events = events;
}

/** Minutes of lead-out for such work, and how many of them are only waiting because its isolation ends early. */
function leadOutMinutes(
  ledger: Ledger,
  placed: readonly PlacedStep[],
): { total: number; idle: number } {
  const steps = Math.max(0, ...placed.map((step) => step.end / MINUTE));
  if (ledger.shortfallMinutes > 0) return { total: steps, idle: 0 };
  // Those of the end: an isolation given up on the way has its own.
  const fromEnd = ledger.rows.filter((row) => row.kind !== 'margin').reverse();
  const others = fromEnd.findIndex((row) => row.kind !== 'lead-out');
  const total = fromEnd
    .slice(0, others < 0 ? fromEnd.length : others)
    .reduce((sum, row) => sum + row.minutes, 0);
  return { total, idle: Math.max(0, total - steps) };
}
