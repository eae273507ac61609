// Headings of a plan of work.

/** What a field is called in a file, first our own heading, then plain and trade words for the same thing. */
export const placementFields = {
  placements: {
    activity: ['activity id', 'activity ref', 'activity code', 'work', 'task', 'id'],
    window: ['window id', 'window ref', 'access window', 'possession', 'possession ref', 'in'],
    from: ['start', 'begin', 'begins', 'starts', 'planned start', 'start time', 'starts at'],
    to: [
      'end',
      'finish',
      'ends',
      'finishes',
      'planned finish',
      'planned end',
      'finish time',
      'until',
    ],
    units: ['unit', 'quantity', 'amount', 'units planned'],
    note: ['notes', 'remark', 'remarks', 'comment'],
  },
} as const;
