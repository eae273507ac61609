import { addMinutes } from '../../../src/calendar/index.js';
import type { AccessWindow, Resource, Train } from '../../../src/model/index.js';
import { priceBookSchema, type PriceBook } from '../../../src/model/price-book.js';
import { at, zone } from '../../helpers/clock.js';

export { at, zone };

export function aWindow(over: Partial<AccessWindow> = {}): AccessWindow {
  return {
    id: 'W1',
    title: 'Bridge deck, first night',
    start: at('2027-05-12 23:00'),
    end: at('2027-05-13 05:00'),
    zone,
    lines: [],
    isolation: [],
    status: 'confirmed',
    trainsAfter: '',
    ...over,
  };
}

/** Trains due so many minutes after the window's booked end. */
export function trainsDue(minutes: readonly number[], weight = 1, window = aWindow()): Train[] {
  return minutes.map((m, i) => ({
    id: `T${i + 1}`,
    passesAt: addMinutes(window.end, m),
    weight,
  }));
}

export function aBook(over: Record<string, unknown> = {}): PriceBook {
  return priceBookSchema.parse({
    schema: 1,
    name: 'Test book',
    currency: 'GBP',
    source: 'made for the test',
    ...over,
  });
}

export function aResource(id: string, ratePerHour: number, over: Partial<Resource> = {}): Resource {
  return { id, availability: [{ capacity: 1 }], ratePerHour, ...over };
}
