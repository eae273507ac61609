import { accountTable, type Account } from '../../price/index.js';
import { basisFacts, timeText, type ReportBasis } from './facts.js';
import type { Report } from './report.js';

/** What a late handback did cost, as a report. */
export function accountReport(account: Account, basis: ReportBasis): Report {
  const { window } = basis;
  const table = accountTable(account);
  const money = (sum: string): string => `${account.currency} ${sum}`;
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
      ...account.claimants.map((one) => ({
        label: one.claimedBy === '' ? 'Claimed by nobody yet' : `Claimed by ${one.claimedBy}`,
        value: money(one.amount),
      })),
    ],
    tables: [
      {
        title: 'Rows',
        columns: table.columns,
        figures: [table.columns.indexOf('amount')],
        rows: table.rows,
      },
      {
        title: 'By head of cost, against what was foreseen',
        columns: ['head', `amount, ${account.currency}`, `foreseen, ${account.currency}`],
        figures: [1, 2],
        rows: account.heads.map((one) => [one.head, one.amount, one.forecast ?? '']),
      },
    ],
    lists: [
      { title: 'Not priced', items: account.notPriced },
      { title: 'Missing or assumed', items: account.notes },
    ].filter((one) => one.items.length > 0),
    cautions: account.cautions,
  };
}
