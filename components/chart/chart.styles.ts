import { css } from 'lit';

/** A canvas knows no custom properties: `.tone-n` and `.probe` parts carry them as colours to be read. */
export const styles = css`
  .tone-0 {
    color: var(--_act);
  }
  .tone-1 {
    color: var(--_lead-in-line);
  }
  .tone-2 {
    color: var(--_usable);
  }
  .tone-3 {
    color: var(--_curfew-line);
  }
  .tone-4 {
    color: var(--_lead-out-line);
  }
  .tone-5 {
    color: color-mix(in oklab, var(--_ink), var(--_paper) 20%);
  }
  .tone-6 {
    color: var(--_margin-line);
  }
  .tone-7 {
    color: var(--_shift-break-line);
  }
  .paper {
    color: var(--_paper);
  }
  .ink {
    color: var(--_ink);
  }
  .soft {
    color: var(--_quiet);
  }
  .hair {
    color: var(--_hair);
  }
  .probes {
    position: absolute;
    visibility: hidden;
  }
  .frame {
    position: relative;
    height: var(--possession-chart-height, 17rem);
    touch-action: pan-y;
  }
  .frame:focus-visible {
    outline: 2px solid var(--_focus);
    outline-offset: 2px;
  }
  canvas {
    display: block;
    max-width: 100%;
  }
  .keys {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 0.875rem;
    margin-bottom: 0.25rem;
    font-size: var(--_small);
  }
  .keys li {
    display: flex;
    align-items: center;
    gap: 0.375rem;
  }
  .keys canvas {
    border: 1px solid currentColor;
  }
  .under {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0.25rem 1rem;
  }
  .readout {
    flex: 1 1 16rem;
    min-height: 2.8em;
    overflow-wrap: anywhere;
  }
  .zoom {
    display: flex;
    gap: 0.25rem;
  }
  .scroll {
    max-height: 20rem;
  }
  th[scope='row'] {
    color: var(--_ink);
    font-weight: 400;
  }
  @media (forced-colors: active) {
    .probes *,
    .keys * {
      forced-color-adjust: auto;
    }
    .paper {
      color: Canvas;
    }
    .hair {
      color: GrayText;
    }
  }
  @media print {
    .frame {
      height: auto;
    }
    .frame canvas {
      width: 100% !important;
      height: auto !important;
    }
  }
`;
