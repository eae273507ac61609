// Angular 21, without zone.js: signals say what to draw again.
import { Component, CUSTOM_ELEMENTS_SCHEMA, computed, signal } from '@angular/core';
import { bootstrapApplication } from '@angular/platform-browser';
import type { FitSelectEvent } from 'possession-fit/fit';
import type { LedgerAskEvent } from 'possession-fit/ledger';
import type { TableChangeEvent } from 'possession-fit/sheet';
import type { Results, PlanDocument } from 'possession-fit';
import 'possession-fit/fit';
import 'possession-fit/ledger';
import 'possession-fit/sheet';
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
