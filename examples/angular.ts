// Angular 21, without zone.js: signals say what to draw again.
import { Component, CUSTOM_ELEMENTS_SCHEMA, computed, signal } from '@angular/core';
import { bootstrapApplication } from '@angular/platform-browser';
import type { FitSelectEvent } from 'possession-fit/components/fit/fit-select-event.js';
import type { LedgerAskEvent } from 'possession-fit/components/ledger/ledger-ask-event.js';
import type { TableChangeEvent } from 'possession-fit/components/sheet/table-change-event.js';
import type { Results } from 'possession-fit/src/engine/index.js';
import type { PlanDocument } from 'possession-fit/src/model/index.js';
import 'possession-fit/components/fit/define.js';
import 'possession-fit/components/ledger/define.js';
import 'possession-fit/components/sheet/define.js';
import { readPlan, workOut } from './plan.js';

@Component({
  selector: 'app-root',
  schemas: [CUSTOM_ELEMENTS_SCHEMA],
  template: `
    @if (results(); as found) {
      <possession-sheet
        label="Windows"
        [table]="plan()!.tables.windows"
        [faults]="found.faults"
        (possession-table-change)="change($event)"
      ></possession-sheet>
      <possession-fit
        [packages]="found.packages"
        [windows]="found.plan.windows"
        [fits]="found.fits"
        (possession-fit-select)="pick($event)"
      ></possession-fit>
      <possession-ledger
        [window]="shown()"
        [ledger]="ledger()"
        (possession-ledger-ask)="ask($event)"
      ></possession-ledger>
      <p role="status" id="told">{{ told() }}</p>
    }
  `,
})
class Desk {
  readonly plan = signal<PlanDocument | undefined>(undefined);
  readonly results = signal<Results | undefined>(undefined);
  readonly picked = signal('');
  readonly told = signal('');
  readonly shown = computed(() => {
    const windows = this.results()?.plan.windows ?? [];
    return windows.find((one) => one.id === this.picked()) ?? windows[0] ?? null;
  });
  readonly ledger = computed(
    () => this.results()?.ledgers.find((one) => one.window === this.shown()?.id) ?? null,
  );

  constructor() {
    void readPlan().then((plan) => this.take(plan));
  }

  async take(plan: PlanDocument): Promise<void> {
    this.plan.set(plan);
    const found = await workOut(plan);
    if (this.plan() === plan) this.results.set(found);
  }

  change(event: TableChangeEvent): void {
    const plan = this.plan()!;
    this.told.set(event.label);
    void this.take({ ...plan, tables: { ...plan.tables, windows: event.table } });
  }

  pick(event: FitSelectEvent): void {
    this.picked.set(event.window);
    this.told.set(`${event.package} in ${event.window}`);
  }

  ask(event: LedgerAskEvent): void {
    this.told.set(`row ${event.row} of ${event.window}`);
  }
}

void bootstrapApplication(Desk);
