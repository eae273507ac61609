import { applyEdit, type Edit } from '../../../src/edits/index.js';
import type { Placement } from '../../../src/engine/index.js';
import { dayFromText, startOfDay } from '../../../src/calendar/index.js';
import {
  withAgreed,
  withFrozen,
  withoutEarlier,
  type AgreedPlan,
  type PlanDocument,
} from '../../../src/model/index.js';
import { changesBetween, type Change } from '../../../src/plan/index.js';
import type { Desk } from '../desk-parts.js';

// What a person does with the plan of work: each is one change of the document, undone like any other.

/** Accepts a plan of work under a name. */
export function agree(
  desk: Desk,
  { name, by, placements, proof }: Pick<AgreedPlan, 'name' | 'by' | 'placements' | 'proof'>,
): void {
  const { document } = desk;
  if (!document) return;
  const plan = { name, placements, ...(by && { by }), ...(proof && { proof }) };
  desk.change(agreedChange(document, desk.moment(), plan), desk.words.forms.agreed.label(name));
}

/** What an option changes, and its plan of the work as the agreed one, in one act. */
export function agreeOption(
  desk: Desk,
  edit: Edit | null,
  name: string,
  placements: readonly Placement[],
): void {
  const { document } = desk;
  if (!document) return;
  const option = edit ? changesBetween(document, applyEdit(document, edit)) : [];
  const agreed = agreedChange(document, desk.moment(), { name, placements });
  desk.change([...option, agreed], desk.words.forms.agreed.label(name));
  desk.view = 'plan';
  desk.planPart = 'compare';
}

/** Goes back to an earlier plan: it is agreed anew, and the one in force joins the earlier ones. */
export function goBackTo(desk: Desk, plan: AgreedPlan): void {
  const { name, placements, proof } = plan;
  agree(desk, { name, placements, ...(proof && { proof }) });
}

/** Shows the plan in force beside an earlier one. */
export async function compareWith(desk: Desk, plan: AgreedPlan): Promise<void> {
  const { engine, document, planning } = desk;
  if (!engine || !document) return;
  await planning.compareWith(engine, document, plan);
  desk.view = 'plan';
  desk.planPart = 'compare';
}

export function forgetEarlier(desk: Desk, plan: AgreedPlan): void {
  const { document } = desk;
  if (!document?.agreed) return;
  const { agreed } = document;
  desk.change(
    { part: ['agreed'], from: agreed, value: withoutEarlier(agreed, plan.revision) },
    desk.words.forms.agreed.takenOut(plan.revision, plan.name),
  );
}

/** Freezes what begins before a local day, as `2027-03-07`; an empty day sets all free. What cannot be kept is told. */
export function freeze(desk: Desk, until: string): void {
  const { document } = desk;
  const day = dayFromText(until);
  if (!document?.agreed?.now || (until !== '' && day === undefined)) return;
  const agreed = withFrozen(document.agreed, day === undefined ? undefined : until);
  const frozen = { part: ['agreed'], from: document.agreed, value: agreed };
  const words = desk.words.forms.agreed;
  if (day === undefined) return desk.change(frozen, words.allFree);
  const from = startOfDay(day, document.zone);
  const count = document.agreed.now.placements.filter((placement) => placement.from < from).length;
  desk.change(frozen, words.frozenUntil(until));
  const lost = new Set(desk.planning.broken.map((item) => item.activity)).size;
  desk.say(desk.inWords(() => (lost > 0 ? words.keepsButBroken : words.keeps)(count, until)));
}

function agreedChange(
  { agreed }: PlanDocument,
  agreedAt: number,
  plan: Omit<AgreedPlan, 'revision' | 'agreedAt'>,
): Change {
  return { part: ['agreed'], from: agreed, value: withAgreed(agreed, { ...plan, agreedAt }) };
}
