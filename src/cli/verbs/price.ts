import { durationText, isoText } from '../../calendar/index.js';
import type { AccessWindow, Note, Placement, Plan } from '../../model/index.js';
import type { PriceBook } from '../../model/price-book.js';
import { english } from '../../engine/english/say.js';
import { handbackOf } from '../../engine/handback/handback.js';
import { priceOf } from '../../engine/price.js';
import type { ReportBasis, ReportPlan } from '../../engine/report/facts.js';
import { overrunReport } from '../../engine/report/overrun-report.js';
import { reportIn } from '../../engine/report/report-in.js';
import type { Report } from '../../engine/report/report.js';
import type { HandbackResult, PriceAnswer } from '../../engine/types.js';
import { optionsReport } from '../../engine/report/options-report.js';
import type { PriceInput, PriceResult } from '../../price/index.js';
import type { PlanResult } from '../../tables/index.js';
import { optionsFor, optionsJson, optionsWords } from './price-options.js';
import type { Answer } from '../answer.js';
import type { OverrunPart, PriceAnswerJson, RiskPart } from '../answers/price.js';
import type { Arguments } from '../arguments.js';
import { planLines, planOfWork } from '../plan-of-work.js';
import type { GivenFile } from '../read/read-plan.js';
import { fileName } from '../read/read-sources.js';
import { UsageError } from '../errors.js';
import { keyDateWords, overrunWords, sideBySide } from './price-words.js';

/**
 * `price`: the cost of handing a window back N minutes late, by head; several N side by side. With work, also the
 * expected cost of an overrun of the planned work.
 *
 * @throws {UsageError} When the plan has no such window.
 */
export function price(
  plan: Plan,
  read: PlanResult,
  prices: PriceBook,
  asked: Arguments,
  {
    given,
    holidays = [],
  }: {
    readonly given?: GivenFile | undefined;
    readonly holidays?: readonly string[];
  } = {},
): Answer<PriceAnswerJson> {
  const { trains } = read;
  const window = plan.windows.find((item) => item.id === asked.window);
  if (!window) throw new UsageError(`--window: there is no window "${asked.window}"`);
  const lengths = asked.minutes ?? [0];
  const longest = Math.max(...lengths);
  const work = plan.activities.length === 0 ? undefined : planOfWork(plan, asked, given);
  const placements = work?.allocation.placements;
  const outlook =
    placements &&
    handbackOf(plan, { placements, windows: [window.id], seed: asked.seed, runs: asked.runs })[0];
  const priced = priceOf(
    { plan, trains, prices },
    {
      window: window.id,
      holidays,
      overrunMinutes: longest,
      maxMinutes: longest,
      compareMinutes: lengths,
      ...(placements && { placements }),
      ...(outlook && { handbackMinutes: outlook.simulation.handbackMinutes }),
    },
  );
  const { at, overruns } = priced;
  const options =
    asked.options && work
      ? optionsFor({ read, plan, prices, holidays, allocation: work.allocation }, window, asked)
      : null;
  const notes = [
    ...standingNotes(window, placements),
    ...at.notes.map((note): Note => ({ code: 'price-assumed', text: english(note) })),
  ];
  const only = overruns.length === 1 ? overruns[0]! : null;
  const json = {
    ...(work && { plan: work.plan, ...(given && { broken: work.broken }) }),
    window: window.id,
    status: window.status,
    bookedEnd: isoText(window.end, window.zone),
    ...(only && overrunJson(only, window)),
    currency: at.currency,
    rounding: at.rounding,
    basis: at.basis,
    overruns: overruns.map((result) => ({
      minutes: result.overrunMinutes,
      ...overrunJson(result, window),
    })),
    notPriced: at.notPriced.map(english),
    onSite: at.onSite.map((row) => ({
      ...row,
      call: isoText(row.call, window.zone),
      lastWork: isoText(row.lastWork, window.zone),
      leaves: isoText(row.leaves, window.zone),
      why: english(row.why),
      owedFormula: english(row.owedFormula),
    })),
    lengths: priced.lengths?.map(({ sentence, ...length }) => ({
      ...length,
      text: english(sentence),
    })),
    ...(priced.keyDates && {
      keyDates: priced.keyDates.map((date) => ({
        package: date.package,
        due: isoText(date.due, plan.zone),
        forecast: date.forecast === null ? null : isoText(date.forecast, plan.zone),
        window: date.window,
        daysLate: date.daysLate,
        amount: date.amount,
        how: english(date.formula),
        source: english(date.source),
      })),
    }),
    nextMinute: {
      after: longest,
      one: priced.nextMinute.one,
      meanOfFifteen: priced.nextMinute.meanOfFifteen,
    },
    risk: riskJson(priced, outlook, asked.seed),
    ...(asked.options && { options: options && optionsJson(options, window.zone) }),
  };
  const { expected } = priced;
  const text = [
    ...(work ? [...planLines(work), ''] : []),
    ...(only ? overrunWords(only, window) : sideBySide(overruns, window)),
    `After ${durationText(longest)} the next minute costs ${priced.nextMinute.one}; the next quarter of an hour ${priced.nextMinute.meanOfFifteen} a minute.`,
    ...(expected
      ? [
          `Expected cost of an overrun of the planned work: ${expected.expected} (standard error ${expected.standardError}); P50 ${expected.p50}, P80 ${expected.p80}, P95 ${expected.p95}; ${expected.runs} runs, seed ${asked.seed}.`,
          OF_OVERRUN,
        ]
      : []),
    ...keyDateWords(priced.keyDates ?? [], window),
    ...(priced.lengths ?? []).map((length) => `${length.name}: ${english(length.sentence)}.`),
    ...(options ? ['', ...optionsWords(options)] : []),
    ...(at.notPriced.length === 0
      ? []
      : ['', 'Not priced:', ...at.notPriced.map((item) => `- ${english(item)}`)]),
  ];
  const basis: ReportBasis = {
    window,
    document: [asked.windows, asked.work]
      .flatMap((item) => (item ? [fileName(item)] : []))
      .join(', '),
    prices,
    ...(work && {
      plan: {
        placements: work.allocation.placements,
        standing: given ? 'given' : 'proposed',
        ...(given && agreedOf(given)),
        broken: work.broken.length > 0,
      },
    }),
  };
  const overrun = reportIn(overrunReport(priced, basis), english);
  const report = options
    ? withReport(overrun, reportIn(optionsReport(options, basis), english))
    : overrun;
  return { json, text, report, notes: [...(work?.notes ?? []), ...notes] };
}

/** What the figures of `risk` include; shown with every cost of an overrun. */
const OF_OVERRUN =
  'Shifts that end on time count too: 50, 80 and 95 in 100 shifts cost no more than P50, P80 and P95. Included is what the plan costs in any case: a speed restriction it leaves, a key date it misses. Not included: plant and people as planned, booking, work that moves.';

/** Adds the facts, tables and lists of another report. */
const withReport = (report: Report<string>, other: Report<string>): Report<string> => ({
  ...report,
  facts: [
    ...report.facts,
    ...other.facts.filter((fact) => !report.facts.some((each) => each.label === fact.label)),
  ],
  tables: [...report.tables, ...other.tables],
  lists: [
    ...report.lists,
    ...other.lists.map((list) => ({ ...list, title: `Options: ${list.title.toLowerCase()}` })),
  ],
});
/** The agreed name of a given plan, if its file gives all of it. */
function agreedOf({ named }: GivenFile): Pick<ReportPlan, 'agreed'> {
  const { name, revision, agreedAt, by } = named;
  if (name === undefined || revision === undefined || agreedAt === undefined) return {};
  return { agreed: { name, revision, agreedAt, ...(by !== undefined && { by }) } };
}

/** Notes when the figures are doubtful: the window is withdrawn, or nothing is planned in it. */
function standingNotes(
  { id, status }: AccessWindow,
  placements: readonly Placement[] | undefined,
): readonly Note[] {
  return [
    ...(status === 'withdrawn'
      ? [
          {
            code: 'window-withdrawn',
            text: `${id} is withdrawn: it takes no work, so it cannot overrun. The figures are those of a late handback if it were given back.`,
          },
        ]
      : []),
    ...(placements && !placements.some((placement) => placement.window === id)
      ? [
          {
            code: 'window-without-work',
            text: `The plan of work places nothing in ${id}, so there is no chance of an overrun to give, and no plant or people to price.`,
          },
        ]
      : []),
  ];
}

const inputJson = ({ name, value, unit }: PriceInput) => ({
  name: english(name),
  value: english(value),
  unit: english(unit),
});

function overrunJson(result: PriceResult, window: AccessWindow): OverrunPart {
  return {
    overrunMinutes: result.overrunMinutes,
    handbackAt: isoText(result.handbackAt, window.zone),
    rows: result.rows.map((row) => ({
      ...row,
      title: english(row.title),
      formula: english(row.formula),
      inputs: row.inputs.map(inputJson),
      source: english(row.source),
    })),
    total: result.total,
    notCounted: result.notCounted,
    trains: result.trains.map((train) => ({
      ...train,
      dueAt: isoText(train.dueAt, window.zone),
      leavesAt: isoText(train.leavesAt, window.zone),
    })),
  };
}

/** Results of simulating the planned work; null without a simulation. */
function riskJson(
  { expected }: PriceAnswer,
  outlook: HandbackResult | undefined,
  seed: number,
): RiskPart | null {
  if (!expected || !outlook) return null;
  return {
    of: OF_OVERRUN,
    runs: expected.runs,
    seed,
    pOnTime: outlook.simulation.outlook.onTime.probability,
    expectedCost: expected.expected,
    standardError: expected.standardError,
    p50Cost: expected.p50,
    p80Cost: expected.p80,
    p95Cost: expected.p95,
    exceedance: expected.exceedance,
    steps: expected.steps.map((step) => ({ ...step, name: english(step.name) })),
  };
}
