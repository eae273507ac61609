import type { DeskView, PossessionDesk } from '../../../components/desk/desk.js';
import type { PlaceId } from '../../../components/desk/views.js';
import { text } from './look.js';

export const tab = (el: PossessionDesk, view: DeskView | PlaceId): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(`#tab-${view}`)!;

/** What an element of the desk has drawn. */
export const inside = (el: PossessionDesk, tag: string): ShadowRoot =>
  el.renderRoot.querySelector(tag)!.shadowRoot!;

/** The first button whose words begin so. */
export const button = (root: ParentNode, name: string): HTMLButtonElement | undefined =>
  [...root.querySelectorAll('button')].find((element) => text(element).startsWith(name));
