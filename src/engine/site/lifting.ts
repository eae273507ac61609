import {
  concreteSettingsSchema,
  liftingSettingsSchema,
  siteCautions,
  type ConcreteSettings,
  type LiftingSettings,
} from '../../model/index.js';
import type { PlanResult } from '../../tables/index.js';
import { concreteOf } from './concrete.js';
import { faultsOfTables } from './table-faults.js';
import type { LiftingAnswer, LiftingRequest } from './types.js';
import { windOf } from './wind.js';

/** To start from and to edit. The figure is one often used on sites in Great Britain; the crane's own chart governs. */
const exampleLifting: LiftingSettings = liftingSettingsSchema.parse({
  resources: ['crane'],
  chartLimitMps: 9.8,
  heightMetres: 30,
  settleMinutes: 20,
  source: 'a figure often used on sites for mobile cranes; the crane’s own chart governs',
  sureness: 'from memory',
});

/** To start from and to edit: the maturity of a worked example, not of your mix. */
const exampleConcrete: ConcreteSettings = concreteSettingsSchema.parse({
  maturity: 540,
  model: { model: 'temperature-time', datumC: 0 },
  source: 'a worked example of ASTM C1074 on a guide page; the figure of your mix governs',
  sureness: 'weak',
});

/** What wind and cold do to a plan: hours lost to lifting, and when concrete has cured. */
export function liftingOf(read: PlanResult, request: LiftingRequest): LiftingAnswer {
  const { plan, site } = read;
  const lifting = request.lifting ?? site.lifting ?? exampleLifting;
  const concrete = request.concrete ?? site.concrete ?? exampleConcrete;
  return {
    zone: plan.zone,
    wind: {
      ...windOf(read, lifting),
      isExample: request.lifting === undefined && site.lifting === undefined,
    },
    concrete: {
      ...concreteOf(read, concrete, request),
      isExample: request.concrete === undefined && site.concrete === undefined,
    },
    faults: faultsOfTables(read, 'forecast', 'temperatures'),
    cautions: siteCautions,
  };
}
