import { css } from 'lit';

/**
 * Colours, sizes and type of every element. Each token can be set from outside as `--possession-<name>`; light and
 * dark follow the `color-scheme` in force where the element stands.
 *
 * Hues are those of M. Okabe and K. Ito, "Color Universal Design" (2008), chosen by them to stay apart for colour-blind
 * readers: sky blue lead-in, reddish purple lead-out, orange curfew, yellow margin, bluish green usable, vermilion
 * short, blue to act on. They are darkened or paled here until text on them reads; a pattern or a word always goes along.
 *
 * What each is for, as the manifest tells it:
 * - `paper`: Ground of the page that an element stands on.
 * - `surface`: Ground of the element itself.
 * - `raised`: Ground of buttons, fields and cards.
 * - `sunk`: Ground of heads of tables and of the cautions.
 * - `ink`: Text.
 * - `quiet`: Text of less weight: headings of columns, notes.
 * - `hair`: Thin lines between rows.
 * - `rule`: Edges of buttons, fields and tables.
 * - `act`: What can be acted on: links, pressed buttons, what is chosen.
 * - `act-wash`: Ground of what is chosen or under the pointer.
 * - `focus`: Outline of what the keyboard is at.
 * - `usable`: Usable time.
 * - `on-usable`: Text on usable time.
 * - `good`: Words of a good answer.
 * - `good-wash`: Ground of a good answer.
 * - `bad`: Words of a bad answer and of faults.
 * - `bad-wash`: Ground of a bad answer.
 * - `warn`: Words of a warning.
 * - `lead-in`: Steps of the lead-in.
 * - `lead-in-line`: Edge and pattern of the lead-in.
 * - `lead-out`: Steps of the lead-out.
 * - `lead-out-line`: Edge and pattern of the lead-out.
 * - `curfew`: Times without work.
 * - `curfew-line`: Edge and pattern of times without work.
 * - `shift-break`: Breaks between shifts.
 * - `shift-break-line`: Edge and pattern of breaks between shifts.
 * - `margin`: The required handback margin.
 * - `margin-line`: Edge and pattern of the required handback margin.
 * - `text`: Size of text; the smaller and larger sizes follow it.
 * - `control`: Height of buttons and fields.
 * - `pad`: Space above and below what stands in a row of a table or in a button: how dense an element is.
 * - `radius`: Roundness of corners.
 * - `font`: Family of type; without it that of the page.
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

    --_text: var(--possession-text, 0.875rem);
    --_control: var(--possession-control, 2rem);
    --_pad: var(--possession-pad, 0.25rem);
    --_radius: var(--possession-radius, 3px);

    --_small: calc(var(--_text) * 6 / 7);
    --_lead: calc(var(--_text) * 8 / 7);
    --_head: calc(var(--_text) * 10 / 7);
    --_figure: calc(var(--_text) * 16 / 7);
    /* For a hand in a glove: not for a page to make smaller. */
    --_on-site: 3.5rem;
  }
`;
