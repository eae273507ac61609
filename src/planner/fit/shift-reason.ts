import { durationText } from '../../calendar/index.js';
import type { Plan } from '../../model/index.js';
import { visitMinutes, type Task } from '../problem/problem.js';
import type { Reason } from './types.js';

/** Work that goes on longer than any shift lasts, and that handing over breaks: no window takes it, however long. */
export function shiftReason({ rules }: Plan, task: Task): Reason[] {
  const { shifts } = rules;
  const minutes = visitMinutes(task, 1);
  if (!shifts || task.outside || shifts.changeoverMinutes === 0) return [];
  if (minutes <= shifts.longestMinutes) return [];
  return [
    {
      code: 'longer-than-a-shift',
      text: `${task.activity.id} needs ${durationText(minutes)} in one go; a shift lasts ${durationText(shifts.longestMinutes)} at the longest, and handing over takes its last ${durationText(shifts.changeoverMinutes)}, so no window takes it, however long`,
    },
  ];
}
