// Made by `npm run manifest` from the elements; change those, not this file.
import type { HTMLAttributes, PublicProps } from 'vue';
import type { AccountAskEvent } from '../account/account-ask-event.js';
import type { CalendarSaveEvent } from '../booking/calendar-save-event.js';
import type { CellSelectEvent } from '../sheet/cell-select-event.js';
import type { ChartPickEvent } from '../chart/chart-pick-event.js';
import type { DecisionsChangeEvent } from '../handback/decisions-change-event.js';
import type { DocumentChangeEvent } from '../document/document-change-event.js';
import type { DocumentReadEvent } from '../document/document-read-event.js';
import type { FigureAskEvent } from '../shared/figure-ask-event.js';
import type { FitSelectEvent } from '../fit/fit-select-event.js';
import type { HandbackEntryEvent } from '../handback/handback-entry-event.js';
import type { HandbackLogMergeEvent } from '../handback/handback-log-events.js';
import type { HandbackLogSaveEvent } from '../handback/handback-log-events.js';
import type { HandbackRecordEvent } from '../handback/handback-record-event.js';
import type { ImportAcceptEvent } from '../import/import-accept-event.js';
import type { LedgerAskEvent } from '../ledger/ledger-ask-event.js';
import type { LimitsChangeEvent } from '../people/limits-change-event.js';
import type { OnSiteChangeEvent } from '../overrun/on-site-event.js';
import type { OptionTakeEvent } from '../options/option-take-event.js';
import type { OptionsAskEvent } from '../options/options-ask-event.js';
import type { OptionsStopEvent } from '../options/options-stop-event.js';
import type { OverrunChangeEvent } from '../overrun/overrun-change-event.js';
import type { OverrunCompareEvent } from '../overrun/overrun-compare-event.js';
import type { OwnOptionsChangeEvent } from '../options/own-options-change-event.js';
import type { PlacementMoveEvent } from '../plan/placement-move-event.js';
import type { PlacementSelectEvent } from '../plan/placement-select-event.js';
import type { PossessionAccount } from '../account/account.js';
import type { PossessionBooking } from '../booking/booking.js';
import type { PossessionChart } from '../chart/chart.js';
import type { PossessionCompare } from '../compare/compare.js';
import type { PossessionDesk } from '../desk/desk.js';
import type { PossessionDocument } from '../document/document.js';
import type { PossessionFit } from '../fit/fit.js';
import type { PossessionHandback } from '../handback/handback.js';
import type { PossessionImport } from '../import/import.js';
import type { PossessionLedger } from '../ledger/ledger.js';
import type { PossessionLifting } from '../lifting/lifting.js';
import type { PossessionNoise } from '../noise/noise.js';
import type { PossessionOptions } from '../options/options.js';
import type { PossessionOverrun } from '../overrun/overrun.js';
import type { PossessionPeople } from '../people/people.js';
import type { PossessionPlan } from '../plan/plan.js';
import type { PossessionReport } from '../report/report.js';
import type { PossessionRibbon } from '../ribbon/ribbon.js';
import type { PossessionRules } from '../rules/rules.js';
import type { PossessionSheet } from '../sheet/sheet.js';
import type { PossessionUnits } from '../units/units.js';
import type { PossessionWanted } from '../wanted/wanted.js';
import type { PossessionWhere } from '../where/where.js';
import type { PossessionWhy } from '../why/why.js';
import type { RedoEvent } from '../sheet/redo-event.js';
import type { ReportAskEvent } from '../report/report-events.js';
import type { ReportCloseEvent } from '../report/report-events.js';
import type { ReportSaveEvent } from '../report/report-events.js';
import type { ResultAskEvent } from '../sheet/result-ask-event.js';
import type { ResultsChoiceEvent } from '../sheet/results-choice-event.js';
import type { RosterMendEvent } from '../people/roster-mend-event.js';
import type { RulesBaseEvent } from '../rules/rules-base-event.js';
import type { RulesChangeEvent } from '../rules/rules-change-event.js';
import type { RulesSaveEvent } from '../rules/rules-save-event.js';
import type { ShareChangeEvent } from '../booking/share-change-event.js';
import type { TableChangeEvent } from '../sheet/table-change-event.js';
import type { UndoEvent } from '../sheet/undo-event.js';
import type { UnitsSelectEvent } from '../units/units-select-event.js';
import type { WhyLinkEvent } from '../why/why-events.js';
import type { WindowSelectEvent } from '../ribbon/window-select-event.js';

type Tag<E extends HTMLElement, Own extends keyof E, Events> = new () => {
  $props: Omit<HTMLAttributes, Own> & PublicProps & Partial<Pick<E, Own>> & Partial<Events>;
};

declare module 'vue' {
  interface GlobalComponents {
    'possession-account': Tag<
      PossessionAccount,
      'answer' | 'window' | 'trains' | 'resources' | 'request' | 'busy' | 'strings',
      {
        onPossessionAccountAsk: (event: AccountAskEvent) => void;
        onPossessionReportAsk: (event: ReportAskEvent) => void;
      }
    >;
    'possession-booking': Tag<
      PossessionBooking,
      'answer' | 'windows' | 'now' | 'filter' | 'who' | 'readonly' | 'strings',
      {
        onPossessionCalendarSave: (event: CalendarSaveEvent) => void;
        onPossessionShareChange: (event: ShareChangeEvent) => void;
      }
    >;
    'possession-chart': Tag<
      PossessionChart,
      'shown' | 'picked' | 'strings',
      { onPossessionChartPick: (event: ChartPickEvent) => void }
    >;
    'possession-compare': Tag<
      PossessionCompare,
      | 'beforePlan'
      | 'afterPlan'
      | 'beforeName'
      | 'afterName'
      | 'windows'
      | 'activities'
      | 'zone'
      | 'strings',
      { onPossessionFigureAsk: (event: FigureAskEvent) => void }
    >;
    'possession-desk': Tag<
      PossessionDesk,
      | 'engine'
      | 'document'
      | 'view'
      | 'theme'
      | 'now'
      | 'limitSets'
      | 'ruleSets'
      | 'openSample'
      | 'sampleName'
      | 'gallery'
      | 'newer'
      | 'opening'
      | 'strings',
      { onPossessionFigureAsk: (event: FigureAskEvent) => void }
    >;
    'possession-document': Tag<
      PossessionDocument,
      'src' | 'zone' | 'keep' | 'document' | 'engine' | 'strings',
      {
        onPossessionDocumentChange: (event: DocumentChangeEvent) => void;
        onPossessionDocumentRead: (event: DocumentReadEvent) => void;
      }
    >;
    'possession-fit': Tag<
      PossessionFit,
      'packages' | 'windows' | 'fits' | 'selected' | 'goesFirst' | 'strings',
      { onPossessionFitSelect: (event: FitSelectEvent) => void }
    >;
    'possession-handback': Tag<
      PossessionHandback,
      | 'results'
      | 'windows'
      | 'selectedWindow'
      | 'busy'
      | 'progress'
      | 'live'
      | 'now'
      | 'log'
      | 'decisions'
      | 'assumptions'
      | 'plan'
      | 'readonly'
      | 'strings',
      {
        onPossessionCalendarSave: (event: CalendarSaveEvent) => void;
        onPossessionDecisionsChange: (event: DecisionsChangeEvent) => void;
        onPossessionFigureAsk: (event: FigureAskEvent) => void;
        onPossessionHandbackEntry: (event: HandbackEntryEvent) => void;
        onPossessionHandbackLogMerge: (event: HandbackLogMergeEvent) => void;
        onPossessionHandbackLogSave: (event: HandbackLogSaveEvent) => void;
        onPossessionHandbackRecord: (event: HandbackRecordEvent) => void;
        onPossessionWindowSelect: (event: WindowSelectEvent) => void;
      }
    >;
    'possession-import': Tag<
      PossessionImport,
      'engine' | 'document' | 'strings',
      { onPossessionImportAccept: (event: ImportAcceptEvent) => void }
    >;
    'possession-ledger': Tag<
      PossessionLedger,
      'ledger' | 'window' | 'asked' | 'asTable' | 'strings',
      { onPossessionLedgerAsk: (event: LedgerAskEvent) => void }
    >;
    'possession-lifting': Tag<
      PossessionLifting,
      'answer' | 'strings',
      { onPossessionLimitsChange: (event: LimitsChangeEvent) => void }
    >;
    'possession-noise': Tag<
      PossessionNoise,
      'answer' | 'day' | 'strings',
      { onPossessionLimitsChange: (event: LimitsChangeEvent) => void }
    >;
    'possession-options': Tag<
      PossessionOptions,
      | 'answer'
      | 'window'
      | 'busy'
      | 'progress'
      | 'own'
      | 'activities'
      | 'resources'
      | 'readonly'
      | 'strings',
      {
        onPossessionOptionTake: (event: OptionTakeEvent) => void;
        onPossessionOptionsAsk: (event: OptionsAskEvent) => void;
        onPossessionOptionsStop: (event: OptionsStopEvent) => void;
        onPossessionOwnOptionsChange: (event: OwnOptionsChangeEvent) => void;
        onPossessionReportAsk: (event: ReportAskEvent) => void;
      }
    >;
    'possession-overrun': Tag<
      PossessionOverrun,
      'answer' | 'window' | 'overrunMinutes' | 'editable' | 'strings',
      {
        onPossessionFigureAsk: (event: FigureAskEvent) => void;
        onPossessionOnSiteChange: (event: OnSiteChangeEvent) => void;
        onPossessionOverrunChange: (event: OverrunChangeEvent) => void;
        onPossessionOverrunCompare: (event: OverrunCompareEvent) => void;
        onPossessionReportAsk: (event: ReportAskEvent) => void;
      }
    >;
    'possession-people': Tag<
      PossessionPeople,
      'answer' | 'windows' | 'sets' | 'mendable' | 'readonly' | 'weeks' | 'strings',
      {
        onPossessionLimitsChange: (event: LimitsChangeEvent) => void;
        onPossessionRosterMend: (event: RosterMendEvent) => void;
      }
    >;
    'possession-plan': Tag<
      PossessionPlan,
      | 'allocation'
      | 'windows'
      | 'ledgers'
      | 'activities'
      | 'zone'
      | 'selected'
      | 'movable'
      | 'strings',
      {
        onPossessionFigureAsk: (event: FigureAskEvent) => void;
        onPossessionPlacementMove: (event: PlacementMoveEvent) => void;
        onPossessionPlacementSelect: (event: PlacementSelectEvent) => void;
      }
    >;
    'possession-report': Tag<
      PossessionReport,
      'report' | 'closable' | 'strings',
      {
        onPossessionReportClose: (event: ReportCloseEvent) => void;
        onPossessionReportSave: (event: ReportSaveEvent) => void;
      }
    >;
    'possession-ribbon': Tag<
      PossessionRibbon,
      'windows' | 'ledgers' | 'work' | 'byWeek' | 'selected' | 'asTable' | 'strings',
      { onPossessionWindowSelect: (event: WindowSelectEvent) => void }
    >;
    'possession-rules': Tag<
      PossessionRules,
      | 'rules'
      | 'beforeRules'
      | 'change'
      | 'busy'
      | 'windows'
      | 'activities'
      | 'zone'
      | 'readonly'
      | 'strings',
      {
        onPossessionRulesBase: (event: RulesBaseEvent) => void;
        onPossessionRulesChange: (event: RulesChangeEvent) => void;
        onPossessionRulesSave: (event: RulesSaveEvent) => void;
        onPossessionWhyLink: (event: WhyLinkEvent) => void;
      }
    >;
    'possession-sheet': Tag<
      PossessionSheet,
      | 'table'
      | 'faults'
      | 'unread'
      | 'label'
      | 'readonly'
      | 'others'
      | 'of'
      | 'results'
      | 'choices'
      | 'resultColumns'
      | 'resultsShown'
      | 'undoState'
      | 'strings',
      {
        onPossessionCellSelect: (event: CellSelectEvent) => void;
        onPossessionRedo: (event: RedoEvent) => void;
        onPossessionResultAsk: (event: ResultAskEvent) => void;
        onPossessionResultsChoice: (event: ResultsChoiceEvent) => void;
        onPossessionTableChange: (event: TableChangeEvent) => void;
        onPossessionUndo: (event: UndoEvent) => void;
      }
    >;
    'possession-units': Tag<
      PossessionUnits,
      'allocation' | 'activities' | 'windows' | 'zone' | 'selectedActivity' | 'strings',
      {
        onPossessionFigureAsk: (event: FigureAskEvent) => void;
        onPossessionUnitsSelect: (event: UnitsSelectEvent) => void;
      }
    >;
    'possession-wanted': Tag<
      PossessionWanted,
      'allocation' | 'activities' | 'resources' | 'zone' | 'strings',
      Record<never, never>
    >;
    'possession-where': Tag<
      PossessionWhere,
      'allocation' | 'windows' | 'activities' | 'selected' | 'window' | 'line' | 'strings',
      { onPossessionPlacementSelect: (event: PlacementSelectEvent) => void }
    >;
    'possession-why': Tag<
      PossessionWhy,
      'explanation' | 'strings',
      { onPossessionWhyLink: (event: WhyLinkEvent) => void }
    >;
  }
}
