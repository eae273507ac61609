import { html, type TemplateResult } from 'lit';

/**
 * Controls that change the plan. With `readonly` none of them can be used; whoever shows them says why at the head of the
 * page, since a control that cannot be used is passed over by the keyboard.
 */
export const changing = (readonly: boolean, controls: unknown): TemplateResult =>
  html`<fieldset class="changing" ?disabled=${readonly}>${controls}</fieldset>`;
