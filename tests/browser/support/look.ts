import { oneEvent } from '@open-wc/testing';
import './english.js';

// What a reader sees of an element, and what it sends when something is pressed.

interface Drawn extends HTMLElement {
  readonly renderRoot: ParentNode;
}

/** The first part that the selector names; the test fails on its use where there is none. */
export const find = (el: Drawn, selector: string): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(selector)!;

export const all = (el: Drawn, selector: string): HTMLElement[] => [
  ...el.renderRoot.querySelectorAll<HTMLElement>(selector),
];

/** Text with its white space as it is read. */
export const text = (item: Node | null | undefined): string =>
  (item?.textContent ?? '').replaceAll(/\s+/g, ' ').trim();

/** The first of the parts that holds some words. */
export const withText = <T extends HTMLElement>(el: Drawn, selector: string, words: string): T =>
  all(el, selector).find((element) => text(element).includes(words)) as T;

/** The event that pressing something sends. */
export async function sent<E extends Event>(
  el: Drawn,
  type: string,
  press: () => void,
): Promise<E> {
  setTimeout(press);
  return oneEvent<E>(el, type);
}

export const open = (details: Element): void => {
  (details as HTMLDetailsElement).open = true;
};
