import { describe, expect, it } from 'vitest';
import { daylightAt, inDaylight, type Daylight } from '#lib/shoot/daylight';
import { instantOf, minuteOf } from '#lib/shoot/local-time';

const clock = (text: string): number => {
  const [hours = 0, minutes = 0] = text.split(':').map(Number);
  return hours * 60 + minutes;
};

// US Naval Observatory, Rise, Set, and Twilight Tables: San Francisco (N37 46, W122 26), 2012, standard
// time of UTC−8, sea-level horizon. Tolerance one minute.
const TABLE = [
  ['2012-01-01', '07:25', '17:01'],
  ['2012-03-20', '06:12', '18:22'],
  ['2012-06-20', '04:48', '19:35'],
  ['2012-09-22', '05:58', '18:06'],
  ['2012-12-21', '07:22', '16:55'],
] as const;
const place = { lat: 37 + 46 / 60, lon: -(122 + 26 / 60) };
const risen = (daylight: Daylight | null) => {
  if (daylight?.kind !== 'riseAndSet') throw new Error('no rise and set');
  return daylight;
};

describe('sunrise and sunset', () => {
  it.each(TABLE)('%s: %s and %s by the USNO table', (date, rise, set) => {
    const { riseMin, setMin } = risen(daylightAt({ ...place, zone: 'Etc/GMT+8' }, date));
    expect(Math.abs(riseMin - clock(rise))).toBeLessThanOrEqual(1);
    expect(Math.abs(setMin - clock(set))).toBeLessThanOrEqual(1);
  });

  it.each(TABLE)(
    '%s: an hour later by the wall clock where summer time applies',
    (date, rise, set) => {
      const summer = date > '2012-03-11' && date < '2012-11-04' ? 60 : 0;
      const { riseMin, setMin } = risen(
        daylightAt({ ...place, zone: 'America/Los_Angeles' }, date),
      );
      expect(Math.abs(riseMin - clock(rise) - summer)).toBeLessThanOrEqual(1);
      expect(Math.abs(setMin - clock(set) - summer)).toBeLessThanOrEqual(1);
    },
  );

  it('means the right day on both sides of the date line', () => {
    // About six in the morning and six at night at an equinox on the equator, whatever the longitude.
    for (const [lon, zone] of [
      [179, 'Etc/GMT-12'],
      [-179, 'Etc/GMT+12'],
      [0, 'Etc/GMT'],
    ] as const) {
      const { riseMin, setMin } = risen(daylightAt({ lat: 0, lon, zone }, '2026-03-20'));
      expect(Math.abs(riseMin - 360)).toBeLessThan(20);
      expect(Math.abs(setMin - 1080)).toBeLessThan(20);
    }
  });

  it('says so where the sun does not set or does not rise, and null where the place is unknown', () => {
    const north = { lat: 70, lon: 25, zone: 'Europe/Oslo' };
    expect(daylightAt(north, '2026-06-20')).toEqual({ kind: 'alwaysUp' });
    expect(daylightAt(north, '2026-12-20')).toEqual({ kind: 'alwaysDown' });
    expect(daylightAt({ ...north, lat: null }, '2026-06-20')).toBeNull();
  });

  it('a step is lit if it lies between rise and set; unknown stays unknown', () => {
    const day: Daylight = { kind: 'riseAndSet', riseMin: 400, setMin: 1000 };
    expect(inDaylight(day, 400, 1000)).toBe(true);
    expect(inDaylight(day, 399, 500)).toBe(false);
    expect(inDaylight(day, 900, 1001)).toBe(false);
    expect(inDaylight({ kind: 'alwaysDown' }, 600, 700)).toBe(false);
    expect(inDaylight(null, 600, 700)).toBeNull();
  });
});

describe('the wall clock', () => {
  // Rules of the IANA time zone database: the clocks of Copenhagen change on 2026-03-29 and 2026-10-25.
  it.each([
    ['2026-03-28', 545, '2026-03-28T08:05:00.000Z'],
    ['2026-03-29', 60, '2026-03-29T00:00:00.000Z'],
    ['2026-03-29', 545, '2026-03-29T07:05:00.000Z'],
    ['2026-10-25', 545, '2026-10-25T08:05:00.000Z'],
    ['2026-10-24', 1440 + 545, '2026-10-25T08:05:00.000Z'],
    ['2026-12-31', 1450, '2026-12-31T23:10:00.000Z'],
  ])('%s minute %i in Copenhagen is %s', (date, minute, instant) => {
    expect(instantOf(date, minute, 'Europe/Copenhagen').toISOString()).toBe(instant);
    expect(minuteOf(new Date(instant), date, 'Europe/Copenhagen')).toBe(minute);
  });
});
