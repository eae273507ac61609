import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Plan } from '../../model/index.js';
import { chanceText } from '../chance-text.js';
import { reachesChance } from '../verdict.js';
import type { Conditioned } from './conditioned.js';
import { chancesWithout, marginWithout, nodesBeyond, type LessWork } from './less-work.js';
import { activitiesOf, mayLeaveOut, type MayLeaveOut, type StopsEarly } from './may-leave-out.js';
import type { Advice, LiveOption, NotOffered } from '../types.js';

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
  readonly nodes: ReadonlySet<number>;
  readonly condition: string;
  /** Among those that are listed; otherwise only weighed for the advice. */
  readonly listed: boolean;
}

/**
 * The ways on from this moment, each simulated on the same luck, and the one to take: as planned where that reaches the
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
    drafts.map((one) => one.nodes),
  );
  const rated = drafts.map(({ nodes, listed, ...one }, k) => ({
    listed,
    option: {
      ...one,
      onTime: found[k]!,
      marginMinutes: marginWithout(built, window, nodes),
      reaches: reachesChance(found[k]!.probability, lessWork.confidence, lessWork.runs),
    } satisfies LiveOption,
  }));
  const title = (id: string): string => plan.activities.find((one) => one.id === id)?.title ?? id;
  const advice = choose(
    rated.map((one) => one.option),
    lead,
    { ...lessWork, passed: at >= window.end },
    title,
  );
  // Counted as about to finish, it flatters every chance until somebody says how long it still takes.
  const outrun = now.beyondEstimate.map(
    (name) =>
      ` ${name} has outrun its longest estimate: rely on no chance until a fresh estimate is written down.`,
  );
  return {
    advice: { ...advice, why: `${advice.why}${outrun.join('')}` },
    options: rated.filter((one) => one.listed).map((one) => one.option),
    notOffered: may.notOffered,
  };
}

/** The repeated work that is counted: what is going on, or else what comes first. */
function leadOf({ early }: MayLeaveOut, { built, states }: Conditioned): StopsEarly | undefined {
  const going = early.find((one) => one.nodes.some((index) => states[index] !== 'to-come'));
  if (going) return going;
  const [first] = [...activitiesOf(built).keys()].flatMap(
    (id) => early.find((one) => one.activity === id) ?? [],
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
  const beyond = (one: StopsEarly, keep: number): readonly number[] =>
    nodesBeyond(built, one.nodes, states, keep, assumed);
  const title = (id: string): string => plan.activities.find((one) => one.id === id)?.title ?? id;
  const condition = (one: StopsEarly, keep: number): string =>
    one.assumed && keep === one.done
      ? `Only if unit ${one.done + 1} of ${title(one.activity)} has not begun: it is taken to be under way since the last was done.`
      : '';
  const waits = whole.map((one) => [one.activity, ...one.with]);
  const out = (groups: readonly (readonly string[])[]): readonly string[] => [
    ...new Set(groups.flat()),
  ];
  const gone = (groups: readonly (readonly string[])[]): readonly number[] =>
    out(groups).flatMap((id) => nodesOf.get(id)!);
  const planned: Draft = {
    ...(lead && { activity: lead.activity, units: lead.units, more: lead.units - lead.done }),
    leaveOut: [],
    nodes: new Set(),
    condition: '',
    listed: true,
  };
  const cuts = early.flatMap((one) =>
    Array.from({ length: one.units - one.least }, (_, k): Draft => {
      const units = one.units - 1 - k;
      return {
        activity: one.activity,
        units,
        more: units - one.done,
        leaveOut: one !== lead && units === 0 && untouched(states)(one) ? [one.activity] : [],
        nodes: new Set(beyond(one, units)),
        condition: condition(one, units),
        listed: true,
      };
    }),
  );
  const waiting = waits.map((group): Draft => ({
    leaveOut: group,
    nodes: new Set(gone([group])),
    condition: '',
    listed: true,
  }));
  const rest = early.filter((one) => one !== lead);
  const least = rest.flatMap((one) => beyond(one, one.least));
  // Everything that may go, down to each count of the work that is going on: the last is a stop now.
  const both = waits.length + rest.length > 0;
  const all = lead
    ? Array.from({ length: lead.units - lead.least + 1 }, (_, k): Draft => {
        const units = lead.units - k;
        return {
          activity: lead.activity,
          units,
          more: units - lead.done,
          leaveOut: out([...waits, ...rest.filter(untouched(states)).map((one) => [one.activity])]),
          nodes: new Set([...beyond(lead, units), ...least, ...gone(waits)]),
          condition: condition(lead, units),
          listed: units === lead.least,
        };
      })
    : [
        {
          leaveOut: out(waits),
          nodes: new Set(gone(waits)),
          condition: '',
          listed: waits.length > 1,
        },
      ];
  return [planned, ...cuts, ...waiting, ...(both ? all : [])];
}

const untouched =
  (states: Conditioned['states']) =>
  (one: StopsEarly): boolean =>
    one.least === 0 && one.nodes.every((index) => states[index] === 'to-come');

function choose(
  options: readonly LiveOption[],
  lead: StopsEarly | undefined,
  { confidence: wanted, runs, passed }: LessWork & { readonly passed: boolean },
  title: (id: string) => string,
): Advice {
  const [planned, ...others] = options as readonly [LiveOption, ...LiveOption[]];
  const of = (one: LiveOption): string => chanceText(one.onTime.probability, runs);
  const aim = `wanted ${chanceText(wanted)}`;
  const carryOn = (why: string): Advice => ({
    say: 'carry-on',
    activity: planned.activity ?? null,
    more: planned.more ?? null,
    leaveOut: [],
    why,
  });
  const late = passed
    ? 'The time to hand back has passed: say now that the line is handed back late.'
    : 'say now that the line may be handed back late.';
  if (planned.reaches) return carryOn(`All as planned: ${of(planned)}; ${aim}.`);
  if (others.length === 0)
    return carryOn(
      `All as planned: ${of(planned)}; ${aim}. Nothing that is left may be left out${passed ? '. ' : ': '}${late}`,
    );
  const lost = (one: LiveOption): number => lostBy(one, lead);
  const [best] = others.filter((one) => one.reaches).sort((a, b) => lost(a) - lost(b));
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
  const counted = lead !== undefined && chosen.activity === lead.activity;
  const more = counted ? chosen.more! : (planned.more ?? null);
  const words = (one: LiveOption): string => optionWords(one, lead, title);
  // The next count up shows why it is no more.
  const above = counted
    ? others.find(
        (one) =>
          one.activity === chosen.activity &&
          one.leaveOut.length === 0 &&
          one.more === chosen.more! + 1 &&
          one !== chosen,
      )
    : undefined;
  const compared = [planned, ...(above ? [above] : []), chosen]
    .map((one) => `${words(one)}: ${of(one)}`)
    .join('; ');
  const noWay = best ? '' : ` No way reaches it${passed ? '. ' : ': '}${late}`;
  return {
    say: counted ? (more === 0 ? 'stop' : 'more') : 'carry-on',
    activity: planned.activity ?? null,
    more,
    leaveOut: chosen.leaveOut,
    why: `${compared}; ${aim}.${noWay}${chosen.condition === '' ? '' : ` ${chosen.condition}`}`,
  };
}

/** An option as part of a sentence. */
function optionWords(
  { activity, units, more, leaveOut }: LiveOption,
  lead: StopsEarly | undefined,
  title: (id: string) => string,
): string {
  const without = leaveOut.length === 0 ? '' : `without ${leaveOut.map(title).join(', ')}`;
  if (units === undefined || activity === undefined) return without || 'all as planned';
  if (leaveOut.includes(activity)) return without;
  const count =
    activity === lead?.activity
      ? more === 0
        ? units === 0
          ? `do not begin ${title(activity)}`
          : `stop at ${units}`
        : `${more} more`
      : `${units} of ${title(activity)}`;
  return without === '' ? count : `${count}, ${without}`;
}

/** Units of the counted work that an option still holds. */
const unitsOf = (one: LiveOption, lead: StopsEarly | undefined): number =>
  lead !== undefined && one.activity === lead.activity ? one.units! : (lead?.units ?? 0);

/** How much is left undone: units of what is going on weigh more than what may wait. */
function lostBy(one: LiveOption, lead: StopsEarly | undefined): number {
  const counted = lead !== undefined && one.activity === lead.activity;
  const units = counted ? lead.units - one.units! : 0;
  return units * 1_000 + one.leaveOut.length + (one.activity !== undefined && !counted ? 1 : 0);
}
