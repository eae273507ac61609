import type { Curfew, RuleSet, Step } from '../../src/model/index.js';

export type StepList = 'leadIn' | 'leadOut';

/** The object without a field where its value is undefined: absent is not the same as empty to the schema. */
export function withField<T extends object, K extends keyof T>(
  item: T,
  field: K,
  value: T[K] | undefined,
): T {
  if (value !== undefined) return { ...item, [field]: value };
  return Object.fromEntries(Object.entries(item).filter(([name]) => name !== field)) as T;
}

/** A step changed; those that start with it follow its new name. Everything else of the rules stays. */
export function withStep(rules: RuleSet, list: StepList, index: number, step: Step): RuleSet {
  const old = rules[list][index]?.step;
  const steps = rules[list].map((item, at) => {
    if (at === index) return step;
    return old !== undefined && item.alongside === old ? { ...item, alongside: step.step } : item;
  });
  return renamedInEvents({ ...rules, [list]: steps }, old, step.step);
}

/** Events that hold up a step follow its new name. */
function renamedInEvents(rules: RuleSet, old: string | undefined, name: string): RuleSet {
  const { risk } = rules;
  if (!risk || old === undefined || old === name) return rules;
  const stays = [...rules.leadIn, ...rules.leadOut].some((item) => item.step === old);
  const events = risk.events.map((item) =>
    item.step === old && !stays ? { ...item, step: name } : item,
  );
  return { ...rules, risk: { ...risk, events } };
}

export function withStepAdded(rules: RuleSet, list: StepList, name: string): RuleSet {
  return { ...rules, [list]: [...rules[list], { step: name, minutes: 0, when: 'always' }] };
}

/** Without a step; those that started with it follow the steps before them. */
export function withoutStep(rules: RuleSet, list: StepList, index: number): RuleSet {
  const gone = rules[list][index]?.step;
  return {
    ...rules,
    [list]: rules[list]
      .filter((_, at) => at !== index)
      .map((item) =>
        item.alongside !== undefined && item.alongside === gone
          ? withField(item, 'alongside', undefined)
          : item,
      ),
  };
}

export function withStepMoved(rules: RuleSet, list: StepList, from: number, to: number): RuleSet {
  const steps = [...rules[list]];
  steps.splice(to, 0, ...steps.splice(from, 1));
  return { ...rules, [list]: steps };
}

/** Whether steps would wait for each other in a circle. */
export function inCircle(steps: readonly Step[]): boolean {
  const named = new Map(steps.map((step) => [step.step, step]));
  return steps.some((start) => {
    let at: Step | undefined = start;
    for (let stepped = 0; stepped <= steps.length; stepped += 1) {
      at = at?.alongside === undefined ? undefined : named.get(at.alongside);
      if (at === undefined) return false;
      if (at === start) return true;
    }
    return true;
  });
}

export function withCurfew(rules: RuleSet, index: number, curfew: Curfew): RuleSet {
  return { ...rules, curfews: rules.curfews.map((item, at) => (at === index ? curfew : item)) };
}

export function withCurfewAdded(rules: RuleSet, name: string): RuleSet {
  const made: Curfew = { name, bars: 'loud', from: '23:00', to: '07:00' };
  return { ...rules, curfews: [...rules.curfews, made] };
}

export function withoutCurfew(rules: RuleSet, index: number): RuleSet {
  return { ...rules, curfews: rules.curfews.filter((_, at) => at !== index) };
}

/** A name not yet in a list: the first of `New step 1`, `New step 2` ... that is free. */
export function freeName(taken: readonly string[], name: (number: number) => string): string {
  let number = 1;
  while (taken.includes(name(number))) number += 1;
  return name(number);
}
