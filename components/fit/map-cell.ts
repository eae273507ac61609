import type { FitVerdict } from '../../src/planner/fit/types.js';
import { saidText } from '../shared/said.js';
import type { FitStrings } from './strings.js';
import { isNearMiss, isOpen, markPath, verdictKind, verdictText } from './verdict-mark.js';

const SVG = 'http://www.w3.org/2000/svg';

export interface CellLook {
  readonly row: number;
  readonly column: number;
  readonly verdict: FitVerdict | undefined;
  readonly words: FitStrings;
  /** Whether it is the cell picked. */
  readonly chosen: boolean;
  /** Whether the Tab key comes to it. */
  readonly here: boolean;
  /** Pixels from the start of the row. */
  readonly start: number;
}

/** One cell of the map, made once and written anew for whatever pair comes to stand in it; only what differs is written. */
export class MapCell {
  readonly element = document.createElement('td');
  readonly #svg = document.createElementNS(SVG, 'svg');
  readonly #path = document.createElementNS(SVG, 'path');
  readonly #amount = document.createTextNode('');
  readonly #word = document.createTextNode('');
  #look: CellLook | undefined;
  #open = false;
  #kind = '';

  constructor() {
    const { element } = this;
    element.setAttribute('part', 'cell');
    element.setAttribute('role', 'gridcell');
    this.#svg.setAttribute('width', '10');
    this.#svg.setAttribute('height', '10');
    this.#svg.setAttribute('aria-hidden', 'true');
    this.#svg.append(this.#path);
    const amount = document.createElement('span');
    amount.className = 'amount';
    const run = document.createElement('span');
    run.className = 'run';
    run.append(this.#amount);
    amount.append(this.#svg, run);
    const word = document.createElement('span');
    word.className = 'word';
    word.append(this.#word);
    element.append(amount, ' ', word);
  }

  /** What it showed last. */
  get look(): CellLook | undefined {
    return this.#look;
  }

  /** Whether how much of it goes is still to be worked out. */
  get open(): boolean {
    return this.#open;
  }

  write(look: CellLook): void {
    const was = this.#look;
    this.#look = look;
    const { element } = this;
    if (was?.row !== look.row) element.dataset['row'] = String(look.row);
    if (was?.column !== look.column) {
      element.dataset['column'] = String(look.column);
      element.setAttribute('aria-colindex', String(look.column + 2));
    }
    if (was?.start !== look.start)
      element.style.setProperty('inset-inline-start', `${look.start}px`);
    if (was?.here !== look.here) element.tabIndex = look.here ? 0 : -1;
    if (was?.chosen !== look.chosen) element.setAttribute('aria-selected', String(look.chosen));
    this.writeVerdict(
      was === undefined || was.verdict !== look.verdict || was.words !== look.words,
    );
  }

  /** Shows what has become known of the verdict; all of it anew when it is another one. */
  writeVerdict(another: boolean): void {
    const { verdict, words } = this.#look ?? {};
    const open = verdict !== undefined && isOpen(verdict);
    if (!another && open === this.#open) return;
    this.#open = open;
    this.element.removeAttribute('title');
    const kind = verdict ? verdictKind(verdict) : 'never';
    const near = verdict && isNearMiss(verdict) ? ' near' : '';
    if (this.#kind !== kind + near) {
      this.#kind = kind + near;
      this.element.className = kind + near;
      this.#path.setAttribute('d', markPath[kind]);
      this.#svg.setAttribute('class', `mark ${kind}`);
    }
    const text =
      verdict && words ? verdictText(verdict, words) : { amount: words?.notRead ?? '', word: '' };
    if (this.#amount.data !== text.amount) this.#amount.data = text.amount;
    if (this.#word.data !== text.word) this.#word.data = text.word;
  }

  /** Says why in words, for whoever points at the cell or goes to it: most cells are never asked. */
  explain(): void {
    const reasons = this.#look?.verdict?.reasons.map(saidText).join(' ') ?? '';
    this.writeVerdict(false);
    if (reasons === '') this.element.removeAttribute('title');
    else this.element.title = reasons;
  }
}
