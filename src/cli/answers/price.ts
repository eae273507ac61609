import * as z from 'zod/mini';
import { headsOfCost } from '../../model/price-book.js';
import { optionsPart } from './options.js';
import * as p from './parts.js';
import { broken, planNamed } from './plan-parts.js';

const { chance, count, flag, list, moment, money, number, said, text, texts } = p;

const head = z.enum(headsOfCost);

export const overrunPart = z.object({
  overrunMinutes: count,
  handbackAt: moment,
  rows: list(
    z
      .object({
        head,
        code: text,
        title: text,
        amount: money,
        counted: said(flag, 'False: shown, and not in the total.'),
        formula: text,
        inputs: list(z.object({ name: text, value: text, unit: text })),
        source: text,
      })
      .check(z.meta({ id: 'headOfCost' })),
  ),
  total: money,
  notCounted: money,
  trains: list(
    z
      .object({
        train: text,
        dueAt: moment,
        leavesAt: moment,
        minutesLate: count,
        weight: number,
        cancelled: flag,
        countedMinutes: number,
      })
      .check(z.meta({ id: 'train' })),
  ),
});

const onSite = z.object({
  resource: text,
  amount: number,
  call: moment,
  lastWork: moment,
  leaves: moment,
  kept: flag,
  why: text,
  plannedMinutes: count,
  owed: money,
  owedFormula: text,
});

const keyDate = z.object({
  package: text,
  due: moment,
  forecast: p.momentOrNone,
  window: z.nullable(text),
  daysLate: z.nullable(count),
  amount: z.nullable(money),
  how: text,
  source: text,
});

export const riskPart = z.object({
  of: text,
  runs: count,
  seed: count,
  pOnTime: chance,
  expectedCost: money,
  standardError: money,
  p50Cost: money,
  p80Cost: money,
  p95Cost: money,
  exceedance: list(z.object({ cost: money, chanceOfMore: chance })),
  steps: list(
    z.object({
      atMinute: count,
      kind: z.enum([
        'threshold',
        'train-held',
        'train-cancelled',
        'rate-change',
        'least-hours',
        'cap',
      ]),
      head,
      code: text,
      name: text,
      counted: flag,
      chance,
      standardError: number,
    }),
  ),
});

export const priceAnswer = z.object({
  plan: z.optional(planNamed),
  broken: z.optional(broken),
  window: text,
  status: p.status,
  bookedEnd: moment,
  ...z.partial(overrunPart).shape,
  currency: text,
  rounding: z.enum(['half-up', 'half-even']),
  basis: z.enum(['actual-loss', 'damages']),
  overruns: list(z.extend(overrunPart, { minutes: count })),
  notPriced: texts,
  onSite: list(onSite),
  lengths: z.optional(
    list(z.object({ code: text, name: text, exceeded: flag, clockChangeDecides: flag, text })),
  ),
  keyDates: z.optional(list(keyDate)),
  nextMinute: z.object({ after: count, one: money, meanOfFifteen: money }),
  risk: said(z.nullable(riskPart), 'Null without planned work in the window.'),
  options: z.optional(z.nullable(optionsPart)),
});

/** The JSON of `price`. */
export type PriceAnswerJson = z.infer<typeof priceAnswer>;
export type OverrunPart = z.infer<typeof overrunPart>;
export type RiskPart = z.infer<typeof riskPart>;
