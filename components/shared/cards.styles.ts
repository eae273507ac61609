import { css } from 'lit';

/** Tables that stand as cards where the element is narrow, each cell under its own name (`.narrow`). */
export const cardStyles = css`
  .narrow {
    display: none;
  }
  @container (max-width: 39.99rem) {
    .narrow {
      display: inline;
      color: var(--_quiet);
      font-weight: 400;
    }
    table.cards thead {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }
    table.cards tr {
      display: block;
      padding-block: 0.5rem;
      border-bottom: 1px solid var(--_hair);
    }
    table.cards :is(td, th) {
      display: block;
      width: auto;
      padding: 0.0625rem 0;
      border: 0;
      text-align: start;
      white-space: normal;
    }
  }
`;
