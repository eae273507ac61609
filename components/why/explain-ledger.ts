import { clockChanges, durationText, MINUTE } from '../../src/calendar/index.js';
import { weekdays, type AccessWindow, type RuleSet } from '../../src/model/index.js';
import type { Ledger, LedgerRow } from '../../src/rules/types.js';
import { clockText, momentText, weekdayText } from '../shared/format.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';
import { ruleName, whyText } from '../shared/said.js';

const minus = '\u2212';

/** How a ledger row, the booked time or the usable time of a window comes about. */
export function explainLedger(
  ledger: Ledger,
  window: AccessWindow,
  rules: RuleSet,
  row: number | 'gross' | 'usable',
): Explanation {
  const words = explainWords();
  const links = [
    { text: words.windowInSheet(window.id), place: { to: 'window' as const, id: window.id } },
  ];
  if (row === 'gross' || row === 'usable') return explainSum(ledger, window, row, links);
  const found = ledger.rows[row];
  if (!found) throw new RangeError(`ledger of ${ledger.window} has no row ${row}`);
  const rule = ruleOf(found, rules);
  return {
    title: words.ledger.rowTitle(ruleName(found), window.id),
    figure: durationText(found.minutes),
    sentence: whyText(found),
    rows: [
      { label: words.ledger.from, figure: momentText(found.start, window.zone) },
      { label: words.ledger.to, figure: momentText(found.end, window.zone) },
      {
        label: words.ledger.deducted,
        figure: durationText(found.minutes),
        kind: found.kind,
        strong: true,
      },
    ],
    ...(rule ? { rule } : {}),
    links: rule
      ? [
          ...links,
          {
            text: words.ruleInRules(rule.name),
            place: { to: 'rule', id: found.kind === 'margin' ? 'margin' : rule.name },
          },
        ]
      : links,
  };
}

function explainSum(
  ledger: Ledger,
  window: AccessWindow,
  row: 'gross' | 'usable',
  links: Explanation['links'],
): Explanation {
  const words = explainWords();
  const { ledger: of } = words;
  const changes = clockChanges(window.start, window.end, window.zone);
  const clocks = changes
    .map(({ at, forwardMinutes }) => {
      const turn = forwardMinutes > 0 ? of.clocksForward : of.clocksBack;
      const [from, to] = [clockText(at - MINUTE, window.zone), clockText(at, window.zone)];
      return ` ${turn(durationText(Math.abs(forwardMinutes)), from, to)}`;
    })
    .join('');
  if (row === 'gross')
    return {
      title: of.bookedTime(window.id),
      figure: durationText(ledger.grossMinutes),
      sentence: `${of.elapsed}${clocks}`,
      rows: [
        { label: of.bookedStart, figure: momentText(window.start, window.zone) },
        { label: of.bookedEnd, figure: momentText(window.end, window.zone) },
      ],
      links,
    };
  const taken: ExplanationRow[] = ledger.rows
    .filter((item) => item.kind !== 'usable')
    .map((item) => ({
      label: ruleName(item),
      figure: `${minus}${durationText(item.minutes)}`,
      kind: item.kind,
      note: words.fromTo(clockText(item.start, window.zone), clockText(item.end, window.zone)),
    }));
  return {
    title: of.usableTime(window.id),
    figure: durationText(ledger.usableMinutes),
    sentence: `${of.whatIsLeft}${clocks}`,
    rows: [
      { label: of.booked, figure: durationText(ledger.grossMinutes) },
      ...taken,
      {
        label: of.usable,
        figure: durationText(ledger.usableMinutes),
        kind: 'usable',
        strong: true,
      },
    ],
    links,
  };
}

function ruleOf(row: LedgerRow, rules: RuleSet): Explanation['rule'] | undefined {
  const { ledger: words } = explainWords();
  const rowOf = (name: string, text: string, source: string | undefined) => ({
    name,
    text,
    source: source ?? rules.source ?? words.noSource(rules.name),
  });
  if (row.kind === 'margin')
    return rowOf(words.margin, words.hold(durationText(rules.margin.minutes)), rules.margin.source);
  const step = [...rules.leadIn, ...rules.leadOut].find((item) => item.step === row.rule);
  if (step) {
    const when = { always: words.always, isolation: words.withIsolation, loud: words.withLoud };
    const time = durationText(step.minutes);
    const text = step.alongside
      ? words.stepBeside(when[step.when], time, step.alongside)
      : words.stepRule(when[step.when], time);
    return rowOf(step.step, text, step.source);
  }
  const curfew = rules.curfews.find((item) => item.name === row.rule);
  if (curfew) {
    const loud = curfew.bars === 'loud';
    const days = curfew.days?.map((day) => dayName(day)).join(', ');
    const text =
      days === undefined
        ? (loud ? words.loudStops : words.allStops)(curfew.from, curfew.to)
        : (loud ? words.loudStopsOn : words.allStopsOn)(curfew.from, curfew.to, days);
    return rowOf(curfew.name, text, curfew.source);
  }
  if (row.kind === 'shift-break' && rules.shifts)
    return rowOf(
      words.shifts,
      words.shiftRule(
        durationText(rules.shifts.longestMinutes),
        durationText(rules.shifts.changeoverMinutes),
      ),
      rules.shifts.source,
    );
  return undefined;
}

/** A day of the week as the language in force writes it. */
const dayName = (day: (typeof weekdays)[number]): string => weekdayText(weekdays.indexOf(day) + 1);
