import { useEffect, useState } from 'react';
import { createRoot } from 'react-dom/client';
import type { PossessionFit } from 'possession-fit/fit';
import type { Results, PlanDocument } from 'possession-fit';
// Types of the tags for JSX, all elements at once.
import type {} from 'possession-fit/react';
import 'possession-fit/fit';
import 'possession-fit/ledger';
import 'possession-fit/sheet';
import { readPlan, workOut } from './plan.js';

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
