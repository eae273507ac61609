import { overrunReport } from '../../../src/index.js';
import type { Show } from '../shown.js';

export const show: Show<'possession-report'> = async (element, shown) => {
  const { engine, planDocument, accessWindow } = shown;
  const { prices, name } = planDocument;
  const asked = { window: accessWindow.id, overrunMinutes: 60, maxMinutes: 360 };
  const price = await engine.price(planDocument, asked);
  const basis = {
    window: accessWindow,
    document: name,
    plan: undefined,
    madeAt: accessWindow.start,
  };
  element.report = prices ? overrunReport(price, { ...basis, prices }) : null;
};
