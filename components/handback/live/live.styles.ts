import { css } from 'lit';

/** The view for the shift: read at arm's length in the dark, worked with a thumb. */
export const liveStyles = css`
  .live {
    color-scheme: var(--possession-live-scheme, dark);
    padding: 0.75rem;
    background: var(--_paper);
    color: var(--_ink);
    font-size: var(--_lead);
  }
  .live > * + * {
    margin-top: 0.75rem;
  }
  .live .as-of {
    margin-block: 0;
    font: inherit;
  }
  .live h3 {
    color: var(--_quiet);
    font-size: var(--_lead);
  }
  .live .label {
    color: var(--_quiet);
    font-size: var(--_text);
  }
  .live .cautions {
    margin-inline: -0.75rem;
  }
  .big {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr));
    gap: 0.75rem;
  }
  .big > div {
    display: flex;
    flex-direction: column;
    align-items: start;
  }
  .big .main {
    grid-column: span 2;
  }
  .huge {
    font-size: clamp(2rem, 11cqi, 3rem);
    font-weight: 700;
    line-height: 1.1;
  }
  .large {
    font-size: clamp(1.75rem, 9cqi, 2.5rem);
    font-weight: 700;
    line-height: 1.15;
  }
  .big .verdict {
    font-size: var(--_head);
  }
  .next {
    padding: 0.625rem 0.75rem;
    border: 1px solid var(--_rule);
    border-inline-start: 6px solid var(--_good);
    border-radius: var(--_radius);
    background: var(--_raised);
  }
  .next .what {
    font-size: var(--_head);
    overflow-wrap: anywhere;
  }
  .next .by {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.75rem;
    font-size: var(--_head);
  }
  .next .by strong {
    font-weight: 700;
  }
  .next .records li {
    grid-template-columns: minmax(0, 1fr);
    padding-block: 0.5rem 0;
    border: 0;
  }
  .next .records .name {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .folds {
    border-top: 2px solid var(--_rule);
  }
  .live .fold {
    border-bottom: 1px solid var(--_rule);
  }
  .live .fold > summary {
    gap: 0.75rem;
    min-height: var(--_on-site);
    color: var(--_ink);
    font-size: var(--_lead);
    font-weight: 650;
    text-decoration: none;
    list-style: none;
  }
  .live .fold > summary::-webkit-details-marker {
    display: none;
  }
  .live .fold > summary::before {
    flex: none;
    width: 0.5rem;
    height: 0.5rem;
    margin-inline: 0.25rem;
    border: solid var(--_act);
    border-width: 0 2.5px 2.5px 0;
    transform: translateY(-25%) rotate(45deg);
    content: '';
  }
  .live .fold[open] > summary::before {
    transform: translateY(25%) rotate(225deg);
  }
  .live .fold > summary .count {
    margin-inline-start: auto;
    color: var(--_quiet);
    font-weight: 400;
  }
  .live .fold > .inside {
    padding-block-end: 0.75rem;
  }
  .rest > summary {
    display: flex;
    align-items: center;
    min-height: var(--_on-site);
    padding-inline: 0.75rem;
    font-size: var(--_lead);
  }
  .old,
  .outrun li,
  .passed {
    padding: 0.5rem 0.75rem;
    border-inline-start: 6px solid var(--_bad);
    background: var(--_bad-wash);
  }
  .advice {
    padding: 0.5rem 0.75rem 0.625rem;
    border: 3px solid var(--_good);
    border-radius: var(--_radius);
    background: var(--_raised);
  }
  .advice.stop {
    border-color: var(--_bad);
    background: var(--_bad-wash);
  }
  .advice:is(.more, .ungranted) {
    border-color: var(--_warn);
  }
  .advice .say {
    font-size: clamp(3rem, 19cqi, 6rem);
    font-weight: 800;
    line-height: 1;
    letter-spacing: -0.01em;
  }
  .advice .say.long {
    font-size: clamp(2rem, 12.5cqi, 5rem);
  }
  .advice .say.longest {
    font-size: clamp(1.5rem, 8.5cqi, 4rem);
  }
  .advice.stop .say {
    color: var(--_bad);
  }
  .advice .then {
    margin-block-start: 0.25rem;
    font-size: var(--_head);
    font-weight: 600;
  }
  .advice .asked {
    margin-block-start: 0.5rem;
    padding-block-start: 0.5rem;
    border-top: 2px solid var(--_warn);
  }
  .advice .asked strong {
    font-size: var(--_head);
  }
  .advice .doubt {
    margin-block-start: 0.375rem;
    padding-inline-start: 0.625rem;
    border-inline-start: 4px solid var(--_warn);
  }
  .options table {
    width: 100%;
  }
  .options th {
    text-align: start;
    font-weight: 400;
  }
  .options :is(th, td) {
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
    vertical-align: baseline;
  }
  .options .figure {
    padding-inline-start: 0.75rem;
    text-align: end;
  }
  .options th {
    overflow-wrap: anywhere;
  }
  .options th .quiet {
    display: block;
  }
  .records li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 17rem;
    gap: 0.375rem 0.75rem;
    align-items: center;
    padding-block: 0.5rem;
    border-bottom: 1px solid var(--_hair);
  }
  .records .name {
    display: flex;
    flex-direction: column;
    overflow-wrap: anywhere;
  }
  .records .buttons {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0.5rem;
  }
  .records .buttons :only-child {
    grid-column: 2;
  }
  .live button {
    min-height: var(--_on-site);
    padding-inline: 0.5rem;
    font-size: var(--_lead);
    font-weight: 600;
    touch-action: manipulation;
  }
  .live summary {
    display: flex;
    align-items: center;
    min-height: var(--_on-site);
  }
  .live :is(input, select) {
    min-height: var(--_on-site);
    font-size: var(--_lead);
  }
  .live button.strong {
    font-weight: 700;
  }
  .records button .at {
    font-weight: 400;
    white-space: nowrap;
  }
  .log li {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.5rem;
    padding-block: 0.5rem;
    border-bottom: 1px solid var(--_hair);
  }
  .log li > div {
    flex: 1 1 16rem;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .log .label,
  .log .happened,
  .log .written {
    display: block;
  }
  .log .written {
    color: var(--_quiet);
    font-size: var(--_text);
  }
  .log s {
    text-decoration: none;
  }
  .log s .happened {
    text-decoration: line-through;
    color: var(--_quiet);
  }
  .log .correction {
    padding-inline-start: 0.75rem;
    border-inline-start: 3px solid var(--_act);
  }
  @container (max-width: 36rem) {
    .records li {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
