import { noChange } from 'lit';
import { Directive, directive, PartType, type ElementPart, type PartInfo } from 'lit/directive.js';

class Placed extends Directive {
  #set = '';

  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new Error('placed() stands on an element');
  }

  render(_top: number | undefined, _height: number): typeof noChange {
    return noChange;
  }

  override update(
    { element }: ElementPart,
    [top, height]: [number | undefined, number],
  ): typeof noChange {
    const wanted = top === undefined ? '' : `${top} ${height}`;
    if (wanted === this.#set) return noChange;
    this.#set = wanted;
    const { style } = element as HTMLElement;
    if (top === undefined) {
      style.removeProperty('inset-block-start');
      style.removeProperty('block-size');
    } else {
      style.setProperty('inset-block-start', `${top}px`);
      style.setProperty('block-size', `${height}px`);
    }
    return noChange;
  }
}

/** Puts an element at a height of its list, in pixels; `undefined`: where it falls. No `style` attribute: a strict policy refuses it. */
export const placed = directive(Placed);
