import { english } from '../../engine/english/say.js';
import { durationText, isoText } from '../../calendar/index.js';
import { doubted } from '../../engine/left-out.js';
import type { AccessWindow } from '../../model/index.js';
import {
  fitsByPackage,
  NOT_WORKED_OUT,
  packagesIn,
  type FitVerdict,
} from '../../planner/fit/index.js';
import { partText } from '../../planner/fit/part-text.js';
import type { MostThatFits } from '../../planner/fit/types.js';
import type { PlanResult } from '../../tables/index.js';
import { FitCheck } from '../../verify/index.js';
import type { Answer } from '../answer.js';
import type { FitAnswer } from '../answers/fit.js';
import { table } from '../print/blocks.js';
import { Listed } from '../print/listed.js';

/**
 * `fit`: every package against every window, with every reason for a "no". A package with unreadable rows never fits,
 * since only part of it was examined. What fits was placed and passed the independent check.
 */
export function fit(read: Read): Answer<{ fits: Listed<FitRow> }> {
  return {
    json: { fits: new Listed(() => jsonRows(read)) },
    get text() {
      return [
        table(
          ['package', 'window', 'status', 'fit', 'goes', 'spare', 'reasons'],
          [...textRows(read)],
        ),
      ];
    },
  };
}

type Read = Pick<PlanResult, 'plan' | 'packagesLeftOut'>;
type FitRow = FitAnswer['fits'][number];

/** A package in a window. */
interface Pair {
  readonly window: AccessWindow;
  readonly verdict: FitVerdict;
  /** Absent when the package has unreadable rows. */
  readonly most: MostThatFits | undefined;
}

/** Search steps for all pairs together. A typical pair takes about 90; 30 pieces that compete for a gang take 300,000. */
const STEPS = 20_000_000;
const STEPS_A_PAIR = 100;

function* pairsOf({ plan, packagesLeftOut }: Read): Generator<Pair> {
  const check = new FitCheck(plan);
  const pairs = plan.windows.length * packagesIn(plan.activities).size;
  const steps = STEPS + STEPS_A_PAIR * pairs;
  for (const { package: name, verdicts, most } of fitsByPackage(plan, steps)) {
    const rows = packagesLeftOut.get(name);
    let at = 0;
    for (const found of verdicts) {
      const window = plan.windows[at]!;
      at += 1;
      yield rows === undefined
        ? { window, verdict: checkedFit(found, check), most: most(window) }
        : { window, verdict: doubted(found, rows), most: undefined };
    }
  }
}

function* jsonRows(read: Read): Generator<FitRow> {
  for (const { window, verdict, most } of pairsOf(read))
    yield {
      package: verdict.package,
      window: verdict.window,
      status: window.status,
      fits: verdict.fits,
      spareMinutes: verdict.spareMinutes,
      ...(verdict.spareAtMost !== undefined && { spareAtMost: verdict.spareAtMost }),
      proven: verdict.proven ?? true,
      ...partFields(most),
      reasons: verdict.reasons,
      placements: verdict.placements.map((placement) => ({
        ...placement,
        from: isoText(placement.from, window.zone),
        to: isoText(placement.to, window.zone),
      })),
    };
}

function* textRows(read: Read): Generator<string[]> {
  for (const { window, verdict, most } of pairsOf(read))
    yield [
      verdict.package,
      verdict.window,
      window.status,
      stateText(verdict),
      verdict.fits ? 'all' : most ? partText(most) : '–',
      spareText(verdict),
      verdict.reasons.map((reason) => reason.text).join('; '),
    ];
}

function stateText({ fits, proven, reasons }: FitVerdict): string {
  if (fits) return 'fits';
  if (proven !== false) return 'no';
  return reasons[0]?.code === NOT_WORKED_OUT ? 'not worked out' : 'not shown';
}

/** How much of a package fits; `null` when it has unreadable rows. */
function partFields(
  most: MostThatFits | undefined,
): Pick<
  FitAnswer['fits'][number],
  'fitsUnits' | 'ofUnits' | 'fitsPieces' | 'ofPieces' | 'mostProven'
> {
  return {
    fitsUnits: most?.units ?? null,
    ofUnits: most?.ofUnits ?? null,
    fitsPieces: most?.pieces ?? null,
    ofPieces: most?.ofPieces ?? null,
    mostProven: most?.proven ?? null,
  };
}

/** Keeps a "yes" only if the independent check finds no fault in its placements and minutes. */
export function checkedFit(verdict: FitVerdict, check: Pick<FitCheck, 'faultsOf'>): FitVerdict {
  const faults = verdict.fits ? check.faultsOf(verdict) : [];
  if (faults.length === 0) return verdict;
  return {
    package: verdict.package,
    window: verdict.window,
    fits: false,
    proven: false,
    spareMinutes: null,
    reasons: [
      {
        code: 'check-failed',
        text: `THE CHECK FOUND A FAULT in how it was placed: ${faults.map((fault) => english(fault.text)).join('; ')}`,
      },
    ],
    placements: [],
  };
}

function spareText({ fits, spareMinutes, spareAtMost }: FitVerdict): string {
  if (spareMinutes === null) return '–';
  const spare = durationText(spareMinutes);
  return fits && spareAtMost !== undefined
    ? `${spare} or more, at most ${durationText(spareAtMost)}`
    : spare;
}
