import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/ribbon/define.js';
import '../../components/ledger/define.js';
import '../../components/fit/define.js';
import '../../components/sheet/define.js';
import '../../components/plan/define.js';
import '../../components/handback/define.js';
import '../../components/document/define.js';
import type { PossessionDocument } from '../../components/document/document.js';
import type { DocumentChangeEvent } from '../../components/document/document-change-event.js';
import type { DocumentReadEvent } from '../../components/document/document-read-event.js';
import { PlanStore } from '../../components/store/index.js';
import './support/look.js';
import { axeFaults } from './support/axe.js';

const files = ['windows.csv', 'work.csv', 'resources.csv', 'rules/electrified-two-track.json']
  .map((name) => `/sample-csv/${name}`)
  .join(' ');

/** Waits until something holds, turn by turn of the page's loop. */
async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((done) => setTimeout(done, 20));
}

async function opened(inside = html`<possession-ribbon></possession-ribbon>`, src = files) {
  const element = document.createElement('possession-document');
  element.zone = 'Europe/London';
  const read = oneEvent<DocumentReadEvent>(element, 'possession-document-read');
  const host = await fixture<HTMLElement>(html`<div>${element}</div>`);
  const { render } = await import('lit');
  render(inside, element);
  element.src = src;
  await read;
  await until(() => element.document !== null);
  return { element, host, read: await read };
}

describe('possession-document', () => {
  it('reads its files and gives them to a ribbon', async () => {
    const { element } = await opened();
    const ribbon = element.querySelector('possession-ribbon')!;
    await until(() => ribbon.windows.length > 0);
    expect(ribbon.windows.map((window) => window.id)).to.deep.equal(
      element.document!.tables.windows.rows.map(([id]) => id),
    );
    expect(ribbon.ledgers).to.have.length(ribbon.windows.length);
    expect(await axeFaults(element)).to.deep.equal([]);
  });

  it('keeps the elements in step: what is picked in one is shown in another', async () => {
    const { element } = await opened(
      html`<possession-ribbon></possession-ribbon><possession-ledger></possession-ledger>`,
    );
    const ribbon = element.querySelector('possession-ribbon')!;
    const ledger = element.querySelector('possession-ledger')!;
    await until(() => ledger.ledger !== null);
    const other = ribbon.windows[2]!.id;
    await ribbon.updateComplete;
    ribbon.renderRoot.querySelector<HTMLElement>(`[data-id="${other}"]`)!.click();
    await until(() => ledger.window?.id === other);
    expect(ledger.ledger!.window).to.equal(other);
  });

  it('takes in what is typed, works it out anew and tells of it', async () => {
    const { element } = await opened(
      html`<possession-sheet of="windows"></possession-sheet
        ><possession-ribbon></possession-ribbon>`,
    );
    const sheet = element.querySelector('possession-sheet')!;
    const ribbon = element.querySelector('possession-ribbon')!;
    await until(() => sheet.table.rows.length > 0 && ribbon.windows.length > 0);
    const before = ribbon.windows.length;
    const told = oneEvent<DocumentChangeEvent>(element, 'possession-document-change');
    await sheet.updateComplete;
    sheet.renderRoot.querySelector<HTMLElement>('[role=grid]')!.focus();
    document.activeElement!.shadowRoot!.activeElement!.dispatchEvent(
      new KeyboardEvent('keydown', { key: 'Delete', bubbles: true, composed: true }),
    );
    expect((await told).document.tables.windows.rows[0]![0]).to.equal('');
    await until(() => ribbon.windows.length === before - 1);
    expect(sheet.faults.some((fault) => fault.severity === 'error')).to.equal(true);
  });

  it('finds a plan and its handback only for an element that shows them', async () => {
    const { element } = await opened(html`<possession-handback></possession-handback>`);
    const handback = element.querySelector('possession-handback')!;
    await until(() => handback.results.length > 0);
    expect(handback.busy).to.equal(false);
    const used = handback.results.map((result) => result.window);
    expect(element.document!.tables.windows.rows.map(([id]) => id)).to.include.members(used);
  });

  it('shows worked-out columns beside the rows', async () => {
    const { element } = await opened(html`<possession-sheet of="work" results></possession-sheet>`);
    const sheet = element.querySelector('possession-sheet')!;
    await until(() =>
      sheet.resultColumns.some(
        (column) =>
          column.id === 'window' &&
          /^[NBS]\d+/.test(
            String((column.value(0, sheet.table.rows[0]!) as { text: string }).text),
          ),
      ),
    );
  });

  it('says what could not be read, and that a zone was assumed', async () => {
    const element = document.createElement('possession-document');
    const read = oneEvent<DocumentReadEvent>(element, 'possession-document-read');
    element.src = '/sample-csv/windows.csv /sample-csv/not-there.csv';
    await fixture(html`<div>${element}</div>`);
    expect((await read).missing).to.have.length(1);
    await element.updateComplete;
    const text = element.renderRoot.querySelector('[part=troubles]')!.textContent;
    expect(text).to.contain('not-there.csv: not read, the server answered 404');
    expect(text).to.contain('No time zone is given');
    expect(await axeFaults(element)).to.deep.equal([]);
  });

  it('takes rows of another table and works them out', async () => {
    const element = await fixture<PossessionDocument>(
      html`<possession-document zone="Europe/London"
        ><possession-ribbon></possession-ribbon
      ></possession-document>`,
    );
    element.setRows('windows', [
      ['window', 'start', 'end', 'lines'],
      ['N1', '2027-03-02 23:00', '2027-03-03 05:00', 'Up;Down'],
    ]);
    const ribbon = element.querySelector('possession-ribbon')!;
    await until(() => ribbon.windows.length === 1);
    expect(ribbon.ledgers[0]!.grossMinutes).to.equal(360);
  });

  it('keeps the plan under a name and opens it again', async () => {
    const keep = `test ${Math.random()}`;
    const first = document.createElement('possession-document');
    Object.assign(first, { zone: 'Europe/London', keep, src: files });
    const host = await fixture<HTMLElement>(html`<div>${first}</div>`);
    await until(() => first.document !== null);
    const sheet = document.createElement('possession-sheet');
    sheet.of = 'windows';
    first.append(sheet);
    await until(() => sheet.table.rows.length > 0);
    await sheet.updateComplete;
    sheet.renderRoot.querySelector<HTMLElement>('[role=grid]')!.focus();
    sheet.shadowRoot!.activeElement!.dispatchEvent(
      new KeyboardEvent('keydown', { key: 'Delete', bubbles: true, composed: true }),
    );
    await until(() => first.document!.tables.windows.rows[0]![0] === '');
    first.setRows('trains', [
      ['train', 'passes at'],
      ['1A01', '2027-03-03 05:40'],
    ]);
    await first.updateComplete;
    first.remove();
    const again = document.createElement('possession-document');
    Object.assign(again, { zone: 'Europe/London', keep, src: files });
    host.append(again);
    await until(() => again.document !== null);
    expect(again.document!.tables.windows.rows[0]![0]).to.equal('');
    expect(again.document!.tables.trains.rows).to.deep.equal([['1A01', '2027-03-03 05:40']]);
    again.remove();
    expect(await new PlanStore({ name: `possession-fit/${keep}` }).list()).to.have.length(1);
  });

  it('feeds elements whose tag was there before its own, and none outside', async () => {
    const outside = await fixture<HTMLElementTagNameMap['possession-ribbon']>(
      html`<possession-ribbon></possession-ribbon>`,
    );
    await opened();
    expect(outside.windows).to.deep.equal([]);
  });

  it('leaves nothing behind of elements that wait for it and go', async () => {
    // A wait for a tag that never comes holds what waits for as long as the page.
    const { get, whenDefined } = customElements;
    let waits = 0;
    customElements.get = () => undefined;
    customElements.whenDefined = () => {
      waits += 1;
      return new Promise(() => undefined);
    };
    try {
      for (let turn = 0; turn < 5; turn += 1) {
        const ribbon = await fixture<HTMLElement>(html`<possession-ribbon></possession-ribbon>`);
        ribbon.remove();
      }
    } finally {
      Object.assign(customElements, { get, whenDefined });
    }
    expect(waits).to.be.at.most(1);
  });
});
