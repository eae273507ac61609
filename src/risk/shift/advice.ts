import type { Instant } from '../../calendar/index.js';
import { because, together, type AccessWindow, type Plan, type Worded } from '../../model/index.js';
import { reachesChance } from '../verdict.js';
import type { Conditioned } from './conditioned.js';
import { chancesWithout, marginWithout, nodesBeyond, type LessWork } from './less-work.js';
import { sayLive } from './live-sentences.js';
import { activitiesOf, mayLeaveOut, type MayLeaveOut, type StopsEarly } from './may-leave-out.js';
import type { Advice, LiveOption, NotOffered, StopsAt } from '../types.js';

/** What the shift may do from here on, with the line of advice. */
export interface Outlook {
  readonly advice: Advice;
  readonly options: readonly LiveOption[];
  readonly notOffered: readonly NotOffered[];
}

interface Draft {
  readonly activity?: string;
  readonly units?: number;
  readonly more?: number;
  readonly leaveOut: readonly string[];
  readonly alsoStop: readonly StopsAt[];
  readonly nodes: ReadonlySet<number>;
  /** Absent: nothing beside what is planned. */
  readonly only?: Worded;
  /** Among those that are listed; otherwise only weighed for the advice. */
  readonly listed: boolean;
}

/**
 * The ways on from this moment, each simulated with the same draws, and the one to take: as planned where that reaches the
 * chance wanted; or else what leaves out the least and reaches it; or else a stop now.
 */
export function adviceOf(
  plan: Plan,
  now: Conditioned,
  window: AccessWindow,
  lessWork: LessWork,
  at: Instant,
  before: ReadonlySet<string>,
): Outlook {
  const { built, states, assumed } = now;
  const may = mayLeaveOut(plan, built, states, assumed, before);
  const lead = leadOf(may, now);
  const drafts = draftsOf(may, lead, now, plan);
  const found = chancesWithout(
    built,
    window,
    lessWork,
    drafts.map((draft) => draft.nodes),
  );
  const rated = drafts.map(({ nodes, listed, only, ...one }, k) => ({
    listed,
    option: {
      ...one,
      condition: only?.text ?? '',
      ...(only?.sentence && { conditioned: only.sentence }),
      onTime: found[k]!,
      marginMinutes: marginWithout(built, window, nodes),
      reaches: reachesChance(found[k]!.probability, lessWork.confidence, lessWork.runs),
    } satisfies LiveOption,
  }));
  const title = (id: string): string =>
    plan.activities.find((activity) => activity.id === id)?.title ?? id;
  const advice = choose(
    rated.map((item) => item.option),
    lead,
    { ...lessWork, passed: at >= window.end },
    title,
  );
  // Counted as about to finish, it flatters every chance until somebody says how long it still takes.
  const outrun = now.beyondEstimate.map((name) => sayLive('outrun', { name }));
  return {
    advice: { ...advice.how, ...because(together([...advice.why, ...outrun])) },
    options: rated.filter((item) => item.listed).map((item) => item.option),
    notOffered: may.notOffered,
  };
}

/** The repeated work that is counted: what is going on, or else what comes first. */
function leadOf({ early }: MayLeaveOut, { built, states }: Conditioned): StopsEarly | undefined {
  const going = early.find((stopsEarly) =>
    stopsEarly.nodes.some((index) => states[index] !== 'to-come'),
  );
  if (going) return going;
  const [first] = [...activitiesOf(built).keys()].flatMap(
    (id) => early.find((stopsEarly) => stopsEarly.activity === id) ?? [],
  );
  return first;
}

function draftsOf(
  { early, whole }: MayLeaveOut,
  lead: StopsEarly | undefined,
  { built, states, assumed }: Conditioned,
  plan: Plan,
): readonly Draft[] {
  const nodesOf = activitiesOf(built);
  const beyond = (stopsEarly: StopsEarly, keep: number): readonly number[] =>
    nodesBeyond(built, stopsEarly.nodes, states, keep, assumed);
  const title = (id: string): string =>
    plan.activities.find((activity) => activity.id === id)?.title ?? id;
  const conditions = (
    ...stops: readonly (readonly [StopsEarly, number])[]
  ): Pick<Draft, 'only'> => {
    const assumed = stops.filter(([{ assumed, done }, keep]) => assumed && keep === done);
    if (assumed.length === 0) return {};
    const said = assumed.map(([{ activity, done }]) =>
      sayLive('only-if-not-begun', { unit: done + 1, name: title(activity) }),
    );
    return { only: together(said) };
  };
  const waits = whole.map((leavesOut) => [leavesOut.activity, ...leavesOut.with]);
  const out = (groups: readonly (readonly string[])[]): readonly string[] => [
    ...new Set(groups.flat()),
  ];
  const gone = (groups: readonly (readonly string[])[]): readonly number[] =>
    out(groups).flatMap((id) => nodesOf.get(id)!);
  const planned: Draft = {
    ...(lead && { activity: lead.activity, units: lead.units, more: lead.units - lead.done }),
    leaveOut: [],
    alsoStop: [],
    nodes: new Set(),
    listed: true,
  };
  const cuts = early.flatMap((stopsEarly) =>
    Array.from({ length: stopsEarly.units - stopsEarly.least }, (_, k): Draft => {
      const units = stopsEarly.units - 1 - k;
      return {
        activity: stopsEarly.activity,
        units,
        more: units - stopsEarly.done,
        leaveOut:
          stopsEarly !== lead && units === 0 && untouched(states)(stopsEarly)
            ? [stopsEarly.activity]
            : [],
        alsoStop: [],
        nodes: new Set(beyond(stopsEarly, units)),
        ...conditions([stopsEarly, units]),
        listed: true,
      };
    }),
  );
  const waiting = waits.map((group): Draft => ({
    leaveOut: group,
    alsoStop: [],
    nodes: new Set(gone([group])),
    listed: true,
  }));
  const rest = early.filter((stopsEarly) => stopsEarly !== lead);
  const least = rest.flatMap((stopsEarly) => beyond(stopsEarly, stopsEarly.least));
  const idle = rest.filter(untouched(states));
  const stopping = rest.filter((stopsEarly) => !idle.includes(stopsEarly));
  const alsoStop = stopping.map(({ activity, least: units }) => ({ activity, units }));
  // Everything that may go, down to each count of the work that is going on: the last is a stop now.
  const both = waits.length + rest.length > 0;
  const all = lead
    ? Array.from({ length: lead.units - lead.least + 1 }, (_, k): Draft => {
        const units = lead.units - k;
        return {
          activity: lead.activity,
          units,
          more: units - lead.done,
          leaveOut: out([...waits, ...idle.map((stopsEarly) => [stopsEarly.activity])]),
          alsoStop,
          nodes: new Set([...beyond(lead, units), ...least, ...gone(waits)]),
          ...conditions(
            [lead, units],
            ...stopping.map((stopsEarly) => [stopsEarly, stopsEarly.least] as const),
          ),
          listed: units === lead.least,
        };
      })
    : [
        {
          leaveOut: out(waits),
          alsoStop: [],
          nodes: new Set(gone(waits)),
          listed: waits.length > 1,
        },
      ];
  return [planned, ...cuts, ...waiting, ...(both ? all : [])];
}

const untouched =
  (states: Conditioned['states']) =>
  (stopsEarly: StopsEarly): boolean =>
    stopsEarly.least === 0 && stopsEarly.nodes.every((index) => states[index] === 'to-come');

/** What is advised, and why. */
interface Chosen {
  readonly how: Omit<Advice, 'why' | 'sentence'>;
  readonly why: readonly Worded[];
}

function choose(
  options: readonly LiveOption[],
  lead: StopsEarly | undefined,
  { confidence: wanted, runs, passed }: LessWork & { readonly passed: boolean },
  title: (id: string) => string,
): Chosen {
  const [planned, ...others] = options as readonly [LiveOption, ...LiveOption[]];
  const of = (option: LiveOption) => ({ share: option.onTime.probability, runs });
  const aim = { share: wanted };
  const asPlanned = sayLive('all-as-planned', { onTime: of(planned), wanted: aim });
  const carryOn = (...why: readonly Worded[]): Chosen => ({
    how: {
      say: 'carry-on',
      activity: planned.activity ?? null,
      more: planned.more ?? null,
      leaveOut: [],
      alsoStop: [],
    },
    why,
  });
  const late = { late: sayLive(passed ? 'late-already' : 'late-maybe', {}), passed };
  if (planned.reaches) return carryOn(asPlanned);
  if (others.length === 0) return carryOn(asPlanned, sayLive('nothing-may-go', late));
  const lost = (option: LiveOption): number => lostBy(option, lead);
  const [best] = others.filter((other) => other.reaches).sort((a, b) => lost(a) - lost(b));
  // Where none reaches it: the surest, then what hands back the earliest, then the fewest units. Nobody is sent on to
  // one more unit that brings nothing.
  const [safest] = [...others].sort(
    (a, b) =>
      b.onTime.probability - a.onTime.probability ||
      b.marginMinutes - a.marginMinutes ||
      unitsOf(a, lead) - unitsOf(b, lead) ||
      lost(a) - lost(b),
  );
  const chosen = best ?? safest!;
  // What is cut short is counted, be it the work that is going on or work beside it.
  const counted =
    chosen.activity !== undefined &&
    (chosen.activity === lead?.activity || !chosen.leaveOut.includes(chosen.activity));
  const { activity = null, more = null } = counted ? chosen : planned;
  // The next count up shows why it is no more.
  const above = counted
    ? others.find(
        (other) =>
          other.activity === chosen.activity &&
          other.leaveOut.length === 0 &&
          other.alsoStop.length === 0 &&
          other.more === chosen.more! + 1 &&
          other !== chosen,
      )
    : undefined;
  const ways = [planned, ...(above ? [above] : []), chosen].map((option) => ({
    way: optionWords(option, lead, title),
    onTime: of(option),
  }));
  const { condition: text, conditioned } = chosen;
  return {
    how: {
      say: counted ? (more === 0 ? 'stop' : 'more') : 'carry-on',
      activity,
      more,
      leaveOut: chosen.leaveOut,
      alsoStop: chosen.alsoStop,
    },
    why: [
      sayLive('ways-compared', { ways, wanted: aim }),
      ...(best ? [] : [sayLive('no-way-reaches', late)]),
      ...(text === '' ? [] : [{ text, ...(conditioned && { sentence: conditioned }) }]),
    ],
  };
}

/** An option as part of a sentence. */
function optionWords(
  { activity, units, more, leaveOut, alsoStop }: LiveOption,
  lead: StopsEarly | undefined,
  title: (id: string) => string,
): Worded {
  const without = [
    ...alsoStop.map((stop) => sayLive('way-of', { units: stop.units, name: title(stop.activity) })),
    ...(leaveOut.length === 0 ? [] : [sayLive('way-without', { names: leaveOut.map(title) })]),
  ];
  if (units === undefined || activity === undefined)
    return without[0] ?? sayLive('way-as-planned', {});
  if (leaveOut.includes(activity)) return without[0]!;
  const name = title(activity);
  const count =
    activity === lead?.activity
      ? more === 0
        ? units === 0
          ? sayLive('way-none', { name })
          : sayLive('way-stop-at', { units })
        : sayLive('way-more', { units: more! })
      : sayLive('way-of', { units, name });
  return together([count, ...without], ', ');
}

/** Units of the counted work that an option still holds. */
const unitsOf = (option: LiveOption, lead: StopsEarly | undefined): number =>
  lead !== undefined && option.activity === lead.activity ? option.units! : (lead?.units ?? 0);

/** How much is left undone: units of what is going on weigh more than what may wait. */
function lostBy(option: LiveOption, lead: StopsEarly | undefined): number {
  const counted = lead !== undefined && option.activity === lead.activity;
  const units = counted ? lead.units - option.units! : 0;
  return (
    units * 1_000 +
    option.leaveOut.length +
    option.alsoStop.length +
    (option.activity !== undefined && !counted ? 1 : 0)
  );
}
