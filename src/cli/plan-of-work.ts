import { english } from '../engine/english/say.js';
import { isoText } from '../calendar/index.js';
import { checked } from '../engine/checked.js';
import { allocate as search } from '../engine/search.js';
import type { Note, Placement, Plan } from '../model/index.js';
import { givenPlan, standingPlan } from '../planner/given/given-plan.js';
import type { Broken, StandingPlan } from '../planner/given/types.js';
import { planId } from '../planner/plan-id.js';
import type { Allocation } from '../planner/search/types.js';
import { verify, type PlanFault } from '../verify/index.js';
import type { Arguments } from './arguments.js';
import type { GivenFile } from './read/read-plan.js';

/** How an answer identifies its plan of work: by id, and by the agreed name and revision. */
export interface PlanNamed {
  readonly id: string;
  readonly given: boolean;
  readonly name?: string;
  readonly revision?: number;
  /** ISO 8601 with offset. */
  readonly agreedAt?: string;
  readonly by?: string;
}

/** The identification of a given plan, for an answer. */
export function namedAs({ named }: Pick<GivenFile, 'named'>, zone: string): PlanNamed {
  const { agreedAt, ...said } = named;
  return {
    ...said,
    given: true,
    ...(agreedAt !== undefined && { agreedAt: isoText(agreedAt, zone) }),
  };
}

/** The plan of work that an answer is based on, and its origin; `Known` is what is worked out of it. */
export interface PlanOfWork<Known = Allocation> {
  readonly allocation: Known;
  /** Its identification in the answer. */
  readonly plan: PlanNamed;
  /** The pieces of a given plan that no longer hold. */
  readonly broken: readonly Broken[];
  readonly notes: readonly Note[];
}

type Stands = Omit<StandingPlan, 'broken'>;

/** Makes a plan by search. */
export function planWork(
  plan: Plan,
  asked: Pick<Arguments, 'first' | 'seconds' | 'seed'>,
  keep: readonly Placement[] = [],
): Allocation {
  return search(plan, {
    first: asked.first,
    ...(asked.seconds !== undefined && { seconds: asked.seconds }),
    seed: asked.seed,
    clock: () => performance.now(),
    ...(keep.length > 0 && { keep }),
  });
}

function ofGiven<Known extends Stands>(
  plan: Plan,
  given: GivenFile,
  broken: readonly Broken[],
  allocation: Known,
  faults?: readonly PlanFault[],
): PlanOfWork<Known> {
  return {
    allocation,
    plan: namedAs(given, plan.zone),
    broken,
    notes: [...faultNotes(faults), ...brokenNotes(broken), ...unsaidNotes(allocation)],
  };
}

/** What of the given plan of work stands, checked; neither floats nor key dates are worked out. */
export function standingWork(plan: Plan, given: GivenFile): PlanOfWork<Stands> {
  const { broken, ...allocation } = standingPlan(plan, given.placements);
  return ofGiven(plan, given, broken, allocation, verify(plan, allocation));
}

/** The given plan of work, checked against the files; without one, a plan made for the answer. */
export function planOfWork(
  plan: Plan,
  asked: Pick<Arguments, 'first' | 'seconds' | 'seed'>,
  given?: GivenFile,
): PlanOfWork {
  if (given) {
    const { first } = asked;
    const { proof } = given;
    const { allocation: made, broken } = givenPlan(plan, given.placements, { first, proof });
    const allocation = checked(plan, made);
    return ofGiven(plan, given, broken, allocation, allocation.certificate.faults);
  }
  const allocation = planWork(plan, asked);
  const id = planId(allocation.placements);
  return {
    allocation,
    plan: { id, given: false },
    broken: [],
    notes: [
      ...faultNotes(allocation.certificate.faults),
      ...unsaidNotes(allocation),
      {
        code: 'plan-made',
        text: `No plan of work was given (--plan FILE): plan ${id} was made for this answer. Another search may find another plan.`,
      },
    ],
  };
}

/** Faults that the independent check found in a plan; empty when it holds. */
export function faultNotes(faults: readonly PlanFault[] = []): readonly Note[] {
  if (faults.length === 0) return [];
  return [
    { code: 'check-failed', text: 'THE CHECK FOUND A FAULT: do not use this plan.' },
    ...faults.map(({ code, text }) => ({
      code: `check-${code}`,
      text: `The check found: ${english(text)}.`,
    })),
  ];
}

/** Most pairs that the note names; `allocate --json` lists all. */
const MOST_PAIRS = 3;

/** Notes on pairs of pieces between which the plan does not state whether the line is fit to run. */
function unsaidNotes({ unstated, notes }: Stands): readonly Note[] {
  const open = notes.filter((note) => note.code === 'left-open');
  if (unstated.length === 0) return open;
  const shown = unstated.slice(0, MOST_PAIRS).map((item) => item.text);
  const more = unstated.length - shown.length;
  return [
    {
      code: 'unstated',
      text: `Not said, so nobody can call this plan safe to run (${unstated.length}): ${shown.join('; ')}${more > 0 ? `; and ${more} more, which allocate lists` : ''}.`,
    },
    ...open,
  ];
}

function brokenNotes(broken: readonly Broken[]): readonly Note[] {
  if (broken.length === 0) return [];
  const count = new Set(broken.map((item) => item.activity)).size;
  return [
    {
      code: 'plan-broken',
      text: `The plan given does not hold in these files: ${count} ${count === 1 ? 'activity is' : 'activities are'} named under "broken". Nothing was moved; what is not in an open window is left out of the figures.`,
    },
  ];
}

/** Text lines that name the plan and what in it no longer holds. */
export function planLines({ plan, broken }: Pick<PlanOfWork, 'plan' | 'broken'>): string[] {
  return [
    `Plan of work ${planWords(plan)}, ${plan.given ? 'as given' : 'made for this answer'}.`,
    ...(broken.length === 0
      ? []
      : ['Of the plan given, this no longer holds:', ...broken.map((item) => `  ${item.text}`)]),
  ];
}

/** `3, "Spring" (0123456789abcdef)`, or the id alone. */
export const planWords = ({ id, name, revision }: PlanNamed): string =>
  name === undefined ? id : `${revision === undefined ? '' : `${revision}, `}"${name}" (${id})`;
