import { describe, expect, it } from 'vitest';
import { loggedTakes, slateLetters } from '#lib/shoot/after-takes';
import { cameraClockOf, readClockSecond, type CameraClock } from '#lib/shoot/camera-clock';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { dayClock, instantOfSecond, localClock } from '#lib/shoot/local-time';
import { dayFile, segment, step } from './made-day';

const START = Date.parse('2026-06-06T08:00:00.000Z');
const logOf = (...entries: readonly (readonly [second: number, entry: Entry])[]): DayEvent[] =>
  entries.map(([second, entry], index): DayEvent => ({
    ...entry,
    id: `e${index}`,
    deviceId: 'phone',
    deviceSeq: index + 1,
    at: new Date(START + second * 1000).toISOString(),
  }));
const take = (shotId: string, good: boolean): Entry => ({
  kind: 'take',
  refs: { stepId: 'a' },
  payload: { shotId, good },
});
const note = (text: string, refs: { stepId: string } | Record<string, never>): Entry => ({
  kind: 'note',
  refs,
  payload: { text },
});

const shot = (id: string) => ({
  id,
  title: `Shot ${id}`,
  framing: 'close',
  stepId: 'a',
  lengthS: 10,
  stays: false,
});
const file = dayFile([
  segment('hello', [step('h')], { kind: 'talk' }),
  segment('s', [step('a')], { shots: [shot('cut'), shot('bite')] }),
]);

describe('the takes of a day', () => {
  it('have the slate of their shot, their number, and the note that came after them', () => {
    const takes = loggedTakes(
      file,
      logOf(
        [0, note('before any take', { stepId: 'a' })],
        [5, take('bite', false)],
        [9, note('Fork in the picture', { stepId: 'a' })],
        [12, take('bite', true)],
        [20, take('cut', true)],
        [25, note('about the day', {})],
        [30, take('gone', true)],
      ),
    );
    expect(
      takes.map(({ slate, take: n, good, clock, note: said }) => [slate, n, good, clock, said]),
    ).toEqual([
      ['2B', 1, false, '10:00:05', 'Fork in the picture'],
      ['2B', 2, true, '10:00:12', ''],
      ['2A', 1, true, '10:00:20', ''],
      ['?', 1, true, '10:00:30', ''],
    ]);
  });

  it('have slates without I and O, and go on with two letters', () => {
    const letters = [0, 7, 8, 13, 23, 24, 47, 48].map(slateLetters);
    expect(letters).toEqual(['A', 'H', 'J', 'P', 'Z', 'AA', 'AZ', 'BA']);
    expect(new Set(Array.from({ length: 700 }, (_, index) => slateLetters(index))).size).toBe(700);
  });
});

describe('the clock seen by the camera', () => {
  const seen = (frame: number): CameraClock => ({
    clockAt: '2026-06-06T08:00:00.000Z',
    frame,
    rate: { num: 25, den: 1, dropFrame: false },
  });
  const entry = (frame: number): Entry => ({
    kind: 'cameraClock',
    refs: {},
    payload: seen(frame),
  });

  it('is the one that was entered last; none where none was', () => {
    expect(cameraClockOf(logOf([0, entry(1)], [9, entry(2)], [10, take('cut', true)]))).toEqual(
      seen(2),
    );
    expect(cameraClockOf(logOf([0, take('cut', true)]))).toBeNull();
  });

  it('is kept as it was sent, and refused where it is none', () => {
    const [sent] = logOf([0, entry(42)]);
    expect(dayEventSchema.parse(sent)).toEqual(sent);
    for (const frame of [-1, 1.5, 1e9]) {
      expect(dayEventSchema.safeParse({ ...sent, payload: seen(frame) }).success).toBe(false);
    }
    const payload = { ...seen(1), clockAt: 'nine' };
    expect(dayEventSchema.safeParse({ ...sent, payload }).success).toBe(false);
  });
});

describe('a clock to the second', () => {
  it('is an instant there and back, also on the day on which the clocks change', () => {
    const zone = 'Europe/Copenhagen';
    for (const second of [0, 32_709, 86_399, 86_400, 90_005]) {
      const instant = instantOfSecond('2026-03-29', second, zone);
      expect(readClockSecond(dayClock(instant, '2026-03-29', zone))).toBe(second);
    }
    expect(localClock(instantOfSecond('2026-03-29', 86_400, zone), zone)).toBe('00:00:00');
  });

  it('is read as phones show it, and nothing else is', () => {
    expect(['14:03:27', ' 9.05.00 ', '24:10:05'].map(readClockSecond)).toEqual([
      50_607, 32_700, 87_005,
    ]);
    for (const text of ['', '14:03', '14:60:00', '48:00:00', 'noon', '1:2:3']) {
      expect(readClockSecond(text)).toBeNull();
    }
  });
});
