/** A computed number on the screen, by what it is a number of. Windows, activities and packages are named by their ids. */
export type Figure =
  /** Booked end less planned handback, and what of it is required. */
  | { readonly of: 'handback-margin'; readonly window: string }
  /** `index`: place in `HandbackResult.cutOffs`. */
  | { readonly of: 'cut-off'; readonly window: string; readonly index: number }
  | { readonly of: 'point-of-no-return'; readonly window: string; readonly activity: string }
  | { readonly of: 'latest-abort'; readonly window: string; readonly activity: string }
  | { readonly of: 'on-time'; readonly window: string }
  | { readonly of: 'p-value'; readonly window: string; readonly percent: 50 | 80 | 90 | 95 }
  | { readonly of: 'expected-overrun'; readonly window: string }
  /** Chance of being more than so many minutes late. */
  | { readonly of: 'later-than'; readonly window: string; readonly minutes: number }
  /** Chance of handing back on time after so many units, those in place included; without `units`: how many are safe. */
  | {
      readonly of: 'units-on-time';
      readonly window: string;
      readonly activity: string;
      readonly units?: number;
    }
  /** `code`: `PriceRow.code`. */
  /** `minutes`: of one of the overruns side by side; absent: of the one asked about. */
  | { readonly of: 'cost-row'; readonly code: string; readonly minutes?: number }
  | { readonly of: 'cost-total'; readonly minutes?: number }
  | { readonly of: 'cost-expected' }
  | { readonly of: 'cost-p'; readonly percent: 50 | 80 | 95 }
  | { readonly of: 'booking-date'; readonly window: string; readonly milestone: string }
  | { readonly of: 'key-date'; readonly package: string }
  /** Units in place after all visits of a repeated work. */
  | { readonly of: 'units-placed'; readonly activity: string }
  | { readonly of: 'compare'; readonly figure: CompareFigure }
  /** What became of the key date of a package between two plans. */
  | { readonly of: 'compare-key-date'; readonly package: string };

export type CompareFigure = 'finish' | 'windows-used' | 'dates-met' | 'left-over' | 'quality';

/**
 * A reader asks where a computed number comes from. Sent for a person's pick only, by any element that shows such a
 * number as a button; the listener looks the number up in the results it gave the element and explains it, for example
 * by `explainFigure` of `components/why/explain-figure.ts` in a `<possession-why>`.
 */
export class FigureAskEvent extends Event {
  static readonly type = 'possession-figure-ask';
  readonly figure: Figure;

  constructor(figure: Figure) {
    super(FigureAskEvent.type, { bubbles: true, composed: true });
    this.figure = figure;
  }
}

declare global {
  interface HTMLElementEventMap {
    [FigureAskEvent.type]: FigureAskEvent;
  }
}
