import { minutesBetween, type Instant } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { NodeState } from '../limits/cut-offs.js';
import { constant, cumulativeOf, threePoint, type Distribution } from '../kernel/distribution.js';
import type { HandbackNetwork } from '../handback-network/handback-network.js';
import type { NodeMeaning } from '../handback-network/network-builder.js';
import { topologicalOrder, type RiskNode } from '../kernel/network.js';
import {
  grantStep,
  handedBackStep,
  lineGrantStep,
  lineOfGrant,
  type Actual,
  type HandbackOptions,
} from '../types.js';

/** A network as it stands at a moment in the shift: what is done is fact, what is left starts no earlier than now. */
export interface Conditioned {
  readonly built: HandbackNetwork;
  readonly states: readonly NodeState[];
  /** Names of begun work that has outrun its longest estimate. */
  readonly beyondEstimate: readonly string[];
  /** Nodes taken to be under way because time has passed since what comes before was done; nobody said so. */
  readonly assumed: ReadonlySet<number>;
}

interface Seen {
  assumed?: true;
  started?: number;
  finished?: number;
  left?: Distribution;
  /** Of the granting of a line: not before this minute, by what was said. */
  expected?: number;
}

/** Whether a step is meant of the lead-in or of the lead-out; where nobody said and both have it, the lead-in. */
function stageOf(built: HandbackNetwork, { step, stage }: Actual): NodeMeaning['kind'] {
  const first = built.meanings.find(
    (meaning) => meaning.activity === undefined && meaning.name === step,
  );
  return stage ?? first?.kind ?? 'lead-in';
}

/** What the actuals say of each node. Anything after `at` has not been seen. */
function seenOf(
  built: HandbackNetwork,
  actuals: readonly Actual[],
  at: number,
  minutesAt: (instant: Instant) => number,
  shape: 'triangular' | 'beta-pert',
): Seen[] {
  const seen: Seen[] = built.meanings.map(() => ({}));
  const past = (instant: Instant | undefined): number | undefined => {
    const minutes = instant === undefined ? undefined : minutesAt(instant);
    return minutes !== undefined && minutes <= at ? minutes : undefined;
  };
  const stepOf = (name: string): Actual | undefined => actuals.find(({ step }) => step === name);
  const whole = past(stepOf(grantStep)?.finishedAt);
  /** When a line was granted: by itself, or with all the others. */
  const grantOf = (line: string): number => {
    const own = stepOf(lineGrantStep(line));
    return (own ? past(own.finishedAt) : whole) ?? Infinity;
  };
  for (const actual of actuals) {
    const started = past(actual.startedAt);
    const finished = past(actual.finishedAt);
    const own = [...built.meanings.keys()].filter((index) => {
      const { activity, name, kind, lines } = built.meanings[index]!;
      if (actual.activity !== undefined) return activity === actual.activity;
      const is = activity === undefined && name === actual.step && kind === stageOf(built, actual);
      // A step that was over before a line was granted was not done for that line.
      return is && (lines ?? []).every((line) => grantOf(line) <= (finished ?? started ?? at));
    });
    if (actual.expectedAt !== undefined)
      own.forEach((index) => (seen[index]!.expected = minutesAt(actual.expectedAt!)));
    if (actual.step === grantStep && finished !== undefined)
      built.meanings.forEach(({ kind, name }, index) => {
        const granted = kind === 'lead-in' && lineOfGrant(name) !== undefined && !stepOf(name);
        if (granted) Object.assign(seen[index]!, { started: finished, finished });
      });
    if (finished !== undefined) {
      own.forEach((index) =>
        Object.assign(seen[index]!, { started: started ?? finished, finished }),
      );
      continue;
    }
    const units = actual.unitsDone ?? 0;
    const unitsAt = past(actual.unitsAt) ?? (units > 0 ? at : undefined);
    const first = (actual.activity === undefined ? own : own.slice(0, 1)).map(
      (index) => seen[index]!,
    );
    if (started !== undefined) first.forEach((item) => (item.started = started));
    const [setUp, unit] = own;
    if (started !== undefined && units === 0 && built.meanings[setUp!]?.part === 'set-up') {
      // Nobody writes down that it is set up: it takes its minutes, and then the first unit is taken to be under way.
      const ready = started + built.meanings[setUp!]!.minutes;
      if (ready < at) {
        seen[setUp!]!.finished = ready;
        if (unit !== undefined) Object.assign(seen[unit]!, { started: ready, assumed: true });
      }
    }
    if (unitsAt !== undefined && units > 0) {
      own.forEach((index) => {
        const unit = built.meanings[index]!.unit ?? 0;
        if (unit > 0 && unit <= units)
          Object.assign(seen[index]!, { started: unitsAt, finished: unitsAt });
        // At the boundary nobody has begun the next one; as time passes it is taken to be under way.
        if (unit === units + 1 && unitsAt < at)
          Object.assign(seen[index]!, { started: unitsAt, assumed: true });
      });
    }
    if (actual.minutesLeft) {
      const running = own.filter(
        (index) => seen[index]!.started !== undefined && seen[index]!.finished === undefined,
      );
      for (const index of running) seen[index]!.left = threePoint(shape, actual.minutesLeft);
    }
  }
  // Once the line is handed back nothing goes on there, whatever was not written down.
  const over = past(stepOf(handedBackStep)?.finishedAt);
  if (over !== undefined)
    for (const item of seen) if (item.finished === undefined) item.finished = over;
  return seen;
}

/** What has begun proves that what it waited for is over, or has begun, even if nobody wrote it down. */
function inferEarlier(nodes: readonly RiskNode[], seen: readonly Seen[]): void {
  for (const index of topologicalOrder(nodes).reverse()) {
    const { started } = seen[index]!;
    if (started === undefined) continue;
    for (const link of nodes[index]!.after) {
      const before = seen[link.node]!;
      const latest = started - Math.max(0, link.lagMinutes);
      if (link.from === 'finish' && before.finished === undefined) before.finished = latest;
      before.started ??= latest;
    }
  }
}

/**
 * The network given what has happened by `at`: finished nodes stay where they were, a begun one has what is left of
 * its spread knowing how long it has already taken, and nothing else starts before `at`.
 */
export function conditionedOn(
  built: HandbackNetwork,
  window: AccessWindow,
  options: HandbackOptions,
  at: Instant,
): Conditioned {
  const minutesAt = (instant: Instant): number => minutesBetween(window.start, instant);
  const now = minutesAt(at);
  const { nodes } = built.network;
  const shape = options.distribution ?? 'triangular';
  const seen = seenOf(built, options.actuals ?? [], now, minutesAt, shape);
  inferEarlier(nodes, seen);
  const beyond = new Set<string>();
  const minutes = built.meanings.map((meaning) => meaning.minutes);

  const conditioned = nodes.map((node, index): RiskNode => {
    const { started, finished, left } = seen[index]!;
    const { id } = node;
    if (finished !== undefined) {
      minutes[index] = 0;
      return { id, duration: constant(0), after: [], releaseMinutes: finished, factorWeight: 0 };
    }
    if (started !== undefined) {
      const elapsedMinutes = Math.max(0, now - started);
      const whole = nodes[node.sameDurationAs ?? index]!.duration;
      const over =
        left === undefined && elapsedMinutes > 0 && cumulativeOf(whole, elapsedMinutes) >= 1;
      if (over) beyond.add(built.meanings[index]!.name);
      minutes[index] =
        left && 'likely' in left ? left.likely : Math.max(0, minutes[index]! - elapsedMinutes);
      return {
        id,
        duration: left ?? { kind: 'remaining', of: whole, elapsedMinutes },
        after: [],
        releaseMinutes: now,
        ...(node.closed && { closed: node.closed }),
        ...(node.events && { events: node.events }),
      };
    }
    let release = Math.max(now, node.releaseMinutes ?? 0, seen[index]!.expected ?? 0);
    const after = node.after.filter((link) => {
      const before = seen[link.node]!;
      // A begun node's place in the network is only what is left of it: its start is a fact.
      if (link.from !== 'start' || before.started === undefined) return true;
      release = Math.max(release, before.started + link.lagMinutes);
      return false;
    });
    return { ...node, after, releaseMinutes: release };
  });
  const ending = isHandedBack(options, at) ? [] : [handingBack(now)];
  const dated = built.network.datedEvents?.filter((event) => event.atMinutes >= now);
  const { datedEvents: _, ...rest } = built.network;
  return {
    built: {
      ...built,
      network: {
        ...rest,
        nodes: [...separated(conditioned, seen), ...ending.map(({ node }) => node)],
        ...(dated && { datedEvents: dated }),
      },
      meanings: [
        ...built.meanings.map((meaning, index) => {
          const { plannedStart: __, ...other } = meaning;
          return { ...other, minutes: minutes[index]! };
        }),
        ...ending.map(({ meaning }) => meaning),
      ],
    },
    states: [
      ...seen.map(({ started, finished }) =>
        finished !== undefined ? 'done' : started !== undefined ? 'begun' : 'to-come',
      ),
      ...ending.map(() => 'to-come' as const),
    ],
    beyondEstimate: [...beyond],
    assumed: new Set([...seen.keys()].filter((index) => seen[index]!.assumed)),
  };
}

const isHandedBack = ({ actuals = [] }: HandbackOptions, at: Instant): boolean =>
  actuals.some(({ step, finishedAt }) => step === handedBackStep && finishedAt! <= at);

/** Until it is recorded, the line is not handed back before now, even with nothing left to do. */
const handingBack = (now: number): { readonly node: RiskNode; readonly meaning: NodeMeaning } => ({
  node: {
    ...{ id: handedBackStep, duration: constant(0), after: [] },
    ...{ releaseMinutes: now, factorWeight: 0 },
  },
  meaning: { kind: 'lead-out', name: handedBackStep, part: 'handed-back', minutes: 0 },
});

/** A twin whose original has moved on without it has its own length again. */
function separated(nodes: readonly RiskNode[], seen: readonly Seen[]): readonly RiskNode[] {
  return nodes.map((node) => {
    const twin = node.sameDurationAs;
    if (twin === undefined || seen[twin]!.started === undefined) return node;
    const { sameDurationAs: _, ...own } = node;
    return own;
  });
}
