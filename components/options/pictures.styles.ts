import { css } from 'lit';

/** The parts of a cost as bars, and what stopping after each count of units costs. */
export const pictureStyles = css`
  .overrun {
    fill: var(--_bad);
  }
  .plant {
    fill: var(--_rule);
  }
  .booking {
    fill: var(--_act);
  }
  .key-dates {
    fill: var(--_lead-out-line);
  }
  .re-booking {
    fill: var(--_curfew-line);
  }
  .bar,
  .bar rect {
    stroke: var(--_paper);
  }
  .stops {
    margin-block: 0.375rem;
  }
  .stops rect {
    stroke: var(--_paper);
  }
  .stops .grid {
    stroke: var(--_hair);
  }
  .stops text.soft {
    fill: var(--_quiet);
  }
  .stops text.best {
    font-weight: 700;
  }
  .stops .least {
    fill: var(--_good);
  }
  .keys {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    font-size: var(--_small);
  }
  .keys svg {
    display: inline-block;
  }
  @media (forced-colors: active) {
    .bar rect,
    .stops rect {
      fill: Canvas;
      stroke: CanvasText;
    }
    .stops .overrun,
    .stops .least,
    .bar .overrun {
      fill: CanvasText;
    }
    .stops text,
    .stops text.soft {
      fill: CanvasText;
    }
    .stops .grid {
      stroke: GrayText;
    }
  }
`;
