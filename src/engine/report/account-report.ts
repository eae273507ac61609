import { percentOfShare, type Account } from '../../price/index.js';
import { basisFacts, inCurrency, money, timeText, type ReportBasis } from './facts.js';
import type { Report } from './report.js';
import { cautionsSaid, say, word, words } from './say.js';

/** What a late handback did cost, as a report. */
export function accountReport(account: Account, basis: ReportBasis): Report {
  const { window } = basis;
  const { currency } = account;
  const sum = (amount: string) => money(currency, amount);
  const foreseen = account.heads.some((head) => head.forecast !== null);
  return {
    title: say('account-title', { window: window.id }),
    fileName: say('account-file', { window: window.id }),
    facts: [
      ...basisFacts(basis),
      { label: word('Handed back'), value: timeText(account.actualHandback, window) },
      { label: word('Minutes late'), value: String(account.overrunMinutes) },
      { label: word('Total'), value: sum(account.total) },
      { label: word('Evidenced'), value: sum(account.evidenced) },
      { label: word('Not evidenced'), value: sum(account.notEvidenced) },
      ...account.claimants.map(({ claimedBy, amount }) => ({
        label:
          claimedBy === ''
            ? word('Claimed by nobody yet')
            : say('claimed-by-name', { name: claimedBy }),
        value: sum(amount),
      })),
    ],
    tables: [
      {
        title: word('Every cost'),
        columns: [
          word('cost'),
          inCurrency('amount', currency),
          ...words(
            'counted',
            'recorded or worked out',
            'claimed by',
            'our share, per cent',
            'evidence',
            'how',
            'source',
          ),
        ],
        figures: [1, 5],
        rows: [
          ...account.rows.map((row) => [
            row.what,
            row.amount,
            word(row.counted ? 'yes' : 'no'),
            word(row.basis),
            row.claimedBy,
            percentOfShare(row.share),
            row.evidenced ? row.evidence : word('none yet'),
            row.formula,
            row.source,
          ]),
          [word('Total of what is counted'), account.total, '', '', '', '', '', '', ''],
        ],
      },
      {
        title: word(foreseen ? 'By head of cost, against what was foreseen' : 'By head of cost'),
        columns: [
          word('head'),
          inCurrency('amount', currency),
          ...(foreseen ? [inCurrency('foreseen', currency)] : []),
        ],
        figures: [1, 2],
        rows: account.heads.map((head) => [
          say('head-title', { head: head.head }),
          head.amount,
          ...(foreseen ? [head.forecast ?? ''] : []),
        ]),
      },
      {
        title: word('Trains late or cancelled'),
        columns: [
          ...words(
            'train',
            'due',
            'passed',
            'minutes late',
            'weight',
            'charged minutes',
            'recorded or worked out',
          ),
          inCurrency('amount', currency),
        ],
        figures: [3, 4, 5, 7],
        rows: account.trains.map((train) => [
          train.train,
          timeText(train.dueAt, window),
          train.passedAt === null ? word('cancelled') : timeText(train.passedAt, window),
          train.minutesLate === null ? '' : String(train.minutesLate),
          String(train.weight),
          `${train.countedMinutes}`,
          word(train.basis),
          train.amount,
        ]),
      },
    ].filter((item) => item.rows.length > 0),
    lists: [
      { title: word('Not priced'), items: account.notPriced },
      { title: word('Missing or assumed'), items: account.notes },
    ].filter((item) => item.items.length > 0),
    cautions: cautionsSaid(account.cautions),
  };
}
