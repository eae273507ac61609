import { minutesBetween, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Plan, Step } from '../../model/index.js';
import type { PlacedStep } from '../../rules/index.js';
import { recordedOverruns } from '../recorded-overruns.js';
import { threePoint, type Distribution, type ThreePoint } from '../kernel/distribution.js';
import type { RiskLink, RiskNode } from '../kernel/network.js';
import type { HandbackOptions, PlanEvent } from '../types.js';

/** What a node of the network stands for. */
export interface NodeMeaning {
  readonly kind: 'lead-in' | 'work' | 'lead-out';
  /** Step's name or activity's title. */
  readonly name: string;
  readonly activity?: string;
  /** `unit` is the number of the unit in this window, 1 for the first. */
  readonly part?: 'set-up' | 'whole' | 'unit' | 'make-safe' | 'handed-back';
  readonly unit?: number;
  /** Most likely minutes. */
  readonly minutes: number;
  /** Of a lead-in step where lines are granted one by one: those that it is for. */
  readonly lines?: readonly string[];
  /** Start of the visit as placed; only on a visit's first node. */
  readonly plannedStart?: Instant;
}

/** A node that may still be told more. */
type DraftNode = { -readonly [Key in keyof RiskNode]: RiskNode[Key] } & { after: RiskLink[] };

/** Waits for the end of a node. */
export const finishOf = (node: number): RiskLink => ({ node, from: 'finish', lagMinutes: 0 });

/** Builds the network node by node; its methods return indices. */
export class NetworkBuilder {
  readonly nodes: DraftNode[] = [];
  readonly meanings: NodeMeaning[] = [];
  readonly #firstOfStep = new Map<string, number>();
  readonly plan: Plan;
  readonly window: AccessWindow;
  readonly options: HandbackOptions;

  constructor(plan: Plan, window: AccessWindow, options: HandbackOptions) {
    this.plan = plan;
    this.window = window;
    this.options = options;
  }

  /** Adds a node that starts once all of `after` allow it. */
  add(meaning: NodeMeaning, duration: Distribution, after: readonly RiskLink[]): number {
    this.nodes.push({ id: meaning.name, duration, after: [...after] });
    this.meanings.push(meaning);
    return this.nodes.length - 1;
  }

  /** A length between two bounds, which never leave the most likely minutes outside. */
  spread(minutes: number, low = minutes, high = minutes): Distribution {
    return threePoint(this.options.distribution ?? 'triangular', {
      low: Math.min(low, minutes),
      likely: minutes,
      high: Math.max(high, minutes),
    });
  }

  /** What may happen to a node: those of the plan's events that match. */
  events(matches: (event: PlanEvent) => boolean): NonNullable<RiskNode['events']> {
    return (this.options.events ?? [])
      .filter(matches)
      .map((event) => ({ probability: event.probability, delay: this.delay(event.delay) }));
  }

  /** A delay in the shape that is asked for. */
  delay(points: ThreePoint | 'recorded'): Distribution {
    if (points === 'recorded') return { kind: 'recorded', minutes: recordedOverruns };
    return threePoint(this.options.distribution ?? 'triangular', points);
  }

  /** Minutes from the window's start. */
  minutesAt(at: Instant): number {
    return minutesBetween(this.window.start, at);
  }

  /** Steps as `layOut` laid them. The same step met for another kind of work takes the same minutes. */
  steps(
    kind: 'lead-in' | 'lead-out',
    placed: readonly PlacedStep[],
    after: readonly RiskLink[],
    release: (step: Step) => number,
    lines?: readonly string[],
  ): readonly number[] {
    const made: number[] = [];
    const inTurn = [...placed].sort((a, b) => a.turn - b.turn);
    inTurn.forEach(({ step, beside }, k) => {
      const links = inTurn.slice(0, k).flatMap((other, j): RiskLink[] => {
        if (other.step.step === beside) return [{ node: made[j]!, from: 'start', lagMinutes: 0 }];
        return beside === undefined ? [finishOf(made[j]!)] : [];
      });
      const meaning = {
        kind,
        name: step.step,
        minutes: step.minutes,
        ...(lines && { lines }),
      } as const;
      const index = this.add(
        meaning,
        this.spread(step.minutes, step.low, step.high),
        links.length > 0 ? links : after,
      );
      const node = this.nodes[index]!;
      if (release(step) > 0) node.releaseMinutes = release(step);
      const twin = this.#firstOfStep.get(`${kind} ${step.step}`);
      if (twin === undefined) {
        this.#firstOfStep.set(`${kind} ${step.step}`, index);
        const events = this.events(
          ({ step: named, stage }) => named === step.step && (stage ?? kind) === kind,
        );
        if (events.length > 0) node.events = events;
      } else node.sameDurationAs = twin;
      made.push(index);
    });
    return made;
  }
}
