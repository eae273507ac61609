import { expect, fixture, html } from '@open-wc/testing';
import '../../components/import/define.js';
import type { ImportAcceptEvent } from '../../components/import/import-accept-event.js';
import type { PossessionImport } from '../../components/import/import.js';
import type { ImportedFile, ImportResult } from '../../src/engine/types.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { frame, planDocument, sampleEngine } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

const shown = (engine = sampleEngine()): Promise<PossessionImport> =>
  fixture(
    html`<possession-import .engine=${engine} .document=${planDocument}></possession-import>`,
  );
const file = (name: string): ImportedFile => ({ name, bytes: new Uint8Array([65]) });
const text = (el: PossessionImport): string => el.renderRoot.textContent.replaceAll(/\s+/g, ' ');
const button = (el: PossessionImport, label: string): HTMLButtonElement =>
  [...el.renderRoot.querySelectorAll('button')].find((element) =>
    element.textContent.includes(label),
  )!;

describe('possession-import', () => {
  it('shows what was detected before anything is taken', async () => {
    const el = await shown();
    await el.read([file('nights.csv')]);
    expect(text(el)).to.contain('parted by semicolon');
    expect(text(el)).to.contain('encoding utf-8');
    expect(text(el)).to.contain('Possession read as window');
    expect(text(el)).to.contain('colour of the hut, kept, not read');
  });

  it('gives each fault with its line, its column and how to mend it', async () => {
    const el = await shown();
    await el.read([file('nights.csv')]);
    const said = (): string =>
      el.renderRoot.querySelector('tbody tr')!.textContent.replaceAll(/\s+/g, ' ');
    await waitUntil(() => said().includes('Write'));
    const row = said();
    expect(row).to.contain('line 7, start');
    expect(row).to.contain('01:30 does not exist in Europe/London');
    expect(row).to.contain('or 02:00 or after.');
  });

  it('hands over what was read once it is accepted, and closes the preview', async () => {
    const el = await shown();
    const taken: ImportAcceptEvent[] = [];
    el.addEventListener('possession-import-accept', (event) => taken.push(event));
    await el.read([file('nights.csv')]);
    expect(taken).to.have.length(0);
    button(el, 'Take it').click();
    await el.updateComplete;
    expect(taken[0]!.report[0]!.file).to.equal('nights.csv');
    expect(el.renderRoot.querySelector('.file')).to.equal(null);
  });

  it('changes nothing when it is left', async () => {
    const el = await shown();
    let taken = 0;
    el.addEventListener('possession-import-accept', () => (taken += 1));
    await el.read([file('nights.csv')]);
    button(el, 'Leave it').click();
    await el.updateComplete;
    expect(taken).to.equal(0);
    expect(el.renderRoot.querySelector('.file')).to.equal(null);
  });

  it('reads pasted cells', async () => {
    const read: ImportedFile[] = [];
    const engine = sampleEngine();
    const el = await shown({
      ...engine,
      importFiles: (files, document) => {
        read.push(...files);
        return engine.importFiles(files, document);
      },
    });
    el.renderRoot.querySelector('textarea')!.value = 'window\tstart\nN1\t2027';
    button(el, 'pasted').click();
    await el.updateComplete;
    expect(new TextDecoder().decode(read[0]!.bytes)).to.equal('window\tstart\nN1\t2027');
  });

  it('reads dropped files', async () => {
    const el = await shown();
    const data = new DataTransfer();
    data.items.add(new File(['window'], 'dropped.csv'));
    const drop = el.renderRoot.querySelector('.drop')!;
    drop.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }));
    for (let turn = 0; turn < 50 && !text(el).includes('dropped.csv'); turn += 1) await frame();
    expect(text(el)).to.contain('dropped.csv');
  });

  it('says when reading fails', async () => {
    const el = await shown(
      sampleEngine({ importFiles: () => Promise.reject(new Error('the worker stopped')) }),
    );
    await el.read([file('nights.csv')]);
    expect(text(el)).to.contain('Could not be read: the worker stopped');
  });

  it('shows the answer to the latest files when an earlier answer comes late', async () => {
    const engine = sampleEngine();
    const late: ((result: ImportResult) => void)[] = [];
    const el = await shown({
      ...engine,
      importFiles: (files, document) =>
        files[0]!.name === 'early.csv'
          ? new Promise((resolve) => late.push(resolve))
          : engine.importFiles(files, document),
    });
    const early = el.read([file('early.csv')]);
    await el.read([file('later.csv')]);
    late[0]!(await engine.importFiles([file('early.csv')], planDocument));
    await early;
    expect(text(el)).to.contain('later.csv');
    expect(text(el)).not.to.contain('early.csv');
  });

  it('has no accessibility faults empty, filled and failed, light and dark', async () => {
    const el = await shown();
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
      await el.read([file('nights.csv')]);
      expect(await axeFaults(el)).to.deep.equal([]);
      button(el, 'Leave it').click();
      await el.updateComplete;
    });
  });
});
