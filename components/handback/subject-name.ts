import { grantStep, handedBackStep, lineOfGrant } from '../../src/engine/index.js';
import type { CutOff } from './result-parts.js';
import type { HandbackStrings } from './strings.js';

/** What a step or a piece of work is called: as it was typed, but for the granting and handing back that every shift has. */
export function subjectName(
  { activity, name }: Pick<CutOff, 'activity' | 'name'>,
  strings: HandbackStrings,
): string {
  if (activity !== undefined) return name;
  if (name === grantStep) return strings.logGranted;
  if (name === handedBackStep) return strings.lineHandedBack;
  const line = lineOfGrant(name);
  return line === undefined ? name : strings.lineGranted(line);
}
