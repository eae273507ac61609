import { MINUTE, type Instant } from '../../calendar/index.js';
import type { AccessWindow, RuleSet, Step } from '../../model/index.js';
import { layOut, ledgerOf, type Ledger } from '../../rules/index.js';

/** A lead-in or lead-out step as it would lie in a window. */
export interface SketchStep {
  readonly list: 'leadIn' | 'leadOut';
  /** Place in its list of the rule set. */
  readonly index: number;
  readonly step: Step;
  /** Null where the step does not apply to such work. */
  readonly at: { readonly start: Instant; readonly end: Instant } | null;
  /** The step it starts with. */
  readonly beside?: string;
}

/** How a rule set would lie in one window, before any minute of overlap is given to one row. */
export interface RuleSketch {
  readonly window: AccessWindow;
  readonly ledger: Ledger;
  /** Lead-in, then lead-out, in the order of their lists. */
  readonly steps: readonly SketchStep[];
}

/** A window with no times but its own, to lay rules in; it isolates one section all the while. */
export function sketchWindow(start: Instant, minutes: number, zone: string): AccessWindow {
  return {
    id: '',
    title: '',
    start,
    end: start + minutes * MINUTE,
    zone,
    lines: [],
    isolation: [{ section: sketchSection }],
    status: 'confirmed',
    trainsAfter: '',
  };
}

const sketchSection = 'S';

/**
 * Where the steps of a rule set lie in a window, with what the window's ledger is then. Steps run past the ends of a
 * window that is too short for them: `ledger.shortfallMinutes` says by how much.
 */
export function ruleSketch(
  rules: RuleSet,
  window: AccessWindow,
  work: { readonly isolated: boolean; readonly loud: boolean },
): RuleSketch {
  const sections = window.isolation.map((section) => section.section);
  const needs = {
    isolation: work.isolated ? (sections.length > 0 ? sections : [sketchSection]) : [],
    loud: work.loud,
  };
  const within =
    sections.length > 0 ? window : { ...window, isolation: [{ section: sketchSection }] };
  const into = layOut(rules.leadIn, needs, window.start);
  const out = layOut(rules.leadOut, needs, 0);
  const length = Math.max(0, ...out.map((step) => step.end));
  const outStart = window.end - rules.margin.minutes * MINUTE - length;
  const sketchOf = (list: SketchStep['list'], placed: typeof into, shift: number): SketchStep[] =>
    rules[list].map((step, index) => {
      const found = placed.find((item) => item.step === step);
      return {
        list,
        index,
        step,
        at: found ? { start: found.start + shift, end: found.end + shift } : null,
        ...(found?.beside === undefined ? {} : { beside: found.beside }),
      };
    });
  return {
    window,
    ledger: ledgerOf(within, needs, rules),
    steps: [...sketchOf('leadIn', into, 0), ...sketchOf('leadOut', out, outStart)],
  };
}
