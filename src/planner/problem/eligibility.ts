import type { AccessWindow, Activity } from '../../model/index.js';

export type NeverCode =
  | 'withdrawn'
  | 'fixed-elsewhere'
  | 'lines-not-blocked'
  | 'outside-extent'
  | 'isolation-not-booked';

const codes: readonly NeverCode[] = [
  'withdrawn',
  'fixed-elsewhere',
  'lines-not-blocked',
  'outside-extent',
  'isolation-not-booked',
];

/** Why a window can never take an activity, however long it were; empty when it can. Times, resources and links are not looked at. */
export function neverCodes(window: AccessWindow, activity: Activity): readonly NeverCode[] {
  return neverCode(window, activity) === undefined
    ? none
    : codes.filter((code) => isBarredBy(code, window, activity));
}

const none: readonly NeverCode[] = [];

/** The first of `neverCodes`; `undefined` when the window can take the activity. */
export function neverCode(window: AccessWindow, activity: Activity): NeverCode | undefined {
  for (const code of codes) if (isBarredBy(code, window, activity)) return code;
  return undefined;
}

function isBarredBy(code: NeverCode, window: AccessWindow, activity: Activity): boolean {
  switch (code) {
    case 'withdrawn':
      return window.status === 'withdrawn';
    case 'fixed-elsewhere':
      return activity.window !== undefined && activity.window !== window.id;
    case 'lines-not-blocked':
      return (
        window.lines.length > 0 && !activity.lines.every((line) => window.lines.includes(line))
      );
    case 'outside-extent': {
      const { extent } = activity;
      if (!extent || !window.extent) return false;
      return extent.from < window.extent.from || extent.to > window.extent.to;
    }
    case 'isolation-not-booked':
      return activity.isolation.some((section) => !isBooked(window, section));
  }
}

export function isBooked({ isolation }: Pick<AccessWindow, 'isolation'>, section: string): boolean {
  return isolation.some((booked) => booked.section === section);
}
