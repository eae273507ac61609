// A German desk, walked from view to view. Nothing of its English catalogues may be left to be seen; what the engine words
// is English and marked so, and what was typed is as it was typed.
import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { defaultStrings as desk } from '../../components/desk/strings.js';
import { deskViews } from '../../components/desk/views.js';
import { defaultStrings as fit } from '../../components/fit/strings.js';
import { defaultStrings as handback } from '../../components/handback/strings.js';
import { defaultStrings as imports } from '../../components/import/strings.js';
import { defaultStrings as people } from '../../components/people/strings.js';
import { defaultStrings as plan } from '../../components/plan/strings.js';
import { defaultStrings as ribbon } from '../../components/ribbon/strings.js';
import { defaultStrings as rules } from '../../components/rules/strings.js';
import { defaultStrings as sheet } from '../../components/sheet/strings.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

const document = aDocument(
  'Zwei Nächte',
  {
    windows: tableOf(
      'windows.csv',
      `window,title,start,end,status
W1,Erste Nacht,2027-03-02 23:00,2027-03-03 05:00,confirmed
W2,Zweite Nacht,2027-03-09 23:00,2027-03-10 05:00,confirmed`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,minutes,key date
Deck,D1,Ausbau,200,2027-03-31
Rail,R1,Gleis legen,280,2027-03-02`,
    ),
  },
  { rules: stepRules() },
);

/** Words that are alike in both languages, or that are a name of the data: kinds of columns, states typed in cells. */
const alike = new Set(['Plan', 'Name', 'UTF-8', 'Windows-1252', 'km + m', 'confirmed']);

/** Every text of the English catalogues that a figure does not make. */
function englishOf(words: object): string[] {
  return Object.values(words).flatMap((item: unknown) =>
    typeof item === 'string'
      ? [item]
      : typeof item === 'object' && item !== null
        ? englishOf(item)
        : [],
  );
}

const english = new Set(
  [desk, fit, handback, imports, people, plan, ribbon, rules, sheet]
    .flatMap(englishOf)
    .filter((item) => /[a-z]{2}/i.test(item) && !alike.has(item)),
);

/** The texts that can be seen below a node, through shadow roots, but for those marked as English and the cells of tables typed. */
function seen(node: Node): string[] {
  if (node instanceof Text) {
    const words = node.data.replaceAll(/\s+/g, ' ').trim();
    return words === '' ? [] : [words];
  }
  if (node instanceof Element) {
    if (node instanceof HTMLStyleElement || node.getAttribute('lang') === 'en') return [];
    if (node.matches('[role=gridcell]') && node.closest('[role=grid]')?.matches('.sheet'))
      return [];
    if (!(node as HTMLElement).checkVisibility?.()) return [];
  }
  const within = node instanceof Element && node.shadowRoot ? node.shadowRoot : node;
  return [...within.childNodes].flatMap(seen);
}

describe('a German desk', () => {
  it('shows no English of its catalogues in any view', async () => {
    const page = await fixture(
      html`<div lang="de">
        <possession-desk
          .engine=${createInlineEngine()}
          .document=${document}
          .now=${Date.UTC(2027, 1, 20)}
        ></possession-desk>
      </div>`,
    );
    const el: PossessionDesk = page.querySelector('possession-desk')!;
    await el.updateComplete;
    await waitUntil(() => text(el.renderRoot as HTMLElement).includes('Rückgabe'), 'German words');
    await waitUntil(() => el.planning.allocation, 'a plan');
    for (const view of deskViews) {
      el.show(view);
      await el.updateComplete;
      const left = (): string[] => seen(el).filter((item) => english.has(item));
      // The catalogue of an element comes with the first element that asks for it.
      await waitUntil(() => left().length === 0).catch(() => undefined);
      expect(left(), view).to.deep.equal([]);
    }
  });
});
