// Headings of what was seen during a shift, and of what may happen in one.

/** What a field is called in a file, first our own heading, then plain and trade words for the same thing. */
export const shiftFields = {
  actuals: {
    activity: ['activity id', 'activity ref', 'activity code', 'work', 'task', 'id'],
    step: ['step name', 'lead in step', 'lead out step'],
    stage: ['side', 'lead in or lead out', 'part'],
    line: ['line granted', 'track granted'],
    started: ['start', 'started at', 'actual start', 'start time', 'began', 'begun'],
    finished: ['finish', 'finished at', 'actual finish', 'finish time', 'end', 'ended', 'done at'],
    'units done': ['units', 'done', 'units in place', 'quantity done', 'completed'],
    'units at': ['units done at', 'last unit at', 'counted at'],
    'minutes left': ['most likely left', 'time left', 'remaining', 'minutes remaining'],
    'least left': ['at least', 'least minutes left', 'minutes left low', 'left low'],
    'most left': ['at most', 'most minutes left', 'minutes left high', 'left high'],
    expected: ['expected at', 'grant expected', 'said to come'],
    'asked back by': ['wanted back by', 'line wanted by', 'early handback'],
    'agreed end': ['end agreed', 'agreed earlier end', 'handback agreed'],
  },
  events: {
    event: ['name', 'risk', 'what', 'title', 'description'],
    chance: ['probability', 'likelihood', 'share'],
    minutes: ['delay', 'most likely', 'minutes likely', 'delay minutes'],
    'minutes low': ['least', 'delay low', 'at least'],
    'minutes high': ['most', 'delay high', 'at most'],
    window: ['access window', 'possession', 'window id'],
    activity: ['activity id', 'holds up', 'work', 'task'],
    step: ['step name', 'lead in step', 'lead out step'],
    stage: ['side', 'lead in or lead out', 'part'],
    at: ['time', 'when', 'from', 'moment'],
    source: ['sources', 'where from', 'evidence'],
  },
} as const;
