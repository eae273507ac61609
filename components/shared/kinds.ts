import { css, svg, type SVGTemplateResult } from 'lit';
import type { WindowStatus } from '../../src/model/index.js';
import type { LedgerKind } from '../../src/rules/types.js';

/** What each kind of ledger row is called on screen. */
export const kindText: Readonly<Record<LedgerKind, string>> = {
  'lead-in': 'Lead-in',
  usable: 'Usable',
  curfew: 'Curfew',
  'shift-break': 'Shift break',
  'lead-out': 'Lead-out',
  margin: 'Handback margin',
};

/** What each status of a window is called on screen. */
export const statusText: Readonly<Record<WindowStatus, string>> = {
  requested: 'requested',
  offered: 'offered',
  confirmed: 'confirmed',
  withdrawn: 'withdrawn',
};

export const ledgerKinds = Object.keys(kindText) as LedgerKind[];

/** One hatching a kind, so that kinds are told apart without colour. Usable time is the only solid one. */
const hatch: Readonly<Record<LedgerKind, string>> = {
  'lead-in': 'M-1 7 L7 -1 M-1 1 L1 -1 M5 7 L7 5',
  usable: '',
  curfew: 'M1.5 1.5 h1.6 v1.6 h-1.6 z M4.5 4.5 h1.6 v1.6 h-1.6 z',
  'shift-break': 'M0 0 L6 6 M6 0 L0 6',
  'lead-out': 'M-1 -1 L7 7 M-1 5 L1 7 M5 -1 L7 1',
  margin: 'M0 3 H6',
};

/** Pattern definitions for an SVG; fill with `kindFill(kind)`. */
export const kindPatterns: SVGTemplateResult = svg`<defs>${ledgerKinds.map(
  (kind) => svg`<pattern id="fill-${kind}" width="6" height="6" patternUnits="userSpaceOnUse">
    <rect class="ground ${kind}" width="6" height="6"></rect>
    <path class="hatch ${kind}" d=${hatch[kind]}></path>
  </pattern>`,
)}</defs>`;

export function kindFill(kind: LedgerKind): string {
  return `url(#fill-${kind})`;
}

/** A sample of a kind for keys and rows. */
export function kindSwatch(kind: LedgerKind): SVGTemplateResult {
  return svg`<rect class="edge ${kind}" x="0.5" y="0.5" width="15" height="11" fill=${kindFill(kind)}></rect>`;
}

/** Colours of the patterns and of the edges of what they fill. */
export const kindStyles = css`
  .hatch {
    fill: none;
    stroke-width: 1;
  }
  .ground.lead-in {
    fill: var(--_lead-in);
  }
  .ground.usable {
    fill: var(--_usable);
  }
  .ground.curfew {
    fill: var(--_curfew);
  }
  .ground.shift-break {
    fill: var(--_shift-break);
  }
  .ground.lead-out {
    fill: var(--_lead-out);
  }
  .ground.margin {
    fill: var(--_margin);
  }
  .lead-in:is(.hatch, .edge) {
    stroke: var(--_lead-in-line);
  }
  .usable:is(.hatch, .edge) {
    stroke: var(--_usable);
  }
  .curfew:is(.hatch, .edge) {
    stroke: var(--_curfew-line);
  }
  .shift-break:is(.hatch, .edge) {
    stroke: var(--_shift-break-line);
  }
  .lead-out:is(.hatch, .edge) {
    stroke: var(--_lead-out-line);
  }
  .margin:is(.hatch, .edge) {
    stroke: var(--_margin-line);
  }
  @media (forced-colors: active) {
    .ground {
      fill: Canvas !important;
    }
    .ground.usable {
      fill: CanvasText !important;
    }
    .hatch,
    .edge {
      stroke: CanvasText !important;
    }
  }
`;
