import { applyEdit, type Edit } from '../../src/edits/index.js';
import type { Placement } from '../../src/engine/index.js';
import { dayFromText, startOfDay } from '../../src/calendar/index.js';
import {
  withAgreed,
  withFrozen,
  withoutEarlier,
  type AgreedPlan,
  type PlanDocument,
} from '../../src/model/index.js';
import { countText } from '../shared/format.js';
import type { Desk } from './desk-parts.js';

// What a person does with the plan of work: each is one change of the document, undone like any other.

/** Accepts a plan of work under a name. */
export function agree(
  desk: Desk,
  { name, by, placements, proof }: Pick<AgreedPlan, 'name' | 'by' | 'placements' | 'proof'>,
): void {
  const { document } = desk;
  if (!document) return;
  desk.edit(
    withPlan(document, desk.moment(), {
      ...{ name, placements },
      ...(by && { by }),
      ...(proof && { proof }),
    }),
    agreedText(name),
  );
}

/** What an option changes, and its plan of the work as the agreed one, in one act. */
export function agreeOption(
  desk: Desk,
  edit: Edit | null,
  name: string,
  placements: readonly Placement[],
): void {
  if (!desk.document) return;
  const document = edit ? applyEdit(desk.document, edit) : desk.document;
  desk.edit(withPlan(document, desk.moment(), { name, placements }), agreedText(name));
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
  desk.edit(
    { ...document, agreed: withoutEarlier(document.agreed, plan.revision) },
    `earlier plan ${plan.revision} "${plan.name}" taken out`,
  );
}

/** Freezes what begins before a local day, as `2027-03-07`; an empty day sets all free. What cannot be kept is told. */
export function freeze(desk: Desk, until: string): void {
  const { document } = desk;
  const day = dayFromText(until);
  if (!document?.agreed?.now || (until !== '' && day === undefined)) return;
  const agreed = withFrozen(document.agreed, day === undefined ? undefined : until);
  if (day === undefined) return desk.edit({ ...document, agreed }, 'all pieces set free');
  const from = startOfDay(day, document.zone);
  const count = document.agreed.now.placements.filter((one) => one.from < from).length;
  desk.edit({ ...document, agreed }, `frozen until ${until}`);
  const lost = new Set(desk.planning.broken.map((one) => one.activity)).size;
  desk.say(
    `${countText(count, 'piece')} ${count === 1 ? 'begins' : 'begin'} before ${until} and ${count === 1 ? 'keeps its place' : 'keep their places'}${lost > 0 ? ', but for what no longer holds' : ''}.`,
  );
}

function withPlan(
  document: PlanDocument,
  agreedAt: number,
  plan: Omit<AgreedPlan, 'revision' | 'agreedAt'>,
): PlanDocument {
  return { ...document, agreed: withAgreed(document.agreed, { ...plan, agreedAt }) };
}

const agreedText = (name: string): string => `plan "${name}" agreed`;
