import type { PackageSummary } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { clockText, dayText } from '../shared/format.js';
import { Pool } from '../shared/pool.js';
import { MapCell } from './map-cell.js';
import type { FitStrings } from './strings.js';

/** One package's row: its name, which stands still, and a pool of cells. */
export class MapRow {
  readonly element = document.createElement('tr');
  readonly cells = new Pool(() => new MapCell());
  readonly head = document.createElement('th');
  /** What was drawn last, to leave a row alone that is looked at again in the course of a scroll. */
  drawn = '';
  readonly #name = document.createElement('strong');
  readonly #under = document.createElement('span');
  #place = -1;
  #top = -1;
  #title = '';

  constructor() {
    this.element.setAttribute('role', 'row');
    this.head.setAttribute('role', 'rowheader');
    this.head.scope = 'row';
    this.head.setAttribute('aria-colindex', '1');
    this.#name.className = 'run';
    this.#under.className = 'quiet run';
    this.head.append(this.#name, ' ', this.#under);
    this.element.append(this.head);
  }

  write(place: number, top: number, pack: PackageSummary, under: string, chosen: boolean): void {
    if (place !== this.#place) {
      this.#place = place;
      this.element.setAttribute('aria-rowindex', String(place + 2));
    }
    if (top !== this.#top) {
      this.#top = top;
      this.element.style.setProperty('inset-block-start', `${top}px`);
    }
    if (this.#name.textContent !== pack.id) this.#name.textContent = pack.id;
    if (this.#under.textContent !== under) this.#under.textContent = under;
    const title = `${pack.id} ${pack.title}`.trim();
    if (title !== this.#title) {
      this.#title = title;
      this.head.title = title;
    }
    this.head.classList.toggle('within', chosen);
  }
}

/** The heading of one window's column. */
export class MapHead {
  readonly element = document.createElement('th');
  readonly #name = document.createElement('strong');
  readonly #day = document.createTextNode('');
  readonly #clock = document.createElement('span');
  #window: AccessWindow | undefined;
  /** The day is written anew in another language. */
  #words: FitStrings | undefined;
  #look = '';

  constructor() {
    this.element.setAttribute('role', 'columnheader');
    this.element.scope = 'col';
    this.#clock.className = 'clock-run';
    this.element.append(this.#name, this.#day, document.createElement('br'), this.#clock);
  }

  write(
    column: number,
    start: number,
    window: AccessWindow,
    chosen: boolean,
    words: FitStrings,
  ): void {
    const look = `${column} ${start} ${chosen}`;
    const another = window !== this.#window || words !== this.#words;
    if (look === this.#look && !another) return;
    this.#look = look;
    const { element } = this;
    element.setAttribute('aria-colindex', String(column + 2));
    element.style.setProperty('inset-inline-start', `${start}px`);
    element.className = `${window.status}${chosen ? ' within' : ''}`;
    if (!another) return;
    this.#window = window;
    this.#words = words;
    const { id, title, zone } = window;
    this.#name.textContent = id;
    element.title = `${id} ${title}`.trim();
    this.#day.data = dayText(window.start, zone);
    this.#clock.textContent = `${clockText(window.start, zone)}\u2013${clockText(window.end, zone)}`;
  }
}
