import * as z from 'zod/mini';
import { limitSetSchema } from './limit-set.js';
import { noiseLimitsSchema } from './noise-limits.js';
import { surenessSchema } from './sureness-schema.js';

const text = z.string().check(z.minLength(1));
const db = z.number().check(z.minimum(0), z.maximum(200));
const above0 = z.number().check(z.positive(), z.maximum(100_000));
const minutes = z.number().check(z.int(), z.minimum(0), z.maximum(100_000));
const days = z.number().check(z.int(), z.minimum(0), z.maximum(366));
const celsius = z.number().check(z.minimum(-70), z.maximum(110));

/** A building whose front hears the work. */
export const dwellingSchema = z.strictObject({
  name: text,
  /** Shortest distance from the line, in metres. */
  metres: above0,
  /** Where along the line it stands, in metres of chainage; absent: beside whatever work is looked at. */
  chainage: z.optional(z.number()),
  /** Soft ground counts from 25 m on; nearer, hard ground is taken. */
  ground: z._default(z.enum(['hard', 'soft']), 'hard'),
  /** Taken off for what stands between: rule of thumb 5 dB when just visible, 10 when fully hidden. */
  screeningDb: z._default(db, 0),
  /** Level without the work, by the name of the period, for limits that give way to it. */
  ambientDb: z._default(z.record(z.string(), db), {}),
});

export const noiseSettingsSchema = z.strictObject({
  limits: noiseLimitsSchema,
  dwellings: z.array(dwellingSchema),
  /** Share of the time at which plant is at work, where its row says nothing. */
  onTimePercent: z._default(z.number().check(z.positive(), z.maximum(100)), 100),
  /** Days in which the authority decides on an application for prior consent. */
  decisionDays: z._default(days, 28),
  /** Days of talks before the application. */
  talkDays: z._default(days, 0),
  /** The hours in which an activity would be over a limit are closed to it in every plan. */
  asClosedTime: z._default(z.boolean(), false),
});

export const liftingSettingsSchema = z.strictObject({
  /** Work that needs one of these resources lifts. */
  resources: z.array(text).check(z.minLength(1)),
  /** Highest permissible gust by the chart in use, at the height of the boom tip, in m/s. */
  chartLimitMps: above0,
  /** Height of the boom tip or the load, whichever is higher, in metres above ground. */
  heightMetres: above0,
  /** With it the limit is reduced for a load with much area: mass in t, area in m², drag coefficient. */
  load: z.optional(z.strictObject({ tonnes: above0, areaM2: above0, drag: above0 })),
  /** Minutes to wait after a gust above the limit. */
  settleMinutes: z._default(minutes, 0),
  /** Minutes to wait after the last lightning. */
  lightningMinutes: z._default(minutes, 30),
  /** Temperature in °C below which the crane may not work. */
  coldestC: z.optional(celsius),
  /** Hours that the forecast closes are closed to lifting work in every plan. */
  asClosedTime: z._default(z.boolean(), true),
  source: text,
  sureness: surenessSchema,
});

/** How fast concrete gains strength: sources disagree on the form and on its figures, so each is a setting. */
export const maturityModelSchema = z.discriminatedUnion('model', [
  /** M = sum of (T - T0) dt in °C hours; below T0 nothing. Sources disagree on T0: 0 or about -10 °C. */
  z.strictObject({ model: z.literal('temperature-time'), datumC: celsius }),
  /** Hours at the reference temperature: exp(-Q (1/T - 1/Ts)), kelvin. */
  z.strictObject({ model: z.literal('constant energy'), qKelvin: above0, referenceC: celsius }),
  /** Hours at 20 °C with an energy of B at 20 °C and over, and B + C (20 - T) below. */
  z.strictObject({ model: z.literal('energy by temperature'), bKj: above0, cKj: above0 }),
  /** Hours at 20 °C: ((T + 16) / 36)². */
  z.strictObject({ model: z.literal('square law') }),
]);

export const concreteSettingsSchema = z.strictObject({
  /** Maturity at which the work that waits may start: °C hours, or hours at the reference temperature, by the model. */
  maturity: above0,
  model: maturityModelSchema,
  /** Temperature taken where the table gives none. Absent: nothing is guessed, and work that waits is not placed. */
  otherwiseC: z.optional(celsius),
  source: text,
  sureness: surenessSchema,
});

/** What the place, its neighbours, its people and its weather ask of a plan. Every part is the user's; none is built in. */
export const siteSchema = z.strictObject({
  hours: z.optional(limitSetSchema),
  noise: z.optional(noiseSettingsSchema),
  lifting: z.optional(liftingSettingsSchema),
  concrete: z.optional(concreteSettingsSchema),
});

export type Site = z.infer<typeof siteSchema>;
export type Dwelling = z.infer<typeof dwellingSchema>;
export type NoiseSettings = z.infer<typeof noiseSettingsSchema>;
export type LiftingSettings = z.infer<typeof liftingSettingsSchema>;
export type ConcreteSettings = z.infer<typeof concreteSettingsSchema>;
export type MaturityModel = z.infer<typeof maturityModelSchema>;
