import { headTitles, percentOfShare, type Account } from '../../price/index.js';
import { basisFacts, sumText, timeText, type ReportBasis } from './facts.js';
import type { Report } from './report.js';

/** What a late handback did cost, as a report. */
export function accountReport(account: Account, basis: ReportBasis): Report {
  const { window } = basis;
  const money = (sum: string): string => sumText(account.currency, sum);
  const foreseen = account.heads.some((head) => head.forecast !== null);
  return {
    title: `Account of the late handback of ${window.id}`,
    fileName: `account ${window.id}`,
    facts: [
      ...basisFacts(basis),
      { label: 'Handed back', value: timeText(account.actualHandback, window) },
      { label: 'Minutes late', value: String(account.overrunMinutes) },
      { label: 'Total', value: money(account.total) },
      { label: 'Evidenced', value: money(account.evidenced) },
      { label: 'Not evidenced', value: money(account.notEvidenced) },
      ...account.claimants.map((claimant) => ({
        label:
          claimant.claimedBy === '' ? 'Claimed by nobody yet' : `Claimed by ${claimant.claimedBy}`,
        value: money(claimant.amount),
      })),
    ],
    tables: [
      {
        title: 'Every cost',
        columns: [
          'cost',
          `amount, ${account.currency}`,
          'counted',
          'recorded or worked out',
          'claimed by',
          'our share, per cent',
          'evidence',
          'how',
          'source',
        ],
        figures: [1, 5],
        rows: [
          ...account.rows.map((row) => [
            row.what,
            row.amount,
            row.counted ? 'yes' : 'no',
            row.basis,
            row.claimedBy,
            percentOfShare(row.share),
            row.evidenced ? row.evidence : 'none yet',
            row.formula,
            row.source,
          ]),
          ['Total of what is counted', account.total, '', '', '', '', '', '', ''],
        ],
      },
      {
        title: foreseen ? 'By head of cost, against what was foreseen' : 'By head of cost',
        columns: [
          'head',
          `amount, ${account.currency}`,
          ...(foreseen ? [`foreseen, ${account.currency}`] : []),
        ],
        figures: [1, 2],
        rows: account.heads.map((head) => [
          headTitles[head.head],
          head.amount,
          ...(foreseen ? [head.forecast ?? ''] : []),
        ]),
      },
      {
        title: 'Trains late or cancelled',
        columns: [
          'train',
          'due',
          'passed',
          'minutes late',
          'weight',
          'charged minutes',
          'recorded or worked out',
          `amount, ${account.currency}`,
        ],
        figures: [3, 4, 5, 7],
        rows: account.trains.map((train) => [
          train.train,
          timeText(train.dueAt, window),
          train.passedAt === null ? 'cancelled' : timeText(train.passedAt, window),
          train.minutesLate === null ? '' : String(train.minutesLate),
          String(train.weight),
          `${train.countedMinutes}`,
          train.basis,
          train.amount,
        ]),
      },
    ].filter((item) => item.rows.length > 0),
    lists: [
      { title: 'Not priced', items: account.notPriced },
      { title: 'Missing or assumed', items: account.notes },
    ].filter((item) => item.items.length > 0),
    cautions: account.cautions,
  };
}
