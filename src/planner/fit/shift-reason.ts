import type { Plan } from '../../model/index.js';
import { visitMinutes, type Task } from '../problem/problem.js';
import { sayReason } from '../reason-sentences.js';
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
      ...sayReason('longer-than-a-shift', {
        activity: task.activity.id,
        needed: minutes,
        longest: shifts.longestMinutes,
        changeover: shifts.changeoverMinutes,
      }),
    },
  ];
}
