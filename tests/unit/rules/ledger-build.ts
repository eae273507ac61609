import { isoText, type Instant, type Interval } from '../../../src/calendar/index.js';
import {
  ruleSetSchema,
  type AccessWindow,
  type Needs,
  type RuleSet,
} from '../../../src/model/index.js';
import type { Ledger } from '../../../src/rules/index.js';
import { at as atClock, zone } from '../../helpers/clock.js';

export { zone };

/** A time that clocks show once. */
export const at = (text: string): Instant => atClock(text, 'reject');

export const between = (start: string, end: string): Interval => ({
  start: at(start),
  end: at(end),
});

/** A confirmed window, by default a Saturday night of eight hours on which no clock changes. */
export function aWindow(
  more: Partial<AccessWindow> = {},
  start = '2027-05-01 23:00',
  end = '2027-05-02 07:00',
): AccessWindow {
  return {
    id: 'W1',
    title: '',
    ...between(start, end),
    zone,
    lines: [],
    isolation: [],
    status: 'confirmed',
    trainsAfter: '',
    ...more,
  };
}

export function aRuleSet(more: Record<string, unknown>): RuleSet {
  return ruleSetSchema.parse({ schema: 1, name: 'test', ...more });
}

export const needs = (isolation: readonly string[] = [], loud = false): Needs => ({
  isolation,
  loud,
});

/** `23:00-23:30 lead-in Place protection`, a line a row. */
export function shown(ledger: Ledger): string[] {
  const clock = (moment: Instant): string => isoText(moment, zone).slice(11, 16);
  return ledger.rows.map((row) => `${clock(row.start)}-${clock(row.end)} ${row.kind} ${row.rule}`);
}

// Steps and a section to be isolated, as the tests of the ledger need them.
export const protection = { step: 'Place protection', minutes: 30 };
export const worksite = { step: 'Set up worksite', minutes: 20 };
export const isolate = { step: 'Isolate', minutes: 45, when: 'isolation' };
export const giveUp = { step: 'Give up isolation', minutes: 30, when: 'isolation' };
export const lift = { step: 'Lift protection', minutes: 15 };
export const s1 = [{ section: 'S1' }];
