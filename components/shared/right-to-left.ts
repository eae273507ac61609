import { css } from 'lit';

/**
 * For pages that run from right to left: time in drawings runs from left to right as on any clock chart, and a figure
 * keeps its number before its unit.
 */
export const rightToLeft = css`
  svg {
    direction: ltr;
  }
  :host(:dir(rtl)) td.figure,
  :host(:dir(rtl)) button .figure {
    direction: ltr;
    text-align: left;
  }
  /* Times and dates alone have no letter to tell their direction by: the earlier one stays first. */
  .clock-run {
    direction: ltr;
    unicode-bidi: isolate;
  }
  .run,
  input[type='text'] {
    unicode-bidi: plaintext;
    text-align: match-parent;
  }
`;
