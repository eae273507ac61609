import { clockChanges, durationText, MINUTE } from '../../src/calendar/index.js';
import type { AccessWindow, RuleSet } from '../../src/model/index.js';
import type { Ledger, LedgerRow } from '../../src/rules/types.js';
import { clockText, momentText } from '../shared/format.js';
import type { Explanation, ExplanationRow } from './explanation.js';

const minus = '\u2212';

/** How a ledger row, the booked time or the usable time of a window comes about. */
export function explainLedger(
  ledger: Ledger,
  window: AccessWindow,
  rules: RuleSet,
  row: number | 'gross' | 'usable',
): Explanation {
  const links = [
    { text: `Window ${window.id} in the sheet`, place: { to: 'window' as const, id: window.id } },
  ];
  if (row === 'gross' || row === 'usable') return explainSum(ledger, window, row, links);
  const found = ledger.rows[row];
  if (!found) throw new RangeError(`ledger of ${ledger.window} has no row ${row}`);
  const rule = ruleOf(found, rules);
  return {
    title: `${found.rule}, window ${window.id}`,
    figure: durationText(found.minutes),
    sentence: found.why,
    rows: [
      { label: 'From', figure: momentText(found.start, window.zone) },
      { label: 'To', figure: momentText(found.end, window.zone) },
      {
        label: 'Deducted here',
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
            text: `\u201c${rule.name}\u201d in the rules`,
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
  const changes = clockChanges(window.start, window.end, window.zone);
  const clocks = changes
    .map(
      (change) =>
        ` Clocks go ${change.forwardMinutes > 0 ? 'forward' : 'back'} ${durationText(Math.abs(change.forwardMinutes))} from ${clockText(change.at - MINUTE, window.zone)} straight to ${clockText(change.at, window.zone)}, so the clock face is not the elapsed time.`,
    )
    .join('');
  if (row === 'gross')
    return {
      title: `Booked time, window ${window.id}`,
      figure: durationText(ledger.grossMinutes),
      sentence: `Elapsed minutes from the booked start to the booked end.${clocks}`,
      rows: [
        { label: 'Booked start', figure: momentText(window.start, window.zone) },
        { label: 'Booked end', figure: momentText(window.end, window.zone) },
      ],
      links,
    };
  const taken: ExplanationRow[] = ledger.rows
    .filter((item) => item.kind !== 'usable')
    .map((item) => ({
      label: item.rule,
      figure: `${minus}${durationText(item.minutes)}`,
      kind: item.kind,
      note: `${clockText(item.start, window.zone)} to ${clockText(item.end, window.zone)}`,
    }));
  return {
    title: `Usable time, window ${window.id}`,
    figure: durationText(ledger.usableMinutes),
    sentence: `What is left for ordinary inside work once every deduction is made and the required margin is held. Overlaps are deducted once.${clocks}`,
    rows: [
      { label: 'Booked', figure: durationText(ledger.grossMinutes) },
      ...taken,
      { label: 'Usable', figure: durationText(ledger.usableMinutes), kind: 'usable', strong: true },
    ],
    links,
  };
}

function ruleOf(row: LedgerRow, rules: RuleSet): Explanation['rule'] | undefined {
  const rowOf = (name: string, text: string, source: string | undefined) => ({
    name,
    text,
    source: source ?? rules.source ?? `not stated in the rule set \u201c${rules.name}\u201d`,
  });
  if (row.kind === 'margin')
    return rowOf(
      'Required handback margin',
      `Hold ${durationText(rules.margin.minutes)} before the booked end.`,
      rules.margin.source,
    );
  const step = [...rules.leadIn, ...rules.leadOut].find((item) => item.step === row.rule);
  if (step) {
    const when = step.when === 'always' ? 'Always applies' : `Applies to work with ${step.when}`;
    const beside = step.alongside ? `, alongside \u201c${step.alongside}\u201d` : '';
    return rowOf(step.step, `${when}: ${durationText(step.minutes)}${beside}.`, step.source);
  }
  const curfew = rules.curfews.find((item) => item.name === row.rule);
  if (curfew) {
    const bars = curfew.bars === 'loud' ? 'Loud work' : 'All work';
    const days = curfew.days ? `, starting on ${curfew.days.join(', ')}` : ', every day';
    return rowOf(
      curfew.name,
      `${bars} stops from ${curfew.from} to ${curfew.to}${days}.`,
      curfew.source,
    );
  }
  if (row.kind === 'shift-break' && rules.shifts)
    return rowOf(
      'Shifts',
      `No shift longer than ${durationText(rules.shifts.longestMinutes)}; changing over takes ${durationText(rules.shifts.changeoverMinutes)}.`,
      rules.shifts.source,
    );
  return undefined;
}
