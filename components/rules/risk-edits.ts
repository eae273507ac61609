import type { RiskEvent, RiskSettings, RuleSet } from '../../src/model/index.js';
import { handedBackStep, recordedSource } from '../../src/engine/index.js';
import { withField } from './rule-edits.js';

/** Risk settings where the rules say nothing of them. */
export const noRisk: RiskSettings = { shape: 'triangular', events: [] };

export const riskOf = (rules: RuleSet): RiskSettings => rules.risk ?? noRisk;

/** The rules with other risk settings; without any where they say no more than the rules do without them. */
export function withRisk(rules: RuleSet, risk: RiskSettings): RuleSet {
  const plain =
    risk.shape === noRisk.shape &&
    risk.commonFactor === undefined &&
    risk.source === undefined &&
    risk.events.length === 0;
  return withField(rules, 'risk', plain ? undefined : risk);
}

export const withEvents = (rules: RuleSet, events: RiskSettings['events']): RuleSet =>
  withRisk(rules, { ...riskOf(rules), events });

export function withEvent(rules: RuleSet, index: number, event: RiskEvent): RuleSet {
  return withEvents(
    rules,
    riskOf(rules).events.map((item, at) => (at === index ? event : item)),
  );
}

export function withoutEvent(rules: RuleSet, index: number): RuleSet {
  return withEvents(
    rules,
    riskOf(rules).events.filter((_, at) => at !== index),
  );
}

/** An event that changes nothing until it is given a chance. */
export function withEventAdded(rules: RuleSet, name: string, recorded: boolean): RuleSet {
  const made: RiskEvent = {
    name,
    chance: 0,
    delay: recorded ? 'recorded' : { low: 15, likely: 30, high: 60 },
    step: handedBackStep,
    ...(recorded && { source: recordedSource }),
  };
  return withEvents(rules, [...riskOf(rules).events, made]);
}

/** What an event holds up, as a choice: `step lead-in Protect`, `activity A20`, `at`. */
export type HoldsUp = string;

export function holdsUpOf({ activity, step, stage }: RiskEvent): HoldsUp {
  if (activity !== undefined) return `activity ${activity}`;
  return step === undefined ? 'at' : `step ${stage ?? ''} ${step}`;
}

/** The event holding up something else; `at` is the moment where that is a moment. */
export function holdingUp(event: RiskEvent, choice: HoldsUp, at: string): RiskEvent {
  const { activity: _, step: __, stage: ___, at: ____, ...rest } = event;
  if (choice === 'at') return { ...rest, at };
  const [kind, stage, ...words] = choice.split(' ');
  if (kind === 'activity') return { ...rest, activity: choice.slice('activity '.length) };
  const named = stage === 'lead-in' || stage === 'lead-out' ? stage : undefined;
  return { ...rest, step: words.join(' '), ...(named && { stage: named }) };
}
