import type { CostCurve } from '../../src/engine/index.js';

type CurveStep = CostCurve['steps'][number];

/** All that happens at one minute of a curve. */
export interface StepGroup {
  /** The mark on the picture, from 1; absent where nothing of it is counted, so that the line does not show it. */
  readonly mark: number | undefined;
  readonly atMinute: number;
  /** What the total gains from the minute before. */
  readonly rise: string;
  readonly steps: readonly CurveStep[];
}

/** The steps of a curve by minute, those on the line numbered from the left. */
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
