import * as z from 'zod/mini';
import { cutOff, live, subject, windowVerdict } from './live.js';
import * as p from './parts.js';
import { broken, planNamed } from './plan-parts.js';

const { chance, count, flag, list, moment, momentOrNone, number, said, text, texts, whole } = p;

const notPlaced = z.object({
  activity: text,
  title: text,
  units: z.optional(count),
  fixedHere: flag,
});

const line = z.object({
  line: said(text, 'Empty: all of the window.'),
  plannedClear: momentOrNone,
  open: texts,
  notMadeGood: said(texts, 'Opened here and not made good in this window.'),
  clear: flag,
});

const share = { probability: chance, standardError: number };

const outlook = z.object({
  deadlineMinutes: whole,
  onTime: z.object(share),
  expectedOverrunMinutes: number,
  overrunStandardError: number,
  laterThan: list(z.object({ minutes: whole, ...share })),
});

const verdictParts = z.object({
  margin: z.object({
    verdict: z.enum(['held', 'eaten', 'overrun']),
    minutes: whole,
    requiredMinutes: count,
    shortByMinutes: count,
  }),
  chance: z.object({
    wanted: z.nullable(chance),
    pOnTime: chance,
    standardError: number,
    reached: said(z.nullable(flag), 'By these runs; null where no chance is wanted.'),
    close: said(
      z.nullable(flag),
      'Within 2.5 standard errors of the chance wanted: other runs may well say otherwise.',
    ),
    marginNeededMinutes: count,
  }),
});

export const handbackWindow = z.object({
  window: text,
  status: p.status,
  bookedEnd: moment,
  agreedEnd: said(
    momentOrNone,
    'An earlier end, agreed in the shift: margin, verdict and chance are held against it.',
  ),
  plannedClear: moment,
  leadOutMinutes: count,
  plannedHandback: moment,
  marginMinutes: said(whole, 'Booked end less the planned handback.'),
  requiredMinutes: count,
  verdict: windowVerdict,
  verdictParts,
  cutOffs: list(cutOff),
  decisions: list(
    z.object({ activity: text, pointOfNoReturn: momentOrNone, latestAbort: momentOrNone }),
  ),
  goPoints: list(
    z.object({
      id: text,
      name: text,
      holder: text,
      at: moment,
      before: z.optional(text),
      tooLateFor: texts,
    }),
  ),
  inputsStamp: text,
  pOnTime: chance,
  pOnTimeStandardError: number,
  outlook,
  p50: moment,
  p80: moment,
  p90: moment,
  p95: moment,
  expectedOverrunMinutes: number,
  runs: count,
  seed: count,
  criticality: list(z.extend(subject, { share: chance })),
  helpsMost: list(z.extend(subject, { probabilityGain: number, meanGainMinutes: number })),
  units: list(
    z.object({
      activity: text,
      chances: list(z.object({ units: count, onTime: z.object(share) })),
      unitsWithinConfidence: count,
    }),
  ),
  notPlaced: list(notPlaced),
  whole: line,
  lines: list(line),
  speedLimits: list(
    z.object({
      activity: text,
      title: text,
      limit: z.object({ value: number, unit: z.enum(['mph', 'km/h']) }),
      liftedBy: z.nullable(z.object({ activity: text, window: z.nullable(text) })),
    }),
  ),
  live: said(z.nullable(live), 'Null without --at TIME.'),
});

export const handbackAnswer = z.object({
  plan: planNamed,
  broken: z.optional(broken),
  windows: list(handbackWindow),
  notPlaced: list(z.extend(notPlaced, { window: text })),
  notWorkedOut: z.optional(
    said(texts, 'Windows for whose handback no step was left: nothing is said of them.'),
  ),
});

/** The JSON of `handback`. */
export type HandbackAnswer = z.infer<typeof handbackAnswer>;
export type HandbackWindow = z.infer<typeof handbackWindow>;
export type LineJson = z.infer<typeof line>;
