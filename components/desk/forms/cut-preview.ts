import type { Allocation, CutIsolation, Engine, Move } from '../../../src/engine/index.js';
import type { Fault, PlanDocument } from '../../../src/model/index.js';
import type { WordedHost } from '../worded-host.js';
import { TaskController } from '../results/task-controller.js';

/** What a window as it is typed does to the plan of the work, before anything is changed. */
export interface CutEffect {
  readonly window: string;
  /** What becomes of sections with times of their own; absent where nothing does. */
  readonly isolation: CutIsolation | undefined;
  /** What keeps the window from being read as typed, so that all work in it would lose its place; absent where nothing does. */
  readonly unreadable?: Fault | null;
  /** Pieces that a repair takes out of their window; null while that is not known. */
  readonly moved: readonly Move[] | null;
}

/** Looks ahead at a change of the picked window while it is typed. */
export class CutPreview extends TaskController {
  /** Null where nothing is typed that differs from the window as it is. */
  effect: CutEffect | null = null;

  constructor(host: WordedHost) {
    super(host, 'cut');
  }

  /** Nothing is looked at. */
  clear(): void {
    this.latest.stop();
    this.effect = null;
    this.host.requestUpdate();
  }

  /** Asks what the document as it would be leaves of a plan: what no longer holds, and what a repair then moves. */
  async ask(
    engine: Engine,
    { document, isolation }: Pick<CutEffect, 'isolation'> & { readonly document: PlanDocument },
    window: string,
    plan: Allocation | null,
  ): Promise<void> {
    const effect = { window, isolation, moved: null };
    this.effect = effect;
    await this.latest.ask(
      async (signal): Promise<CutEffect> => {
        const { plan: read, faults } = await engine.recompute(document, signal);
        if (!read.windows.some((item) => item.id === window)) {
          const { file } = document.tables.windows;
          const own = faults.findLast((fault) => fault.severity === 'error' && fault.file === file);
          return { ...effect, unreadable: own ?? null };
        }
        if (!plan) return { ...effect, moved: [] };
        const { broken } = await engine.assess(document, plan.placements, signal);
        if (broken.length === 0) return { ...effect, moved: [] };
        const { moved } = await engine.replan(document, plan, {}, signal);
        return { ...effect, moved };
      },
      (found) => (this.effect = found),
    );
  }
}
