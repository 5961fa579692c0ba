import { expect, test } from 'vitest';
import { isZone, localDate, localMoment } from '#lib/units/local-date';
import { printDay } from '#lib/units/print-date';

// Weekdays by the calendar: 1 January 2000 was a Saturday, 29 February 2028 is a Tuesday.
test.each([
  ['2000-01-01', 'Sat 1 Jan'],
  ['2026-12-12', 'Sat 12 Dec'],
  ['2028-02-29', 'Tue 29 Feb'],
  ['soon', 'soon'],
])('%s is %s', (date, text) => {
  expect(printDay(date)).toBe(text);
});

// Copenhagen is at UTC+1 in winter and UTC+2 in summer (IANA time zone database).
test('an instant has the date of its zone', () => {
  const late = new Date('2026-12-11T23:30:00Z');
  expect(localDate(late, 'UTC')).toBe('2026-12-11');
  expect(localDate(late, 'Europe/Copenhagen')).toBe('2026-12-12');
  expect(localDate(late, 'America/New_York')).toBe('2026-12-11');
  expect(localMoment(new Date('2026-07-01T16:02:00Z'), 'Europe/Copenhagen')).toBe(
    'Wed 1 Jul, 18:02',
  );
});

test('a zone that nobody knows is none, and counts as UTC', () => {
  expect(isZone('Europe/Copenhagen')).toBe(true);
  expect(isZone('Europe/Nowhere')).toBe(false);
  expect(isZone('')).toBe(false);
  expect(localDate(new Date('2026-12-11T23:30:00Z'), 'Europe/Nowhere')).toBe('2026-12-11');
});
