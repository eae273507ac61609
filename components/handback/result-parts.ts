import type { HandbackResult } from '../../src/engine/index.js';

/** Parts of a handback result under the names the drawing uses. */
export type Chance = HandbackResult['simulation']['outlook']['onTime'];
export type CutOff = HandbackResult['cutOffs'][number];
export type LiveOption = NonNullable<HandbackResult['live']>['options'][number];
export type Advice = NonNullable<HandbackResult['live']>['advice'];
export type Verdict = HandbackResult['verdict'];

/** What is drawn beside a result: where and in what words. */
export interface Setting<Strings> {
  readonly zone: string;
  readonly strings: Strings;
}

/** The end that counts by its name: the booked one, or the earlier one that the shift has agreed to. */
export const endName = (
  { bookedBefore }: HandbackResult,
  strings: { readonly bookedEnd: string; readonly agreedEnd: string },
): string => (bookedBefore === null ? strings.bookedEnd : strings.agreedEnd);

/** Title of an activity by its id, from the cut-offs, which name every one in the window; else the id. */
export function titleOf(result: HandbackResult, activity: string): string {
  return result.cutOffs.find((cutOff) => cutOff.activity === activity)?.name ?? activity;
}
export type GoPointTime = HandbackResult['goPoints'][number];
