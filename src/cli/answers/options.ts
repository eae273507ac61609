// The JSON of `price --options` about the options.
import * as z from 'zod/mini';
import * as p from './parts.js';

const { chance, count, fault, list, moment, money, number, said, text, texts, whole } = p;

const named = {
  id: text,
  kind: z.enum([
    'as-planned',
    'another-order',
    'one-unit-less',
    'extra-resource',
    'earlier-cut-off',
    'longer-window',
    'split',
    'own',
  ]),
  name: text,
};

const priced = z.object({
  ...named,
  state: z.literal('priced'),
  changes: texts,
  expectedTotal: money,
  standardError: money,
  p50Total: money,
  p80Total: money,
  p95Total: money,
  difference: said(money, 'Expected total less that of as planned.'),
  differenceError: money,
  verdict: z.enum(['the reference', 'cheaper', 'dearer', 'the same', 'too close to call']),
  parts: list(
    z.object({
      part: z.enum(['overrun', 'plant', 'booking', 're-booking', 'key-dates']),
      what: text,
      amount: money,
      formula: text,
      source: text,
    }),
  ),
  handbacks: list(
    z.object({ window: text, plannedHandback: moment, marginMinutes: whole, pOnTime: chance }),
  ),
  faults: list(fault),
  notes: texts,
});

const refused = z.object({
  ...named,
  state: z.enum(['infeasible', 'nothing-to-vary']),
  reason: text,
});

export const optionsPart = z.object({
  runs: count,
  seed: count,
  cheapest: text,
  tied: texts,
  options: list(z.union([priced, refused])),
  breakEvens: list(
    z.object({
      cheaper: text,
      dearer: text,
      dearerBy: money,
      tooCloseToCall: p.flag,
      overrunTimes: z.nullable(number),
      lateChance: z.nullable(z.object({ now: number, at: number })),
      ownPrices: list(z.object({ option: text, what: text, amount: money })),
      overrunMinutes: z.nullable(count),
      text,
    }),
  ),
  notPriced: texts,
  notes: texts,
});

export type OptionsPart = z.infer<typeof optionsPart>;
