import type { Instant } from '../../calendar/index.js';
import {
  joined,
  type AccessWindow,
  type AgreedPlan,
  type Phrase,
  type Placement,
  type PriceBook,
} from '../../model/index.js';
import { planId } from '../../planner/plan-id.js';
import type { ReportWord } from './english/words.js';
import type { ReportFact } from './report.js';
import { say, word } from './say.js';

/** The plan of the work that figures rest on, and how it came to be. */
export interface ReportPlan {
  readonly placements: readonly Placement[];
  /** `agreed`: by people, as `agreed` says; `proposed`: found by a search and not agreed; `given`: by whoever asked. */
  readonly standing: 'agreed' | 'proposed' | 'given';
  readonly agreed?: Omit<AgreedPlan, 'placements'>;
  /** Some of it no longer holds in the tables as they are. */
  readonly broken?: boolean;
}

/** What every report of money says of the plan and the prices behind it, as whoever asks for the report knows it. */
export interface ReportBasis {
  readonly window: AccessWindow;
  /** Name of the document. */
  readonly document: string;
  /** Absent: no plan of the work. */
  readonly plan?: ReportPlan | undefined;
  readonly prices: Pick<PriceBook, 'name' | 'source'>;
  /** When the report was made; absent: not said. */
  readonly madeAt?: Instant;
}

/** A moment by the clock in the zone that the report names. */
export const timeText = (at: Instant, { zone }: AccessWindow): Phrase =>
  say('moment', { at, zone });

export const money = (currency: string, amount: string): Phrase =>
  say('money', { amount, currency });

/** A column of sums, with their currency. */
export const inCurrency = (what: ReportWord, currency: string): Phrase =>
  joined([word(what), currency], ', ');

/** The facts with which every report begins. */
export function basisFacts(basis: ReportBasis): readonly ReportFact[] {
  const { window, plan, prices, madeAt } = basis;
  return [
    {
      label: word('Window'),
      value: window.title === '' ? window.id : `${window.id}, ${window.title}`,
    },
    { label: word('Status'), value: word(window.status) },
    { label: word('Booked start'), value: timeText(window.start, window) },
    { label: word('Booked end'), value: timeText(window.end, window) },
    { label: word('Times'), value: say('by-clock-in', { zone: window.zone }) },
    { label: word('Document'), value: basis.document },
    { label: word('Plan of the work'), value: plan ? planText(plan, window) : word('none given') },
    { label: word('Price book'), value: `${prices.name}. ${prices.source}` },
    ...(madeAt === undefined ? [] : [{ label: word('Made'), value: timeText(madeAt, window) }]),
  ];
}

function planText(
  { placements, standing, agreed, broken = false }: ReportPlan,
  { zone }: AccessWindow,
): Phrase {
  const id = planId(placements);
  const plan = agreed
    ? say('agreed-plan', {
        id,
        name: agreed.name,
        revision: agreed.revision,
        agreed: { at: agreed.agreedAt, zone },
        by: agreed.by || null,
      })
    : say(standing === 'given' ? 'plan-as-given' : 'plan-proposed', { id });
  return broken ? say('plan-broken', { plan }) : plan;
}
