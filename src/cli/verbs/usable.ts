import { durationText, isoText } from '../../calendar/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Needs, Plan } from '../../model/index.js';
import type { Answer } from '../answer.js';
import type { UsableAnswer } from '../answers/usable.js';
import { clockWords } from '../../calendar/clock-words.js';
import { table } from '../print/blocks.js';

/** `usable`: the usable time of each window for work with the given needs, with its ledger. */
export function usable(plan: Plan, needs: Needs): Answer<UsableAnswer> {
  const found = plan.windows.map((window) => ({
    window,
    ledger: ledgerOf(window, needs, plan.rules),
  }));
  const windows = found.map(({ window, ledger }) => ({
    window: window.id,
    title: window.title,
    status: window.status,
    startsAt: isoText(window.start, window.zone),
    endsAt: isoText(window.end, window.zone),
    grossMinutes: ledger.grossMinutes,
    usableMinutes: ledger.usableMinutes,
    shortfallMinutes: ledger.shortfallMinutes,
    barred: ledger.barred,
    ledger: ledger.rows.map((row) => ({
      rule: row.rule,
      kind: row.kind,
      from: isoText(row.start, window.zone),
      to: isoText(row.end, window.zone),
      minutes: row.minutes,
      why: row.why,
    })),
  }));
  const rows = found.map(({ window, ledger }) => [
    window.id,
    window.status,
    clockWords(window.start, window.zone),
    clockWords(window.end, window.zone),
    durationText(ledger.grossMinutes),
    durationText(ledger.usableMinutes),
    ledger.barred.map((item) => item.text).join(' '),
  ]);
  return {
    json: { needs, windows },
    text: [table(['window', 'status', 'starts', 'ends', 'gross', 'usable', 'remark'], rows)],
  };
}
