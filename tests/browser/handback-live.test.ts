import { expect, oneEvent } from '@open-wc/testing';
import type { HandbackRecordEvent } from '../../components/handback/handback-record-event.js';
import { shiftLines, type HandbackLogEntry } from '../../components/handback/live/shift-lines.js';
import { exactClock } from '../../components/handback/times.js';
import { percentText } from '../../components/shared/chance.js';
import { MINUTE } from '../../src/calendar/index.js';
import { all, find, text } from './support/look.js';
import { zone } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';
import { beforeGrant, liveResult, log, moment, shown, shownLive } from './support/three-nights.js';

describe('possession-handback while the shift goes on', () => {
  it('counts down to the next cut-off by the moment given, never showing more than there is', async () => {
    const next = liveResult.live!.nextCutOff!;
    const el = await shownLive(next.latestStart - 24.5 * MINUTE);
    expect(text(find(el, '.countdown'))).to.equal('in 24 min');
    el.now = next.latestStart - 0.5 * MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.countdown'))).to.equal('in less than 1 min');
    el.now = next.latestStart + 7 * MINUTE;
    await el.updateComplete;
    // A cut-off that has passed is told as passed, never as what comes next.
    expect(text(find(el, '.next .what'))).not.to.equal(next.name);
    expect(text(find(el, '.passed'))).to.contain(`${next.name} was to start by`);
    expect(text(find(el, '.passed'))).to.contain('Still on time if begun by');
    el.now = next.onTimeStart + MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.passed'))).to.contain('it hands back late');
  });

  it('goes on to the next cut-off as soon as the log says that the last one is begun', async () => {
    const el = await shownLive();
    const next = liveResult.live!.nextCutOff!;
    expect(text(find(el, '.next .what'))).to.equal(next.name);
    const started = { ...log[0]!, id: 'd', event: { kind: 'activity-started', activity: 'SET' } };
    el.log = [...log, started as HandbackLogEntry];
    await el.updateComplete;
    expect(next.activity).to.equal('SET');
    expect(text(find(el, '.next .what'))).to.equal('Inspect and test');
  });

  it('shows the forecast, and says when it is old', async () => {
    const el = await shownLive(moment + 5 * MINUTE);
    expect(text(find(el, '.huge'))).to.equal(exactClock(liveResult.live!.forecastHandback, zone));
    expect(text(find(el, '.as-of'))).to.contain('5 min ago');
    expect(el.renderRoot.querySelector('.old')).to.equal(null);
    el.now = moment + 20 * MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.old'))).to.contain('old');
  });

  it('says on top in one line what to do, and lists every way on with its chance', async () => {
    const el = await shownLive();
    const { advice, options } = liveResult.live!;
    const words = {
      stop: 'STOP NOW',
      'carry-on': 'CARRY ON',
      more: `${advice.more} MORE`,
      over: '',
    };
    expect(text(find(el, '.advice .say'))).to.equal(words[advice.say]);
    expect(text(find(el, '.advice .of'))).to.contain(advice.why);
    expect(all(el, '.options tbody tr')).to.have.length(options.length);
    expect(text(find(el, '.options tbody tr'))).to.contain(
      percentText(options[0]!.onTime.probability),
    );
  });

  it('tells nobody to carry on where no grant is recorded', async () => {
    const el = await shownLive();
    el.log = [];
    el.results = [beforeGrant];
    await el.updateComplete;
    expect(beforeGrant.live!.advice.say).to.equal('carry-on');
    expect(text(find(el, '.advice .say'))).to.equal('NO GRANT RECORDED');
    const { advice } = beforeGrant.live!;
    const live = { ...beforeGrant.live!, advice: { ...advice, say: 'more' as const, more: 2 } };
    el.results = [{ ...beforeGrant, live }];
    await el.updateComplete;
    expect(text(find(el, '.advice .say'))).to.equal('NO GRANT RECORDED');
    expect(text(find(el, '.advice .of'))).to.contain('2 MORE');
  });

  it('keeps its largest words within a phone, in German too', async () => {
    const el = await shownLive();
    el.style.width = '320px';
    const { advice } = liveResult.live!;
    const says = ['stop', 'carry-on', 'over'] as const;
    for (const lang of ['en', 'de']) {
      el.lang = lang;
      const words = new Set<string>();
      await waitUntil(() => el.lang === 'en' || text(find(el, '.as-of')).includes('Vorhersage'));
      for (const result of [liveResult, beforeGrant])
        for (const say of says) {
          el.results = [{ ...result, live: { ...result.live!, advice: { ...advice, say } } }];
          await el.updateComplete;
          const head = find(el, '.advice .say');
          words.add(text(head));
          expect(head.scrollWidth, text(head)).to.be.at.most(head.clientWidth);
        }
      expect(words.size).to.equal(4);
    }
  });

  it('reports a start of work and a finish of a step, and leaves the time to the page', async () => {
    const el = await shownLive();
    const button = (label: string): HTMLElement =>
      all(el, '.record button').find((element) => text(element).includes(label))!;
    setTimeout(() => button('Started: Set bearings').click());
    const start = await oneEvent<HandbackRecordEvent>(el, 'possession-handback-record');
    expect([start.window, start.what, start.activity, start.step]).to.deep.equal([
      'H1',
      'started',
      'SET',
      undefined,
    ]);
    expect(start.composed && start.bubbles).to.equal(true);
    setTimeout(() => button('Finished: Inspect and test').click());
    const finish = await oneEvent<HandbackRecordEvent>(el, 'possession-handback-record');
    expect([finish.what, finish.activity, finish.step]).to.deep.equal([
      'finished',
      undefined,
      'Inspect and test',
    ]);
  });

  it('does not let the same thing be reported twice', async () => {
    const el = await shownLive();
    const record = (name: string): HTMLElement =>
      all(el, 'li.record').find((element) => text(element).includes(name))!;
    const open = (name: string): boolean[] =>
      [...record(name).querySelectorAll<HTMLButtonElement>('.buttons button')].map(
        (element) => !element.disabled,
      );
    expect(open('Place protection')).to.deep.equal([false, false]);
    expect(open('Cut out the old deck')).to.deep.equal([false, true]);
    expect(open('Set bearings')).to.deep.equal([true, true]);
    expect(text(record('Place protection'))).to.contain('Finished: Place protection 00:00');
  });

  it('keeps what is to be reported now on top, and folds away what is later and what is done', async () => {
    const el = await shownLive();
    const names = (css: string): string[] => all(el, `${css} .name strong`).map(text);
    expect(names('.next li.record')).to.deep.equal(['Set bearings']);
    expect(names('.live > .changing > .records > li')).to.deep.equal(['Cut out the old deck']);
    expect(names('.fold.later li.record')).to.deep.equal(['Inspect and test']);
    expect(names('.fold.done li.record')).to.include('Place protection');
    const shownNow = all(el, '.live li.record').filter((element) => element.checkVisibility());
    expect(shownNow).to.have.length(2);
    // Everything stays within reach: each row stands in the view once, folded or not.
    expect(new Set(names('.live li.record')).size).to.equal(liveResult.cutOffs.length);
    expect(all(el, '.live li.record')).to.have.length(liveResult.cutOffs.length);
  });

  it('says on each fold how much is behind it', async () => {
    const el = await shownLive();
    const told = all(el, '.fold > summary').map((element) => text(element));
    expect(told.filter((item) => /^(Later|Done|Log)/.test(item))).to.deep.equal([
      'Later in this shift 1',
      `Done so far ${all(el, '.fold.done li.record').length}`,
      'Log 2',
    ]);
    expect(text(find(el, '.rest > summary'))).to.equal('All windows, and every figure of H1');
  });

  it('fits a phone twice over, with figures, next cut-off and its buttons in the first sight', async () => {
    const el = await shownLive();
    el.style.setProperty('width', '390px');
    await el.updateComplete;
    const top = el.getBoundingClientRect().top;
    const bottom = (css: string): number => find(el, css).getBoundingClientRect().bottom - top;
    expect(bottom('.advice')).to.be.below(330);
    expect(bottom('.big')).to.be.below(520);
    expect(bottom('.next .buttons')).to.be.below(844);
    expect(bottom('.live')).to.be.below(2 * 844 + 400);
  });

  it('keeps a fold as a person left it when the log goes on', async () => {
    const el = await shownLive();
    const fold = find(el, '.fold.later') as HTMLDetailsElement;
    fold.open = true;
    const form = find(el, '.fold.later .earlier') as HTMLDetailsElement;
    form.open = true;
    el.log = [...log, { ...log[0]!, id: 'z', event: { kind: 'note', text: 'Rain' } }];
    await el.updateComplete;
    expect(fold.open && fold.isConnected && form.open && form.isConnected).to.equal(true);
  });

  it('offers the handback in sight once nothing is left to begin', async () => {
    const el = await shownLive();
    const handed = (): HTMLElement => find(el, '.handed');
    expect(handed().checkVisibility()).to.equal(false);
    el.log = [
      ...log,
      { ...log[0]!, id: 'x', event: { kind: 'activity-started', activity: 'SET' } },
      {
        ...log[0]!,
        id: 'y',
        event: { kind: 'step-started', step: 'Inspect and test', stage: 'lead-out' },
      },
    ] as HandbackLogEntry[];
    await el.updateComplete;
    expect(handed().checkVisibility()).to.equal(true);
  });

  it('has buttons large enough for a thumb', async () => {
    const el = await shownLive();
    for (const element of all(el, '.live details')) (element as HTMLDetailsElement).open = true;
    for (const element of all(el, '.live ol button, .live summary')) {
      const { width, height } = element.getBoundingClientRect();
      expect(Math.min(width, height)).to.be.at.least(48);
    }
  });

  it('shows a correction beside what was first written', async () => {
    const el = await shownLive();
    const line = find(el, '.log .was-corrected');
    expect(text(line.querySelector('.original s'))).to.contain('00:06 Place protection');
    expect(text(line.querySelector('.correction'))).to.contain('corrected to 00:00');
    expect(all(el, '.log li')).to.have.length(2);
  });

  it('takes a log whose corrections go round in a ring without hanging', () => {
    const ring: HandbackLogEntry[] = [
      { ...log[0]!, id: 'x', corrects: 'y' },
      { ...log[0]!, id: 'y', corrects: 'x' },
    ];
    expect(shiftLines(ring)).to.have.length(0);
  });

  it('shows the plan with its buttons when the shift is on and no forecast is there yet', async () => {
    const el = await shown();
    el.live = true;
    await el.updateComplete;
    expect(text(find(el, '.as-of'))).to.contain('No forecast yet');
    expect(text(find(el, '.huge'))).to.equal('03:10');
    expect(el.renderRoot.querySelector('.countdown')).to.equal(null);
  });
});
