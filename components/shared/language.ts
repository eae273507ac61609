import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** In which language figures are written (a tag of BCP 47), and in which words are (a primary subtag). */
export interface Spoken {
  readonly figures: string;
  readonly words: string;
}

const english: Spoken = { figures: 'en', words: 'en' };

/** What the element speaks that is drawing itself now. An update of Lit runs without a pause, so it is one at a time. */
let drawing: Spoken | undefined;
let drawer: ReactiveControllerHost | undefined;

/** The element that is drawing itself now. */
export const drawerNow = (): ReactiveControllerHost | undefined => drawer;

/** The language in force: of the element that is being drawn, else of the page. */
export function spokenNow(): Spoken {
  if (drawing) return drawing;
  if (typeof document === 'undefined') return english;
  return { figures: languageAt(document.documentElement), words: 'en' };
}

/** Does something in a language, outside of an element's own drawing. */
export function speaking<T>(spoken: Spoken, work: () => T): T {
  const before = drawing;
  drawing = spoken;
  try {
    return work();
  } finally {
    drawing = before;
  }
}

/** The language of a node: the nearest `lang` round it, through shadow roots, that is a tag of a language; else English. */
export function languageAt(node: Node): string {
  for (let at: Node | null = node; at; at = at instanceof ShadowRoot ? at.host : at.parentNode) {
    const code = at instanceof Element ? at.getAttribute('lang') : null;
    if (code !== null) return known(code);
  }
  return english.figures;
}

function known(tag: string): string {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? english.figures;
  } catch {
    return english.figures;
  }
}

const watched = new Set<Language>();
let watch: MutationObserver | undefined;

/** Hears of every `lang` that changes in the page. */
function hear(): void {
  for (const language of watched) language.look();
}

/**
 * Lets an element write days and numbers in the language of the place where it stands, and draws it anew when that
 * changes. It speaks English words; see `Words` for more.
 */
export class Language implements ReactiveController {
  protected readonly host: ReactiveControllerHost & HTMLElement;
  #before: readonly [Spoken | undefined, ReactiveControllerHost | undefined] = [
    undefined,
    undefined,
  ];
  spoken: Spoken = english;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.host = host;
    host.addController(this);
  }

  hostConnected(): void {
    watched.add(this);
    watch ??= new MutationObserver(hear);
    // Watching a root twice is watching it once.
    for (let root = this.host.getRootNode(); ; root = root.host.getRootNode()) {
      watch.observe(root, { attributes: true, attributeFilter: ['lang'], subtree: true });
      if (!(root instanceof ShadowRoot)) break;
    }
    watch.observe(this.host, { attributes: true, attributeFilter: ['lang'] });
    this.look();
  }

  hostDisconnected(): void {
    watched.delete(this);
    if (watched.size > 0) return;
    watch?.disconnect();
    watch = undefined;
  }

  /** Looks where the element stands, and has it drawn anew where that speaks another language than before. */
  look(): void {
    const figures = languageAt(this.host);
    if (figures === this.spoken.figures) return;
    this.speak({ ...this.spoken, figures });
  }

  protected speak(spoken: Spoken): void {
    this.spoken = spoken;
    this.host.requestUpdate();
  }

  hostUpdate(): void {
    this.#before = [drawing, drawer];
    drawing = this.spoken;
    drawer = this.host;
  }

  hostUpdated(): void {
    [drawing, drawer] = this.#before;
  }
}
