import { createInlineEngine, emptyPlan, type PlanDocument, type Results } from 'possession-fit';

// Small plans can be worked out in the page; `createWorkerEngine` of the same module keeps large ones out of its way.
const engine = createInlineEngine();

const windows = `window,title,start,end,zone,lines,from,to,status
N1,"Tuesday night, Fernley bank",2027-03-02 23:00,2027-03-03 05:00,,Up;Down,4000,9000,confirmed
W1,"Closure, Fernley bank",2027-03-06 22:00,2027-03-08 04:00,,Up;Down,4000,9000,confirmed
`;
const work = `package,activity,title,after,minutes,lines,from,to
Deck,D10,Lift out the old deck,,300,Up;Down,5200,5300
Deck,D20,Set the new deck,D10,540,Up;Down,5200,5300
Drains,R10,Flush the drains,,120,Down,6000,6400
`;

/**
 * The tables of an invented line, read as a person's own files would be. It has no rules, so all booked time counts as
 * usable; a real plan adds its rules file here, with lead-in, lead-out, margin and curfews.
 */
export async function readPlan(): Promise<PlanDocument> {
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  const files = [
    { name: 'windows.csv', bytes: bytes(windows) },
    { name: 'work.csv', bytes: bytes(work) },
  ];
  const read = await engine.importFiles(files, emptyPlan('Fernley bank', 'Europe/London'));
  return read.document;
}

/** What follows from the plan: usable time, what fits, and what is wrong with the tables. */
export function workOut(plan: PlanDocument): Promise<Results> {
  return engine.recompute(plan);
}
