// Made by `npm run manifest` from the elements; change those, not this file.
import type { DetailedHTMLProps, HTMLAttributes } from 'react';
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

type Tag<E extends HTMLElement, Own extends keyof E, Events> = Omit<
  DetailedHTMLProps<HTMLAttributes<E>, E>,
  Own
> &
  Partial<Pick<E, Own>> &
  Partial<Events>;

declare module 'react' {
  // oxlint-disable-next-line typescript/no-namespace -- React's own place for the tags it knows
  namespace JSX {
    interface IntrinsicElements {
      'possession-account': Tag<
        PossessionAccount,
        'answer' | 'window' | 'trains' | 'resources' | 'request' | 'busy' | 'strings',
        {
          'onpossession-account-ask': (event: AccountAskEvent) => void;
          'onpossession-report-ask': (event: ReportAskEvent) => void;
        }
      >;
      'possession-booking': Tag<
        PossessionBooking,
        'answer' | 'windows' | 'now' | 'filter' | 'who' | 'readonly' | 'strings',
        {
          'onpossession-calendar-save': (event: CalendarSaveEvent) => void;
          'onpossession-share-change': (event: ShareChangeEvent) => void;
        }
      >;
      'possession-chart': Tag<
        PossessionChart,
        'shown' | 'picked' | 'strings',
        { 'onpossession-chart-pick': (event: ChartPickEvent) => void }
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
        { 'onpossession-figure-ask': (event: FigureAskEvent) => void }
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
        { 'onpossession-figure-ask': (event: FigureAskEvent) => void }
      >;
      'possession-document': Tag<
        PossessionDocument,
        'src' | 'zone' | 'keep' | 'document' | 'engine' | 'strings',
        {
          'onpossession-document-change': (event: DocumentChangeEvent) => void;
          'onpossession-document-read': (event: DocumentReadEvent) => void;
        }
      >;
      'possession-fit': Tag<
        PossessionFit,
        'packages' | 'windows' | 'fits' | 'selected' | 'goesFirst' | 'strings',
        { 'onpossession-fit-select': (event: FitSelectEvent) => void }
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
          'onpossession-calendar-save': (event: CalendarSaveEvent) => void;
          'onpossession-decisions-change': (event: DecisionsChangeEvent) => void;
          'onpossession-figure-ask': (event: FigureAskEvent) => void;
          'onpossession-handback-entry': (event: HandbackEntryEvent) => void;
          'onpossession-handback-log-merge': (event: HandbackLogMergeEvent) => void;
          'onpossession-handback-log-save': (event: HandbackLogSaveEvent) => void;
          'onpossession-handback-record': (event: HandbackRecordEvent) => void;
          'onpossession-window-select': (event: WindowSelectEvent) => void;
        }
      >;
      'possession-import': Tag<
        PossessionImport,
        'engine' | 'document' | 'strings',
        { 'onpossession-import-accept': (event: ImportAcceptEvent) => void }
      >;
      'possession-ledger': Tag<
        PossessionLedger,
        'ledger' | 'window' | 'asked' | 'asTable' | 'strings',
        { 'onpossession-ledger-ask': (event: LedgerAskEvent) => void }
      >;
      'possession-lifting': Tag<
        PossessionLifting,
        'answer' | 'strings',
        { 'onpossession-limits-change': (event: LimitsChangeEvent) => void }
      >;
      'possession-noise': Tag<
        PossessionNoise,
        'answer' | 'day' | 'strings',
        { 'onpossession-limits-change': (event: LimitsChangeEvent) => void }
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
          'onpossession-option-take': (event: OptionTakeEvent) => void;
          'onpossession-options-ask': (event: OptionsAskEvent) => void;
          'onpossession-options-stop': (event: OptionsStopEvent) => void;
          'onpossession-own-options-change': (event: OwnOptionsChangeEvent) => void;
          'onpossession-report-ask': (event: ReportAskEvent) => void;
        }
      >;
      'possession-overrun': Tag<
        PossessionOverrun,
        'answer' | 'window' | 'overrunMinutes' | 'editable' | 'strings',
        {
          'onpossession-figure-ask': (event: FigureAskEvent) => void;
          'onpossession-on-site-change': (event: OnSiteChangeEvent) => void;
          'onpossession-overrun-change': (event: OverrunChangeEvent) => void;
          'onpossession-overrun-compare': (event: OverrunCompareEvent) => void;
          'onpossession-report-ask': (event: ReportAskEvent) => void;
        }
      >;
      'possession-people': Tag<
        PossessionPeople,
        'answer' | 'windows' | 'sets' | 'mendable' | 'readonly' | 'weeks' | 'strings',
        {
          'onpossession-limits-change': (event: LimitsChangeEvent) => void;
          'onpossession-roster-mend': (event: RosterMendEvent) => void;
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
          'onpossession-figure-ask': (event: FigureAskEvent) => void;
          'onpossession-placement-move': (event: PlacementMoveEvent) => void;
          'onpossession-placement-select': (event: PlacementSelectEvent) => void;
        }
      >;
      'possession-report': Tag<
        PossessionReport,
        'report' | 'closable' | 'strings',
        {
          'onpossession-report-close': (event: ReportCloseEvent) => void;
          'onpossession-report-save': (event: ReportSaveEvent) => void;
        }
      >;
      'possession-ribbon': Tag<
        PossessionRibbon,
        'windows' | 'ledgers' | 'work' | 'byWeek' | 'selected' | 'asTable' | 'strings',
        { 'onpossession-window-select': (event: WindowSelectEvent) => void }
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
          'onpossession-rules-base': (event: RulesBaseEvent) => void;
          'onpossession-rules-change': (event: RulesChangeEvent) => void;
          'onpossession-rules-save': (event: RulesSaveEvent) => void;
          'onpossession-why-link': (event: WhyLinkEvent) => void;
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
          'onpossession-cell-select': (event: CellSelectEvent) => void;
          'onpossession-redo': (event: RedoEvent) => void;
          'onpossession-result-ask': (event: ResultAskEvent) => void;
          'onpossession-results-choice': (event: ResultsChoiceEvent) => void;
          'onpossession-table-change': (event: TableChangeEvent) => void;
          'onpossession-undo': (event: UndoEvent) => void;
        }
      >;
      'possession-units': Tag<
        PossessionUnits,
        'allocation' | 'activities' | 'windows' | 'zone' | 'selectedActivity' | 'strings',
        {
          'onpossession-figure-ask': (event: FigureAskEvent) => void;
          'onpossession-units-select': (event: UnitsSelectEvent) => void;
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
        { 'onpossession-placement-select': (event: PlacementSelectEvent) => void }
      >;
      'possession-why': Tag<
        PossessionWhy,
        'explanation' | 'strings',
        { 'onpossession-why-link': (event: WhyLinkEvent) => void }
      >;
    }
  }
}
