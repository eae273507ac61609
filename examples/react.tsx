import { useEffect, useState, type DetailedHTMLProps, type HTMLAttributes } from 'react';
import { createRoot } from 'react-dom/client';
import type { FitSelectEvent } from 'possession-fit/components/fit/fit-select-event.js';
import type { PossessionFit } from 'possession-fit/components/fit/fit.js';
import type { LedgerAskEvent } from 'possession-fit/components/ledger/ledger-ask-event.js';
import type { PossessionLedger } from 'possession-fit/components/ledger/ledger.js';
import type { PossessionSheet } from 'possession-fit/components/sheet/sheet.js';
import type { TableChangeEvent } from 'possession-fit/components/sheet/table-change-event.js';
import type { Results } from 'possession-fit/src/engine/index.js';
import type { PlanDocument } from 'possession-fit/src/model/index.js';
import 'possession-fit/components/fit/define.js';
import 'possession-fit/components/ledger/define.js';
import 'possession-fit/components/sheet/define.js';
import { readPlan, workOut } from './plan.js';

type Tag<Element, Own extends keyof Element, Events> = DetailedHTMLProps<
  HTMLAttributes<Element>,
  Element
> &
  Partial<Pick<Element, Own>> &
  Partial<Events>;

declare module 'react' {
  // eslint-disable-next-line @typescript-eslint/no-namespace -- React's own place for the tags it knows
  namespace JSX {
    interface IntrinsicElements {
      'possession-sheet': Tag<
        PossessionSheet,
        'table' | 'faults' | 'label',
        { 'onpossession-table-change': (event: TableChangeEvent) => void }
      >;
      'possession-fit': Tag<
        PossessionFit,
        'packages' | 'windows' | 'fits' | 'selected',
        { 'onpossession-fit-select': (event: FitSelectEvent) => void }
      >;
      'possession-ledger': Tag<
        PossessionLedger,
        'window' | 'ledger',
        { 'onpossession-ledger-ask': (event: LedgerAskEvent) => void }
      >;
    }
  }
}

function Desk() {
  const [plan, setPlan] = useState<PlanDocument>();
  const [results, setResults] = useState<Results>();
  const [picked, setPicked] = useState<PossessionFit['selected']>(null);
  const [told, setTold] = useState('');
  useEffect(() => void readPlan().then(setPlan), []);
  useEffect(() => {
    // An answer to a plan that has been changed since is not shown.
    let current = true;
    if (plan) void workOut(plan).then((found) => current && setResults(found));
    return () => {
      current = false;
    };
  }, [plan]);
  if (!plan || !results) return <p>Reading the plan.</p>;
  const { windows } = results.plan;
  const shown = windows.find((one) => one.id === picked?.window) ?? windows[0] ?? null;
  return (
    <>
      <possession-sheet
        label="Windows"
        table={plan.tables.windows}
        faults={results.faults}
        onpossession-table-change={(event) => {
          setPlan({ ...plan, tables: { ...plan.tables, windows: event.table } });
          setTold(event.label);
        }}
      />
      <possession-fit
        packages={results.packages}
        windows={windows}
        fits={results.fits}
        selected={picked}
        onpossession-fit-select={(event) => {
          setPicked({ package: event.package, window: event.window });
          setTold(`${event.package} in ${event.window}`);
        }}
      />
      <possession-ledger
        window={shown}
        ledger={results.ledgers.find((one) => one.window === shown?.id) ?? null}
        onpossession-ledger-ask={(event) => setTold(`row ${event.row} of ${event.window}`)}
      />
      <p role="status" id="told">
        {told}
      </p>
    </>
  );
}

createRoot(document.querySelector('#app')!).render(<Desk />);
