import type { Engine, ImportReport } from '../../src/engine/index.js';
import type { LimitSet, PlanDocument, RuleSet } from '../../src/model/index.js';
import type { Change, OpenPlan } from '../../src/plan/index.js';
import type { CutPreview } from './forms/cut-preview.js';
import type { RuleTrial } from './forms/rule-trial.js';
import type { Place } from '../why/explanation.js';
import type { ResultsController } from './results/results-controller.js';
import type { Incoming } from './files/incoming.js';
import type { Keeping } from './files/keeping.js';
import type { Meeting } from './results/meeting.js';
import type { ForecastController } from './results/forecast-controller.js';
import type { Picked } from './frame/picked.js';
import type { Planning } from './results/planning.js';
import type { SheetResults } from './results/sheet-results.js';
import type { DeskStrings } from './strings.js';
import type { Trouble } from './worded-host.js';
import type { DeskSharing } from './sharing/sharing-parts.js';
import type { Shift } from './shift/shift.js';
import type { ShiftAlarms } from './shift/shift-alarms.js';
import type {
  CostPart,
  DeskView,
  PlaceId,
  PlanPart,
  ResultTable,
  SitePart,
  WorkTable,
} from './views.js';

export interface ShownRows {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** What can be open over the view. */
export type Menu = '' | 'plan' | 'help' | 'find';

/** What the views use of the desk: the document, what follows from it, and the ways to change either. */
export interface Desk {
  readonly engine: Engine | null;
  /** The plan shown, which several people may change. */
  readonly plan: OpenPlan | null;
  readonly document: PlanDocument | null;
  /** Whether the page is still getting the plan to show. */
  readonly opening: boolean | 'late';
  view: DeskView;
  /** Sets of limits on hours that a person can choose from. */
  readonly limitSets: readonly LimitSet[];
  /** Sets of rules to begin with. */
  readonly ruleSets: readonly RuleSet[];
  /** Address of a page that shows every element; empty: none. */
  readonly gallery: string;
  /** Shows the sample plan; null where the page has none. */
  readonly openSample: (() => Promise<void>) | null;
  /** What the next undo and redo take back and make again; empty when nothing. */
  readonly undoLabel: string;
  readonly redoLabel: string;
  /** The words of the desk in the language of its place. */
  readonly words: DeskStrings;
  /** Does something outside of a drawing in the language of the desk. */
  inWords<T>(work: () => T): T;
  readonly figures: ResultsController;
  readonly incoming: Incoming;
  readonly planning: Planning;
  readonly outlooks: ForecastController;
  readonly meeting: Meeting;
  readonly sharing: DeskSharing;
  readonly shift: Shift;
  readonly watch: ShiftAlarms;
  readonly ruleTrial: RuleTrial;
  readonly cutPreview: CutPreview;
  readonly keeping: Keeping;
  readonly picked: Picked;
  readonly sheetResults: SheetResults;
  planPart: PlanPart;
  workTable: WorkTable;
  /** The table shown with results beside its rows. */
  resultTable: ResultTable;
  /** What is open over the view; empty: nothing. */
  menu: Menu;
  /** What is looked for by name, and which of what was found is chosen. */
  asked: string;
  /** Whether a narrow desk shows no more of the answer than its sentence. */
  folded: boolean;
  askedAt: number;
  costPart: CostPart;
  sitePart: SitePart;
  /** The moment it is. */
  moment(): number;
  /**
   * Changes the plan, as one act that can be undone.
   *
   * @param label What was done, in plain words: `window N3 changed`.
   * @param planAgain Whether what of the agreed plan no longer holds is mended at once, for a person to accept.
   */
  change(changes: Change | readonly Change[], label: string, planAgain?: boolean): void;
  /** Takes what was read from files, as one act that can be undone. */
  take(document: PlanDocument, reports: readonly ImportReport[]): void;
  /** Whether the person here may change the plan; where they may only read it, they are told so. */
  mayChange(): boolean;
  /** Shows another plan and keeps it as a plan of its own. */
  adopt(document: PlanDocument): Promise<void>;
  /** Shows a plan that others share, and keeps it here under the id that it has with them. */
  openShared(id: string, update: Uint8Array): Promise<void>;
  /** Shows a plan that is kept on this device. */
  openKept(id: string): Promise<void>;
  /** A plan with nothing in it. */
  blank(): PlanDocument;
  undo(): void;
  redo(): void;
  show(view: DeskView): void;
  /** Shows a place as it was last looked at. */
  showPlace(place: PlaceId): void;
  /** Looks for the best plan, to be accepted or not. */
  planNow(): Promise<void>;
  /** Looks for a plan in which every window reaches the chance, to be accepted or not. */
  planToChance(chance: number): Promise<void>;
  /** Mends the agreed plan with few moves, to be accepted or not. */
  mend(): Promise<void>;
  /** Shows where a figure comes from. */
  goTo(place: Place): Promise<void>;
  /** The rows of the sheet on the screen, in its order, with what is worked out beside them. */
  shownRows(): ShownRows;
  /** Brings the panel into sight where it stands below the view. */
  bringSide(): void;
  /** Says what could not be done, until the next act. */
  complain(trouble: Trouble): void;
  /** Says what was done, until the next act. */
  say(words: string): void;
}
