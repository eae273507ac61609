import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button, inside } from './support/desk-look.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'Two nights',
  {
    windows: tableOf(
      'windows.csv',
      `window,start,end,isolation,status
W2,2027-03-09 23:00,2027-03-10 05:00,,confirmed
W1,2027-03-02 23:00,2027-03-03 05:00,S1,confirmed`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,minutes,key date
Deck,D1,Cut out,200,2027-03-31
Rail,R1,Lay rail,400,`,
    ),
  },
  { rules: stepRules() },
);

async function shown(): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${createInlineEngine()} .document=${plan}></possession-desk>`,
  );
  el.show('table');
  await waitUntil(() => el.outlooks.handbacks.length > 0, 'handback');
  await el.updateComplete;
  return el;
}
const rowOf = (el: PossessionDesk, id: string): Record<string, string> => {
  const { columns, rows } = el.shownRows();
  const row = rows.find((item) => item.includes(id))!;
  return Object.fromEntries(columns.map((heading, at) => [heading, row[at]!]));
};

describe('results beside the rows of the desk', () => {
  it('stand beside each window without being asked for', async () => {
    const el = await shown();
    // stepRules: 20 minutes in, 20 out and 30 of margin of six hours; D1 takes 200 of the 290 that are left.
    const used = rowOf(el, el.outlooks.handbacks[0]!.window);
    expect(used).to.include({ gross: '6 h', usable: '4 h 50', 'what is in it': 'D1' });
    expect(used['verdict']).to.equal('held');
    expect(used['margin']).to.equal('2 h 00');
    const idle = rowOf(el, used['window'] === 'W1' ? 'W2' : 'W1');
    expect(idle['what is in it']).to.equal('nothing');
    expect(idle['margin']).to.equal('');
  });

  it('tell of a window without isolation that there is none', async () => {
    const el = await shown();
    expect(rowOf(el, 'W2')['usable, isolated']).to.equal('no isolation');
    expect(rowOf(el, 'W1')['usable, isolated']).to.equal('4 h 50');
  });

  it('stand beside each piece of work, what is left over with its reason', async () => {
    const el = await shown();
    button(el.renderRoot.querySelector('[aria-label="Rows of"]')!, 'Work')!.click();
    await el.updateComplete;
    await waitUntil(
      () =>
        el.shownRows().columns.includes('planned in') &&
        el.shownRows().rows.some((row) => row.includes('R1')),
      'results of the work',
    );
    const placed = rowOf(el, 'D1');
    expect(placed['package fits']).to.equal('2 windows');
    expect(placed['planned in']).to.match(/^W[12]$/);
    expect(placed['verdict']).to.equal('planned, key date met');
    const left = rowOf(el, 'R1');
    expect(left['package fits']).to.equal('no window whole');
    expect(left['verdict']).to.match(/^left over: /);
    expect(left['programme float']).to.equal('no key date');
  });

  it('stay as a person chose them, from table to table and in the next sitting', async () => {
    localStorage.removeItem('possession-fit/results/windows');
    const el = await shown();
    const chosen = ['verdict', 'gross'];
    const sheet = el.renderRoot.querySelector('possession-sheet')!;
    sheet.shadowRoot!.querySelector<HTMLElement>('.choose')!.click();
    await sheet.updateComplete;
    const box = (name: string): HTMLInputElement =>
      [...sheet.shadowRoot!.querySelectorAll('.results label')]
        .find((element) => text(element) === name)!
        .querySelector('input')!;
    for (const name of [
      'gross',
      'usable',
      'usable, isolated',
      'what is in it',
      'clear at',
      'margin',
      'chance on time',
      'gross',
    ]) {
      box(name).click();
      await sheet.updateComplete;
    }
    expect(el.shownRows().columns.slice(1, 3)).to.deep.equal(chosen);
    const rows = el.renderRoot.querySelector('[aria-label="Rows of"]')!;
    button(rows, 'Work')!.click();
    await el.updateComplete;
    // Both tables have a verdict: what is chosen of one says nothing of the other.
    expect(el.shownRows().columns).to.include.members(['package fits', 'total float', 'verdict']);
    button(rows, 'Windows')!.click();
    await el.updateComplete;
    expect(el.shownRows().columns.slice(1, 3)).to.deep.equal(chosen);
    const later = await shown();
    expect(later.shownRows().columns.slice(1, 3)).to.deep.equal(chosen);
    expect(later.shownRows().columns).not.to.include('margin');
    localStorage.removeItem('possession-fit/results/windows');
  });

  it('are explained in the panel, each as what it is', async () => {
    const el = await shown();
    const sheet = el.renderRoot.querySelector('possession-sheet')!;
    const ask = async (column: string): Promise<string> => {
      sheet.dispatchEvent(
        Object.assign(new Event('possession-result-ask', { bubbles: true, composed: true }), {
          row: plan.tables.windows.rows.findIndex(
            ([id]) => id === el.outlooks.handbacks[0]!.window,
          ),
          column,
        }),
      );
      await el.updateComplete;
      return text(inside(el, 'possession-why').querySelector('section'));
    };
    expect(await ask('usable')).to.contain('Usable time');
    expect(await ask('holds'))
      .to.contain('Work planned in')
      .and.to.contain('D1');
    expect(await ask('margin')).to.match(/margin/i);
    expect(await ask('chance')).to.match(/on time/i);
  });

  it('are not there before there is a plan, and say so', async () => {
    const el = await fixture<PossessionDesk>(
      html`<possession-desk
        .engine=${{ ...createInlineEngine(), allocate: () => new Promise(() => undefined) }}
        .document=${plan}
      ></possession-desk>`,
    );
    await el.updateComplete;
    el.show('table');
    await el.updateComplete;
    expect(rowOf(el, 'W1')).to.include({ gross: '6 h', 'what is in it': 'not yet' });
  });

  it('break no rule of accessibility, light and dark', async () => {
    const el = await shown();
    await inBothSchemes(async (scheme) => {
      el.theme = scheme;
      await el.updateComplete;
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});
