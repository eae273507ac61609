import { html, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import type { Milestone } from '../../src/engine/index.js';

export type MilestoneState = Milestone['state'];

/** In the order in which they want attention. */
export const milestoneStates: readonly MilestoneState[] = [
  'late',
  'due',
  'missed at adding',
  'met',
  'not needed',
];

/** The class that colours a state. */
export function stateClass(state: MilestoneState): string {
  return state.replaceAll(' ', '-');
}

/** One shape a state, drawn about 0, 0 within 7 px either way, so that states are told apart without colour. */
export function stateShape(state: MilestoneState): SVGTemplateResult {
  switch (state) {
    case 'met':
      return svg`<circle class="shape met" r="6"></circle><path class="sign" d="M-3 0.2 L-1 2.4 L3 -2.2"></path>`;
    case 'due':
      return svg`<circle class="shape due" r="5.25"></circle>`;
    case 'late':
      return svg`<path class="shape late" d="M0 -6.5 L6.5 5.5 H-6.5 Z"></path><path class="sign" d="M0 -2.5 V1.5 M0 3 V4.2"></path>`;
    case 'missed at adding':
      return svg`<rect class="shape missed-at-adding" x="-5" y="-5" width="10" height="10"></rect><path class="cross" d="M-5 -5 L5 5 M-5 5 L5 -5"></path>`;
    case 'not needed':
      return svg`<path class="shape not-needed" d="M-6 0 H6"></path>`;
  }
}

/** The shape of a state before its word. */
export function stateMark(state: MilestoneState, word: string): TemplateResult {
  return html`<span class="state ${stateClass(state)}"
    ><svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">${stateShape(state)}</svg
    >${word}</span
  >`;
}
