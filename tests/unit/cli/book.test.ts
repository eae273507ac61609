import { expect, it } from 'vitest';
import { cli, files } from '../../helpers/cli.js';

// The period ends at the midnight between; see tests/published/booking.test.ts.
it('book tells in text, as in JSON, which dates are of a window in two periods', () => {
  const path = files({
    'windows.csv': 'window,start,end\nP8,2026-11-14 22:00,2026-11-15 06:00\n',
  });
  const words = [
    ...['book', '--windows', path['windows.csv'], '--zone', 'Europe/London'],
    ...['--at', '2026-01-05'],
  ];
  const text = cli(...words).stdout;
  const { milestones } = JSON.parse(cli(...words, '--json').stdout) as {
    milestones: { window: string; milestone: string; note?: string }[];
  };
  const noted = milestones.filter(({ note }) => note !== undefined);
  expect(noted.length).toBeGreaterThan(0);
  for (const { window, milestone, note } of noted)
    expect(text).toContain(`${window}, ${milestone}: ${note!}`);
});
