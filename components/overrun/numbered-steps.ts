import type { CostCurve } from '../../src/engine/index.js';

type CurveStep = CostCurve['steps'][number];

/** All steps at one minute of a curve. */
export interface StepGroup {
  /** Number of the mark on the chart, from 1; absent when none of its costs count, so that the line does not show it. */
  readonly mark: number | undefined;
  readonly atMinute: number;
  /** Rise of the total from the minute before. */
  readonly rise: string;
  readonly steps: readonly CurveStep[];
}

/** Groups the steps of a curve by minute and numbers those on the line from the left. */
export function numberedSteps(curve: CostCurve): StepGroup[] {
  const byMinute = new Map<number, CurveStep[]>();
  for (const step of curve.steps) {
    const group = byMinute.get(step.atMinute);
    if (group) group.push(step);
    else byMinute.set(step.atMinute, [step]);
  }
  let count = 0;
  return [...byMinute].map(([atMinute, steps]) => ({
    mark: steps.some((step) => step.counted) ? (count += 1) : undefined,
    atMinute,
    rise: steps[0]!.rise,
    steps,
  }));
}
