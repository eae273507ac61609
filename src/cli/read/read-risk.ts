import {
  riskFileSchema,
  type Fault,
  type Plan,
  type RiskFile,
  type RuleSet,
} from '../../model/index.js';
import { unknownEvents } from '../../risk/index.js';
import { decodeBytes, jsonFrom, readTable, riskEventsFrom } from '../../tables/index.js';
import { readProblem } from './read-problems.js';
import { fileName, readFile } from './read-sources.js';

/**
 * The plan with the risk settings of a file instead of those of its rules: a table of events (CSV), or events, shape,
 * common factor and wanted chance (JSON).
 *
 * @throws {UsageError} When the file cannot be read.
 */
export function withRiskFile(
  plan: Plan,
  path: string,
): { readonly plan: Plan; readonly faults: readonly Fault[] } {
  const file = fileName(path);
  const { text } = decodeBytes(readFile(path, 'risk'));
  const read = /^\s*\{/.test(text)
    ? jsonFrom(text, file, 'risk', riskFileSchema)
    : eventsOf(text, file, plan);
  const { value } = read;
  if (!value) return { plan, faults: read.faults };
  const { chance, ...risk } = value;
  const rules: RuleSet = {
    ...plan.rules,
    risk,
    ...(chance !== undefined && { handback: { chance } }),
  };
  return {
    plan: { ...plan, rules: { ...plan.rules, ...rules } },
    faults: [...read.faults, ...unknownNames(value, plan, file)],
  };
}

function eventsOf(
  text: string,
  file: string,
  plan: Plan,
): { value?: RiskFile; faults: readonly Fault[] } {
  const { events, faults } = riskEventsFrom(readTable(text), { file, zone: plan.zone });
  const { shape = 'triangular', commonFactor } = plan.rules.risk ?? {};
  return {
    value: { shape, ...(commonFactor && { commonFactor }), events: [...events] },
    faults,
  };
}

function unknownNames({ events }: RiskFile, plan: Plan, file: string): readonly Fault[] {
  return unknownEvents(plan, events).map(({ event, of, name }) => ({
    ...readProblem('event-not-known', { event, of, name }),
    code: `event-${of}-not-known`,
    severity: 'error',
    file,
  }));
}
