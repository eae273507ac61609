// For a bundler, which finds these modules by the package's name. Without one: two-tags.html.
import 'possession-fit/fit';
import 'possession-fit/ledger';
import 'possession-fit/sheet';
import { readPlan, workOut } from './plan.js';

const sheet = document.querySelector('possession-sheet');
const fit = document.querySelector('possession-fit');
const ledger = document.querySelector('possession-ledger');
const told = document.querySelector('#told');

let plan = await readPlan();
let results = await workOut(plan);

function show() {
  sheet.table = plan.tables.windows;
  sheet.faults = results.faults;
  fit.packages = results.packages;
  fit.windows = results.plan.windows;
  fit.fits = results.fits;
  showLedger(fit.selected?.window);
}

function showLedger(id) {
  ledger.window = results.plan.windows.find((one) => one.id === id) ?? results.plan.windows[0];
  ledger.ledger = results.ledgers.find((one) => one.window === ledger.window?.id) ?? null;
}

fit.addEventListener('possession-fit-select', (event) => {
  told.textContent = `${event.package} in ${event.window}`;
  showLedger(event.window);
});
ledger.addEventListener('possession-ledger-ask', (event) => {
  told.textContent = `row ${event.row} of ${event.window}`;
});
sheet.addEventListener('possession-table-change', async (event) => {
  plan = { ...plan, tables: { ...plan.tables, windows: event.table } };
  results = await workOut(plan);
  told.textContent = event.label;
  show();
});
show();
