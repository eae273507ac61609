import { css } from 'lit';

/** The agreed plan over the programme, and the line that names it elsewhere. */
export const agreedStyles = css`
  .agreed {
    display: grid;
    gap: 0.25rem;
  }
  .agreed:empty {
    display: none;
  }
  .agreed .proposal {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.75rem;
    align-items: center;
  }
  .agreed :is(.accept, .earlier) > summary {
    cursor: pointer;
    padding-block: 0.25rem;
  }
  .agreed :is(.accept form, .freeze) {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.75rem;
    align-items: center;
    padding-block: 0.25rem;
  }
  .agreed .accept[open] {
    flex-basis: 100%;
  }
  .agreed .broken {
    padding: 0.25rem 0.75rem;
    border-inline-start: 3px solid var(--_bad);
    background: var(--_bad-wash);
  }
  .agreed ul {
    margin: 0;
    padding-inline-start: 1.25rem;
  }
  .agreed .earlier li {
    padding-block: 0.125rem;
  }
  .agreed-line {
    color: var(--_quiet);
  }
`;
