import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { totalMinutes } from '../../../src/calendar/index.js';
import type { Report, Results } from '../../../src/engine/index.js';
import { nameAmong, nameOf } from '../../../src/engine/plan-out/plan-name.js';
import type { AgreedPlan, PlanDocument } from '../../../src/model/index.js';
import type { ForecastController } from './forecast-controller.js';
import type { Planning } from './planning.js';
import type { DeskStrings } from '../strings.js';
import { wordsOf } from '../../shared/words-of.js';

/** What of the desk a page for a meeting is made of. */
interface Known {
  readonly document: PlanDocument | null;
  readonly planning: Pick<Planning, 'allocation' | 'proposal' | 'broken'>;
  readonly outlooks: Pick<ForecastController, 'handbacks' | 'booked' | 'people'>;
  readonly words: DeskStrings;
  moment(): number;
  complain(text: string): void;
}

export type MeetingView = 'summary' | 'ahead';
export const spans = [1, 4, 12] as const;

/** The summary of the plan and the weeks to come, made again when what they rest on has changed. */
export class Meeting implements ReactiveController {
  /** Weeks looked ahead. */
  weeks: (typeof spans)[number] = 4;
  /** Revision of the plan that changes are told against; undefined: the one agreed before. */
  against: number | undefined = undefined;

  readonly #host: ReactiveControllerHost;
  #report: Report | null = null;
  #madeOf: readonly unknown[] = [];

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#madeOf = [];
  }

  set(more: Partial<Pick<Meeting, 'weeks' | 'against'>>): void {
    Object.assign(this, more);
    this.#host.requestUpdate();
  }

  /** The plan that changes are told against; undefined where there is none. */
  before({ document }: Pick<Known, 'document'>): AgreedPlan | undefined {
    const { now, earlier = [] } = document?.agreed ?? {};
    const all: readonly AgreedPlan[] = [...(now ? [now] : []), ...earlier];
    return all.find((plan) => plan.revision === this.against) ?? earlier[0];
  }

  /** The report as it was last made; another is begun where it is behind. Null while the first is made. */
  shown(desk: Known, results: Results, view: MeetingView): Report | null {
    const { document, planning, outlooks } = desk;
    const allocation = planning.allocation;
    if (!document || !allocation) return null;
    const asked =
      view === 'summary'
        ? [this.before(desk), outlooks.handbacks]
        : [this.weeks, outlooks.booked, outlooks.people];
    const basis = [view, document, results, allocation, ...asked];
    if (basis.length !== this.#madeOf.length || basis.some((item, i) => item !== this.#madeOf[i])) {
      if (this.#madeOf[0] !== view) this.#report = null;
      this.#madeOf = basis;
      void this.#make(desk, results, view, basis);
    }
    return this.#report;
  }

  async #make(
    desk: Known,
    results: Results,
    view: MeetingView,
    basis: readonly unknown[],
  ): Promise<void> {
    try {
      await import('../../report/define.js');
      const made = await (view === 'summary'
        ? this.#summary(desk, results)
        : this.#ahead(desk, results));
      if (this.#madeOf !== basis) return;
      this.#report = made;
      this.#host.requestUpdate();
    } catch (error) {
      desk.complain(desk.words.files.pageNotMade(wordsOf(error)));
    }
  }

  async #summary(desk: Known, { plan }: Results): Promise<Report | null> {
    const { summaryReport } = await import('../../../src/engine/report/summary-report.js');
    const { document, planning, outlooks } = desk;
    const { allocation } = planning;
    if (!document || !allocation) return null;
    const before = this.before(desk);
    return summaryReport({
      plan,
      allocation,
      named: nameAmong(document.agreed, planOf(desk)),
      document: document.name,
      madeAt: desk.moment(),
      handbacks: outlooks.handbacks,
      broken: planning.broken,
      ...(before && { against: { named: nameOf(before), placements: before.placements } }),
    });
  }

  async #ahead(desk: Known, { plan }: Results): Promise<Report | null> {
    const [{ lookAhead }, { lookAheadReport }] = await Promise.all([
      import('../../../src/engine/look-ahead/look-ahead.js'),
      import('../../../src/engine/look-ahead/look-ahead-report.js'),
    ]);
    const { document, planning, outlooks } = desk;
    const { allocation } = planning;
    if (!document || !allocation || !outlooks.booked) return null;
    const rostered = isRostered(desk);
    const now = desk.moment();
    const [span] = lookAhead(
      {
        plan,
        allocation,
        milestones: outlooks.booked.milestones,
        broken: planning.broken,
        now,
        ...(rostered &&
          outlooks.people && {
            unmanned: new Map(
              outlooks.people.windows.map(
                (window) => [window.window, totalMinutes(window.unmanned)] as const,
              ),
            ),
          }),
      },
      [this.weeks],
    );
    return lookAheadReport(span!, {
      plan,
      named: nameAmong(document.agreed, planOf(desk)),
      document: document.name,
      now,
      booking: outlooks.booked.rules,
      rostered,
    });
  }
}

/** The pieces by which the plan spoken of is known: of an agreed one all, those that no longer stand too. */
export const planOf = ({
  document,
  planning,
}: Pick<Known, 'document' | 'planning'>): AgreedPlan['placements'] =>
  document?.agreed?.now?.placements ?? planning.proposal?.placements ?? [];

const isRostered = ({ document }: Pick<Known, 'document'>): boolean =>
  (document?.tables.roster?.rows.length ?? 0) > 0;
