// Every option of the command line: its value, the verbs that use it, and what it does.
export const verbs = [
  'usable',
  'fit',
  'allocate',
  'handback',
  'price',
  'book',
  'summary',
  'look-ahead',
  'people',
  'noise',
  'lifting',
] as const;
export type Verb = (typeof verbs)[number];

export const verbHelp: { readonly [V in Verb]: string } = {
  usable: 'what is left of each window for work, and where the rest goes',
  fit: 'which work package fits which window, by how much, or why not',
  allocate: 'the best plan found over all windows, key dates, float, certificate',
  handback: 'margin, cut-off times and chance of handing back on time, window by window',
  price: 'what a late handback costs, by head of cost',
  book: 'booking dates of each window',
  summary: 'a plan of work on one page: windows, key dates, chances, what changed',
  'look-ahead':
    'the weeks to come: windows, work, people and plant, bookings due, what is not ready',
  people: 'a roster checked against limits on hours',
  noise: 'in which hours work may be loud',
  lifting: 'hours lost to wind, and when concrete has cured',
};

export interface Option {
  /** Its value, as named in help; absent: it takes none. */
  readonly takes?: string;
  /** It may be repeated. */
  readonly several?: true;
  /** It names an input file; `-` is standard input. */
  readonly reads?: true;
  /** Verbs that use it; absent: all. */
  readonly verbs?: readonly Verb[];
  readonly help: string;
}

const planned = ['allocate', 'handback', 'price', 'summary'] as const;
const searched = [...planned, 'look-ahead'] as const;
const file = { takes: 'FILE', reads: true } as const;

/** In the order in which help lists them. */
export const options = {
  windows: { ...file, help: 'windows.csv or a workbook: when the track can be had' },
  work: { ...file, help: 'work.csv or a workbook: what is to be done' },
  rules: { ...file, help: 'rules.json: lead-in, lead-out, margin, curfews, shifts' },
  resources: { ...file, help: 'resources.csv: plant and people' },
  prices: { ...file, help: 'prices.json: the price book' },
  trains: { ...file, help: 'trains.csv: trains due after the booked end' },
  site: {
    ...file,
    help: 'limits on hours, noise, lifting and curing; time that they close is closed in every verb',
  },
  roster: { ...file, help: 'who works when' },
  forecast: { ...file, help: 'wind and temperature to come' },
  temperatures: { ...file, help: 'temperatures for curing' },
  plant: { ...file, verbs: ['noise'], help: 'how loud plant is' },
  holidays: { ...file, verbs: ['price'], help: 'public holidays, a date a line' },
  booking: {
    ...file,
    verbs: ['book', 'look-ahead'],
    help: 'booking rules; an example is used if not given',
  },
  actuals: {
    ...file,
    several: true,
    verbs: ['handback'],
    help: 'what was recorded of the shift up to --at TIME; give it again for the log of an earlier shift',
  },
  decisions: {
    ...file,
    verbs: ['handback'],
    help: 'go/no-go points, and work that cannot be undone',
  },
  columns: {
    takes: '"HEADING=COLUMN"',
    several: true,
    help: 'what a heading means: "work:Ort=place" reads Ort of the work as place, "Remarks=" leaves Remarks unread',
  },
  plan: {
    ...file,
    verbs: ['handback', 'price', 'book', 'summary', 'look-ahead'],
    help: 'plan of work: what allocate --json printed, or a table; a plan is made if not given',
  },
  from: { ...file, verbs: ['allocate'], help: 'a plan of work to repair with few moves' },
  'frozen-until': {
    takes: 'DATE',
    verbs: ['allocate'],
    help: 'with --from: work that begins before this day keeps its place, with --chance too',
  },
  against: {
    ...file,
    verbs: ['allocate', 'summary'],
    help: 'another plan of work: the answer lists what changed since',
  },
  out: {
    takes: 'FILE',
    verbs: ['allocate', 'price', 'summary'],
    help: 'writes the plan of work (.csv, .xlsx, .ics); with price, a report (.csv, .xlsx)',
  },
  risk: {
    ...file,
    verbs: planned,
    help: 'what may go wrong: events (CSV), or events and shape of durations (JSON)',
  },
  dates: { takes: 'ORDER', help: 'day-first or month-first, for dates such as 03/04/2027' },
  zone: { takes: 'ZONE', help: 'IANA zone of the times, such as Europe/London' },
  isolation: {
    takes: '"S1;S2"',
    several: true,
    verbs: ['usable'],
    help: 'counts the time of work that needs these sections dead',
  },
  loud: { verbs: ['usable'], help: 'counts the time of loud work' },
  first: {
    takes: 'OBJECTIVE',
    verbs: searched,
    help: 'what counts first: key-dates, margins, finish or fewest-windows',
  },
  chance: {
    takes: 'P',
    verbs: ['allocate'],
    help: 'aims at a chance of at least P, such as 0.95, of handing each window back on time',
  },
  seconds: { takes: 'N', verbs: searched, help: 'search for N seconds at most; more search more' },
  seed: { takes: 'N', verbs: searched, help: 'seed of the simulation' },
  runs: { takes: 'N', verbs: planned, help: 'how many runs are simulated' },
  at: { takes: 'TIME', help: 'the moment that the answer is for' },
  pour: {
    takes: 'ACTIVITY',
    verbs: ['lifting'],
    help: 'the activity whose concrete is poured at --at TIME',
  },
  weeks: {
    takes: 'N[,N...]',
    verbs: ['look-ahead'],
    help: 'weeks to look ahead from --at TIME; 1,4,12 if not given',
  },
  window: { takes: 'W', verbs: ['price'], help: 'the window handed back late' },
  minutes: {
    takes: 'N[,N...]',
    verbs: ['price'],
    help: 'minutes late; several are shown side by side',
  },
  options: {
    verbs: ['price'],
    help: 'also prices other ways to do the work of the window, side by side, with break-evens',
  },
  calendar: {
    takes: 'FILE',
    verbs: ['handback', 'book'],
    help: 'writes an iCalendar file (RFC 5545)',
  },
  strict: { help: 'gives no answer if any row has an error' },
  json: { help: 'one JSON document on standard output' },
} as const satisfies Readonly<Record<string, Option>>;

export type OptionName = keyof typeof options;

/** Options that name an input file. */
export const fileOptions = (Object.keys(options) as OptionName[]).filter(
  (name) => 'reads' in options[name],
);

/** The options in the form of `util.parseArgs`. */
export function parseArgsOptions(): Record<
  string,
  { type: 'string' | 'boolean'; multiple?: boolean }
> {
  return Object.fromEntries(
    Object.entries(options as Record<string, Option>).map(([name, { takes, several }]) => [
      name,
      { type: takes === undefined ? 'boolean' : 'string', ...(several && { multiple: true }) },
    ]),
  );
}
