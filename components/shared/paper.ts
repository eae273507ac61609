import { css } from 'lit';

/** Width of an A4 sheet within margins of 10 mm, in CSS pixels. */
export const PORTRAIT = 718;
export const LANDSCAPE = 1046;

/**
 * Black on white on paper, whatever the screen's colours: hatchings tell kinds apart, nothing scrolls, headings come
 * again on each sheet, and nothing that only a screen can answer is left. Put it after an element's own styles.
 *
 * The size of the sheet and its number are the page's: an element names its sheet with `page`, and the page says
 * `@page possession-plan { size: A4 landscape; @bottom-right { content: counter(page) ' / ' counter(pages) } }`.
 */
export const paper = css`
  .on-paper {
    display: none;
  }
  @media print {
    :host {
      --_paper: #fff;
      --_raised: #fff;
      --_sunk: #fff;
      --_ink: #000;
      --_quiet: #000;
      --_hair: #888;
      --_rule: #000;
      --_act: #000;
      --_act-wash: #fff;
      --_usable: #fff;
      --_on-usable: #000;
      --_good: #000;
      --_good-wash: #fff;
      --_bad: #000;
      --_bad-wash: #fff;
      --_warn: #000;
      --_lead-in: #fff;
      --_lead-in-line: #000;
      --_lead-out: #fff;
      --_lead-out-line: #000;
      --_curfew: #fff;
      --_curfew-line: #000;
      --_shift-break: #fff;
      --_shift-break-line: #000;
      --_margin: #fff;
      --_margin-line: #000;
      color-scheme: light;
      background: #fff;
      font-size: 9pt;
    }
    .on-paper {
      display: revert;
    }
    .on-screen {
      display: none !important;
    }
    .scroll {
      overflow: visible;
      max-width: none;
      max-height: none;
    }
    .usable.edge {
      stroke: #000;
    }
    thead {
      display: table-header-group;
    }
    /* A sum stands once, after its rows. */
    tfoot {
      display: table-row-group;
    }
    tr,
    li,
    .cautions,
    .keep-whole {
      break-inside: avoid;
    }
    h2,
    h3 {
      break-after: avoid;
    }
    button.plain {
      text-decoration: none;
    }
    /* Nothing opens on paper. */
    summary {
      list-style: none;
    }
    summary::-webkit-details-marker {
      display: none;
    }
    .cautions {
      display: block;
      margin-top: 3mm;
      padding: 1.5mm 0;
      background: none;
      font-size: 8pt;
    }
  }
`;
