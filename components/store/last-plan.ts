// Which plan was open last: by its id, never by the clock, which may have been set back since.
const key = 'possession-fit/last-plan';

const rooms = (): Storage[] => {
  try {
    // The tab's own first: a reload comes back to the plan of this tab.
    return [sessionStorage, localStorage];
  } catch {
    return [];
  }
};

export function rememberPlan(id: string): void {
  for (const room of rooms()) {
    try {
      room.setItem(key, id);
    } catch {
      // Full or forbidden: the plan last written is opened instead.
    }
  }
}

/** Ids of the plan open last in this tab and on this device; the first that can be opened is meant. */
export function lastPlans(): readonly string[] {
  return rooms().flatMap((room) => room.getItem(key) ?? []);
}
