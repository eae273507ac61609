import { createApp, defineComponent, h, shallowRef, watch } from 'vue';
import type { FitSelectEvent, PossessionFit } from 'possession-fit/fit';
import type { LedgerAskEvent } from 'possession-fit/ledger';
import type { TableChangeEvent } from 'possession-fit/sheet';
import type { Results, PlanDocument } from 'possession-fit';
import 'possession-fit/fit';
import 'possession-fit/ledger';
import 'possession-fit/sheet';
import { readPlan, workOut } from './plan.js';

const desk = defineComponent({
  setup() {
    // Shallow: the plan is replaced, never changed in place, and elements must be given it without Vue's proxy.
    const plan = shallowRef<PlanDocument>();
    const results = shallowRef<Results>();
    const picked = shallowRef<PossessionFit['selected']>(null);
    const told = shallowRef('');
    watch(plan, async (now) => {
      const found = now && (await workOut(now));
      if (plan.value === now) results.value = found;
    });
    void readPlan().then((read) => (plan.value = read));

    return () => {
      if (!plan.value || !results.value) return h('p', 'Reading the plan.');
      const { tables } = plan.value;
      const { packages, fits, faults, ledgers } = results.value;
      const { windows } = results.value.plan;
      const shown = windows.find((one) => one.id === picked.value?.window) ?? windows[0] ?? null;
      return [
        h('possession-sheet', {
          '.label': 'Windows',
          '.table': tables.windows,
          '.faults': faults,
          onPossessionTableChange(event: TableChangeEvent) {
            plan.value = { ...plan.value!, tables: { ...tables, windows: event.table } };
            told.value = event.label;
          },
        }),
        h('possession-fit', {
          '.packages': packages,
          '.windows': windows,
          '.fits': fits,
          '.selected': picked.value,
          onPossessionFitSelect(event: FitSelectEvent) {
            picked.value = { package: event.package, window: event.window };
            told.value = `${event.package} in ${event.window}`;
          },
        }),
        h('possession-ledger', {
          '.window': shown,
          '.ledger': ledgers.find((one) => one.window === shown?.id) ?? null,
          onPossessionLedgerAsk(event: LedgerAskEvent) {
            told.value = `row ${event.row} of ${event.window}`;
          },
        }),
        h('p', { role: 'status', id: 'told' }, told.value),
      ];
    };
  },
});

createApp(desk).mount('#app');
