// The whole desk on a German page, view by view: what it says in English is marked as English, but for what was typed.
import { expect, fixture, html } from '@open-wc/testing';
import { setViewport } from '@web/test-runner-commands';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { deskViews } from '../../components/desk/views.js';
import { createWorkerEngine, type ImportedFile } from '../../src/engine/index.js';
import { emptyPlan } from '../../src/model/index.js';
import { button } from './support/desk-look.js';
import {
  alikeIn,
  allSaid,
  deepText,
  englishIn,
  typedIn,
  withoutTyped,
} from './support/german-page.js';
import { germanWords } from './support/german-words.js';
import { waitUntil } from './support/wait-until.js';

const tables = [
  ...['windows', 'work', 'resources', 'trains', 'roster', 'forecast', 'temperatures'],
  'plant-noise',
].map((name) => `${name}.csv`);
const files = [...tables, 'prices.json', 'rules/electrified-two-track.json'];

const fetched = async (path: string): Promise<ImportedFile> => {
  const answer = await fetch(`/sample-csv/${path}`);
  return { name: path.replace(/^.*\//, ''), bytes: new Uint8Array(await answer.arrayBuffer()) };
};

const engine = createWorkerEngine();
before(() => germanWords);
after(() => engine.dispose());

/** A desk over the sample plan on a German page, once it has a plan of the work. */
async function germanDesk(): Promise<PossessionDesk> {
  const empty = emptyPlan('Muster', 'Europe/London');
  const { document } = await engine.importFiles(await Promise.all(files.map(fetched)), empty);
  const page = await fixture(
    html`<div lang="de">
      <possession-desk
        .engine=${engine}
        .document=${document}
        .now=${Date.UTC(2027, 1, 1)}
      ></possession-desk>
    </div>`,
  );
  const el = page.querySelector('possession-desk')!;
  await waitUntil(() => el.planning.allocation, 'a plan');
  return el;
}

const kinds = [
  ...(['handback', 'live', 'price', 'options', 'account'] as const),
  ...(['book', 'people', 'noise', 'lifting'] as const),
];
const isBusy = ({ outlooks, planning }: PossessionDesk): boolean =>
  planning.busy || planning.waits || kinds.some((kind) => outlooks.isBusy(kind));

/** Waits until nothing is worked out any more, and what is drawn stays as it is. */
async function settled(el: PossessionDesk): Promise<void> {
  let before = '';
  let same = 0;
  await waitUntil(() => {
    const now = deepText(el);
    same = !isBusy(el) && now === before ? same + 1 : 0;
    before = now;
    return same > 12;
  });
}

/** Has ways to do the work priced. */
async function askOptions(el: PossessionDesk): Promise<void> {
  await el.updateComplete;
  const options = el.renderRoot.querySelector('possession-options')!;
  await waitUntil(() => button(options.renderRoot, 'Möglichkeiten berechnen'), 'the form');
  button(options.renderRoot, 'Möglichkeiten berechnen')!.click();
  await waitUntil(() => el.outlooks.options, 'the options');
}

/** Windows that options would add have names made of those they are like, which are the user's to change. */
const secondWindows = ({ document }: PossessionDesk): readonly string[] =>
  document!.tables.windows.rows.map(([id]) => `${id} second`);

/** Takes out what was typed. Names in examples are as much in their own language as that is. */
function untyped(el: PossessionDesk, files: readonly string[]): (text: string) => string {
  const { people, noise, booked, price } = el.outlooks;
  const sources = price?.at.rows.map((row) => row.source);
  const examples = [people?.limits, noise?.settings, booked, sources];
  return withoutTyped(typedIn([el.document, examples, files, secondWindows(el)]));
}

/** What the desk says in English as it stands: by words that only English has, and as it stands on an English page. */
async function english(
  el: PossessionDesk,
  files: readonly string[] = [],
): Promise<readonly string[]> {
  const found = englishIn(el, untyped(el, files));
  const german = allSaid(el);
  const page = el.parentElement!;
  page.lang = 'en';
  await settled(el);
  const alike = alikeIn(german, allSaid(el), untyped(el, files));
  page.lang = 'de';
  await settled(el);
  return [...new Set([...found, ...alike])];
}

describe('the desk on a German page', () => {
  it('says nothing in English that is not marked so, in any of its views', async () => {
    const el = await germanDesk();
    const found: string[] = [];
    const look = async (where: string): Promise<void> => {
      await settled(el);
      for (const said of await english(el)) found.push(`${where}: ${said}`);
    };
    for (const view of deskViews) {
      el.show(view);
      await look(view);
    }
    for (const part of ['where', 'wanted', 'units', 'compare'] as const) {
      el.show('plan');
      el.planPart = part;
      await look(part);
    }
    for (const part of ['noise', 'lifting'] as const) {
      el.show('site');
      el.sitePart = part;
      await look(part);
    }
    for (const part of ['overrun', 'options', 'account'] as const) {
      el.show('cost');
      el.costPart = part;
      if (part === 'options') await askOptions(el);
      await look(part);
      if (part === 'account') continue;
      button(el.renderRoot.querySelector(`possession-${part}`)!.renderRoot, 'Bericht')!.click();
      await waitUntil(() => el.renderRoot.querySelector('possession-report'), 'a report');
      await look(`report of ${part}`);
      const report = el.renderRoot.querySelector('possession-report')!;
      expect(report.renderRoot.querySelector('article')!.lang).to.equal('de');
      el.outlooks.showReport(null);
    }
    for (const menu of ['plan', 'help', 'find'] as const) {
      el.menu = menu;
      await look(`menu ${menu}`);
    }
    expect([...new Set(found)]).to.deep.equal([]);
  });

  it('and has room for what became of each window', async () => {
    await setViewport({ width: 1280, height: 900 });
    const el = await germanDesk();
    await settled(el);
    const ribbon = el.renderRoot.querySelector('possession-ribbon')!.renderRoot;
    const outcomes = [...ribbon.querySelectorAll<HTMLElement>('.hours:has(.outcome.harm)')];
    expect(outcomes.length).to.be.greaterThan(2);
    for (const hours of outcomes) expect(hours.scrollWidth).to.be.at.most(hours.clientWidth);
    await setViewport({ width: 800, height: 600 });
  });

  it('nor when a shift is followed, with the plan agreed', async () => {
    const el = await germanDesk();
    el.show('handback');
    await settled(el);
    const start = el.figures.results!.plan.windows.find(
      (window) => window.id === el.outlooks.handbacks[0]!.window,
    )!.start;
    el.picked.pick({ window: el.outlooks.handbacks[0]!.window });
    el.now = start + 2 * 3_600_000;
    await settled(el);
    button(el.renderRoot, 'Während der Schicht')!.click();
    await waitUntil(() => el.outlooks.handbacks.some((handback) => handback.live), 'a forecast');
    await settled(el);
    expect(await english(el)).to.deep.equal([]);
  });

  it('nor when files are brought in that cannot be read whole', async () => {
    const el = await germanDesk();
    const names = ['made-good-in-a-circle', 'time-does-not-exist', 'heading-not-read'];
    const broken = await Promise.all(names.map((name) => fetched(`broken/${name}.csv`)));
    el.show('files');
    await settled(el);
    void el.readFiles(
      broken.map(({ bytes }, at) => new File([new Uint8Array(bytes)], `Tabelle ${at}.csv`)),
    );
    await waitUntil(() => deepText(el).includes('Tabelle 2.csv'), 'the files');
    await settled(el);
    const cells = broken.flatMap(({ bytes }) => new TextDecoder().decode(bytes).split(/[,\n]/));
    const columns = ['trains hit', 'added'];
    const files = [...columns, ...cells, ...broken.map((_, at) => `Tabelle ${at}.csv`)];
    expect(await english(el, files)).to.deep.equal([]);
  });
});
