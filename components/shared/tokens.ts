import { css } from 'lit';

/**
 * Colours, sizes and type of every element. Each token can be set from outside as `--possession-<name>`; light and
 * dark follow the `color-scheme` in force where the element stands.
 *
 * Hues are those of M. Okabe and K. Ito, "Color Universal Design" (2008), chosen by them to stay apart for colour-blind
 * readers: sky blue lead-in, reddish purple lead-out, orange curfew, yellow margin, bluish green usable, vermilion
 * short, blue to act on. They are darkened or paled here until text on them reads; a pattern or a word always goes along.
 */
export const tokens = css`
  :host {
    --_paper: var(--possession-paper, light-dark(#f3f1ea, #14171b));
    --_surface: var(--possession-surface, var(--_paper));
    --_raised: var(--possession-raised, light-dark(#fdfcf8, #1a1e24));
    --_sunk: var(--possession-sunk, light-dark(#e8e5db, #0e1114));
    --_ink: var(--possession-ink, light-dark(#1a1d21, #ece7db));
    --_quiet: var(--possession-quiet, light-dark(#53575c, #aeaaa0));
    --_hair: var(--possession-hair, light-dark(#d8d3c6, #2e343b));
    --_rule: var(--possession-rule, light-dark(#7d7a71, #7b8189));
    --_act: var(--possession-act, light-dark(#005587, #86c9f2));
    --_act-wash: var(--possession-act-wash, light-dark(#dbe9f2, #1c3344));
    --_focus: var(--possession-focus, light-dark(#0072b2, #f0e442));

    --_usable: var(--possession-usable, light-dark(#00795a, #2bb890));
    --_on-usable: var(--possession-on-usable, light-dark(#ffffff, #04211a));
    --_good: var(--possession-good, light-dark(#00654b, #57d3ab));
    --_good-wash: var(--possession-good-wash, light-dark(#d3ebe1, #123a30));
    --_bad: var(--possession-bad, light-dark(#9a3c00, #ffa369));
    --_bad-wash: var(--possession-bad-wash, light-dark(#f9e0cd, #43220d));
    --_warn: var(--possession-warn, light-dark(#755000, #f2bd4a));

    --_lead-in: var(--possession-lead-in, light-dark(#c4e2f5, #1c4560));
    --_lead-in-line: var(--possession-lead-in-line, light-dark(#0072b2, #7cc4f0));
    --_lead-out: var(--possession-lead-out, light-dark(#f0d5e4, #4d2b42));
    --_lead-out-line: var(--possession-lead-out-line, light-dark(#97426f, #dfa0c4));
    --_curfew: var(--possession-curfew, light-dark(#f8dea0, #4d3905));
    --_curfew-line: var(--possession-curfew-line, light-dark(#8f6200, #eeb12d));
    --_shift-break: var(--possession-shift-break, light-dark(#dcdad4, #363b41));
    --_shift-break-line: var(--possession-shift-break-line, light-dark(#5f6469, #a7abb0));
    --_margin: var(--possession-margin, light-dark(#f6f0b8, #403d10));
    --_margin-line: var(--possession-margin-line, light-dark(#6b6600, #e6da3f));

    --_font: var(
      --possession-font,
      system-ui,
      'Segoe UI',
      Roboto,
      'Helvetica Neue',
      'Noto Sans',
      'Liberation Sans',
      Arial,
      sans-serif
    );
    /* Five sizes of text and two heights of what is pressed; the second for a hand in a glove. */
    --_small: 0.75rem;
    --_text: 0.875rem;
    --_lead: 1rem;
    --_head: 1.25rem;
    --_figure: 2rem;
    --_control: 2rem;
    --_on-site: 3.5rem;
    --_radius: 3px;
  }
`;
