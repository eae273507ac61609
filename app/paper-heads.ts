import type { PossessionDesk } from '../components/desk/desk.js';

/** The sheets that elements ask for by name, and the one they have without. */
const sheets = ['', 'possession-window', 'possession-plan', 'possession-sheet'];

/**
 * Puts the plan's name, the view, the date and the revision at the head of every printed page, as they are when the page
 * is printed. A page box has no elements: its words are part of a style sheet.
 */
export function keepPaperHeads(desk: PossessionDesk): void {
  const sheet = new CSSStyleSheet();
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  const write = (): void => {
    const { start, end } = desk.paperHead;
    const box = 'font-size: 8pt; white-space: nowrap;';
    const boxes = `margin: 16mm 10mm 12mm; @top-left { content: ${quoted(start)}; ${box} } @top-right { content: ${quoted(end)}; ${box} }`;
    sheet.replaceSync(sheets.map((name) => `@page ${name} { ${boxes} }`).join('\n'));
  };
  addEventListener('beforeprint', write);
  // Some browsers, and previews, tell of paper only in this way.
  matchMedia('print').addEventListener('change', ({ matches }) => {
    if (matches) write();
  });
}

/** A string of a style sheet. */
const quoted = (text: string): string =>
  `"${text.replaceAll(/[\\"]/g, String.raw`\$&`).replaceAll(/\p{Cc}/gu, ' ')}"`;
