import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import {
  foldDay,
  inDayOrder,
  instantAfter,
  NOTE_MAX,
  rowKey,
  storable,
  type DayEvent,
  type RowRef,
} from '#lib/shoot/day-log';
import { entryClock } from '#lib/shoot/entry-clock';
import { isBehind, nowAndNext, type OrderRow } from '#lib/shoot/now-and-next';

const ROWS: readonly RowRef[] = [{ stepId: 'a' }, { stepId: 'b' }, { entryId: 'a' }];
const START = Date.parse('2026-05-02T08:00:00.000Z');

/** Few devices, numbers, ids and instants, so that events often claim the same place. */
const made = fc.record({
  id: fc.nat(12).map((n) => `e${n}`),
  deviceId: fc.constantFrom('phone', 'laptop'),
  deviceSeq: fc.integer({ min: 1, max: 12 }),
  at: fc.nat(5).map((n) => new Date(START + n * 60_000).toISOString()),
});
const event: fc.Arbitrary<DayEvent> = fc.oneof(
  fc
    .tuple(made, fc.constantFrom('done', 'takenBack'), fc.constantFrom(...ROWS))
    .map(([m, kind, refs]): DayEvent => ({ ...m, kind, refs, payload: {} })),
  fc
    .tuple(made, fc.constantFrom<RowRef | Record<string, never>>(...ROWS, {}), fc.string())
    .map(([m, refs, text]): DayEvent => ({ ...m, kind: 'note', refs, payload: { text } })),
);

/** A log as devices really write it: ids and numbers unlike, the clock of each as it likes. */
const log = fc
  .array(event, { maxLength: 15 })
  .map((events) => events.map((e, n): DayEvent => ({ ...e, id: `own-${n}`, deviceSeq: n + 1 })));

const at = (minute: number) => new Date(START + minute * 60_000).toISOString();
let seq = 0;
function mark(kind: 'done' | 'takenBack', minute: number, refs: RowRef, deviceId = 'phone') {
  seq += 1;
  return {
    id: `m${seq}`,
    deviceId,
    deviceSeq: seq,
    at: at(minute),
    kind,
    refs,
    payload: {},
  } as const;
}

describe('the fold of a day', () => {
  test('is the same for every order of arrival and any repetition, also where ids clash', () => {
    fc.assert(
      fc.property(
        fc.array(event, { maxLength: 15 }).chain((events) =>
          fc.tuple(
            fc.constant(events),
            fc.shuffledSubarray([...events, ...events], {
              minLength: events.length * 2,
              maxLength: events.length * 2,
            }),
          ),
        ),
        ([events, again]) => {
          expect(foldDay(again)).toEqual(foldDay(events));
          expect(inDayOrder(inDayOrder(again))).toEqual(inDayOrder(events));
        },
      ),
    );
  });

  test('counts each id once, and each number of a device once', () => {
    fc.assert(
      fc.property(fc.array(event), (events) => {
        const kept = inDayOrder(events);
        expect(new Set(kept.map(({ id }) => id)).size).toBe(kept.length);
        const numbers = kept.map(({ deviceId, deviceSeq }) => `${deviceId} ${deviceSeq}`);
        expect(new Set(numbers).size).toBe(kept.length);
        // What was left out is one of those that stayed, sent again.
        for (const left of events) {
          const stands = kept.some(
            (k) =>
              k.id === left.id || (k.deviceId === left.deviceId && k.deviceSeq === left.deviceSeq),
          );
          expect(stands).toBe(true);
        }
      }),
    );
  });

  test('loses nothing of a log whose ids are unlike, and orders it by instant, device and number', () => {
    fc.assert(
      fc.property(log, (events) => {
        const kept = inDayOrder(events);
        expect(kept).toHaveLength(events.length);
        const places = kept.map(
          (e) => `${e.at} ${e.deviceId.padEnd(8)} ${String(e.deviceSeq).padStart(4, '0')}`,
        );
        expect(places).toEqual([...places].sort());
        const notes = events.filter(({ kind }) => kind === 'note');
        expect(foldDay(events).notes).toHaveLength(notes.length);
      }),
    );
  });

  test('a row is done by its last mark, and since the first done of that stretch', () => {
    fc.assert(
      fc.property(log, (events) => {
        const { doneAt } = foldDay(events);
        for (const ref of ROWS) {
          const own = inDayOrder(events).filter(
            (e) => e.kind !== 'note' && JSON.stringify(e.refs) === JSON.stringify(ref),
          );
          expect(doneAt.has(rowKey(ref))).toBe(own.at(-1)?.kind === 'done');
          const lastBack = own.map(({ kind }) => kind).lastIndexOf('takenBack');
          expect(doneAt.get(rowKey(ref))).toBe(own.at(lastBack + 1)?.at);
        }
      }),
    );
  });

  test('what is pressed last counts, whatever the clocks of the devices say', () => {
    const kinds = fc.constantFrom('done' as const, 'takenBack' as const);
    fc.assert(
      fc.property(log, kinds, fc.constantFrom(...ROWS), fc.nat(5), (events, kind, refs, minute) => {
        const now = new Date(START + minute * 60_000);
        const last = instantAfter(now, events, refs);
        expect(last >= now.toISOString()).toBe(true);
        const pressed = { ...mark(kind, 0, refs, 'another'), at: last };
        expect(foldDay([...events, pressed]).doneAt.has(rowKey(refs))).toBe(kind === 'done');
      }),
    );
  });

  test('a step and another entry with the same id are two rows', () => {
    const { doneAt } = foldDay([mark('done', 1, { entryId: 'a' })]);
    expect([...doneAt.keys()]).toEqual([rowKey({ entryId: 'a' })]);
    expect(doneAt.has(rowKey({ stepId: 'a' }))).toBe(false);
  });
});

describe('when an entry was made', () => {
  test.each([
    ['2026-05-02T08:05:10.000Z', '10:05'],
    ['2026-05-02T22:30:00.000Z', '00:30 next day'],
    ['2026-05-01T22:00:00.000Z', '00:00'],
    ['2026-05-01T21:59:00.000Z', 'Fri 1 May, 23:59'],
    ['2026-06-09T08:05:00.000Z', 'Tue 9 Jun, 10:05'],
  ])('%s in a kitchen two hours east is told as %s', (instant, words) => {
    expect(entryClock(instant, '2026-05-02', 'Europe/Copenhagen')).toBe(words);
  });
});

describe('an event as it is sent', () => {
  const note = (text: unknown) => ({
    ...mark('done', 0, { stepId: 'a' }),
    kind: 'note',
    refs: {},
    payload: { text },
  });

  test('a log of the domain is read back as it is', () => {
    fc.assert(
      fc.property(log, (events) => {
        for (const e of events) {
          const fits =
            e.kind !== 'note' ||
            (e.payload.text.trim() !== '' && storable(e.payload.text) === e.payload.text);
          const read = dayEventSchema.safeParse(JSON.parse(JSON.stringify(e)));
          expect(read.success).toBe(fits);
          if (read.success) expect(read.data).toEqual(e);
        }
      }),
    );
  });

  test('an instant of another offset is made to the one form that sorts as text', () => {
    const read = dayEventSchema.parse({
      ...mark('done', 0, { stepId: 'a' }),
      at: '2026-05-02T10:00:00+02:00',
    });
    expect(read.at).toBe('2026-05-02T08:00:00.000Z');
  });

  test.each([
    ['a note that is longer than it may be', note('x'.repeat(NOTE_MAX + 1))],
    ['a note of blanks', note(' \n ')],
    ['a note with a NUL', note('a\0b')],
    ['a note with half a character', note('a\ud83db')],
    ['an instant that is none', { ...mark('done', 0, { stepId: 'a' }), at: 'today' }],
    [
      'a year that no plan has',
      { ...mark('done', 0, { stepId: 'a' }), at: '9999-12-31T00:00:00Z' },
    ],
    ['a number that is none', { ...mark('done', 0, { stepId: 'a' }), deviceSeq: 0 }],
    ['a mark on nothing', { ...mark('done', 0, { stepId: 'a' }), refs: {} }],
    [
      'two rows at once',
      { ...mark('done', 0, { stepId: 'a' }), refs: { stepId: 'a', entryId: 'b' } },
    ],
    ['a kind that is not known', { ...mark('done', 0, { stepId: 'a' }), kind: 'shout' }],
    ['a field too many', { ...mark('done', 0, { stepId: 'a' }), extra: 1 }],
    ['an id with a blank', { ...mark('done', 0, { stepId: 'a' }), id: 'a b' }],
  ])('%s is refused', (_what, input) => {
    expect(dayEventSchema.safeParse(input).success).toBe(false);
  });

  test('the longest note is taken', () => {
    expect(dayEventSchema.safeParse(note('x'.repeat(NOTE_MAX))).success).toBe(true);
  });
});

describe('now and next', () => {
  const row = (
    id: string,
    startMin: number,
    endMin: number,
    over: Partial<OrderRow['entry']> = {},
  ): OrderRow => ({
    entry: { id, kind: 'step', stepId: id, startMin, endMin, hands: true, ovenId: null, ...over },
  });
  const done = (...refs: RowRef[]) => foldDay(refs.map((ref, n) => mark('done', n, ref)));
  const heat = row('oven:o:1', 540, 560, { kind: 'preheat', stepId: null, ovenId: 'o' });
  const parcel = row('appointment:p', 600, 610, { kind: 'appointment', stepId: null });
  const rows = [
    heat,
    row('mix', 540, 555),
    row('bake', 560, 600, { hands: false, ovenId: 'o' }),
    parcel,
    row('wash:s', 610, 620, { kind: 'washUp', stepId: null }),
  ];
  const ids = (fold: ReturnType<typeof done>, nowMin: number | null) => {
    const { now, next } = nowAndNext(rows, fold, nowMin);
    return [now?.entry.id, next?.entry.id];
  };

  test('the first row that is not done is now, the one after it next', () => {
    expect(ids(done(), 540)).toEqual(['oven:o:1', 'mix']);
    expect(ids(done({ entryId: 'oven:o:1' }), 540)).toEqual(['mix', 'bake']);
    expect(ids(done({ stepId: 'mix' }), 540)).toEqual(['oven:o:1', 'bake']);
    const all = done(
      { entryId: 'oven:o:1' },
      { stepId: 'mix' },
      { stepId: 'bake' },
      { entryId: 'appointment:p' },
      { entryId: 'wash:s' },
    );
    expect(ids(all, 640)).toEqual([undefined, undefined]);
  });

  test('heating is behind once the step in that oven is done, an appointment once its time is over', () => {
    expect(ids(done({ stepId: 'bake' }), 560)).toEqual(['mix', 'appointment:p']);
    expect(ids(done({ stepId: 'mix' }, { stepId: 'bake' }), 609)).toEqual([
      'appointment:p',
      'wash:s',
    ]);
    expect(ids(done({ stepId: 'mix' }, { stepId: 'bake' }), 610)).toEqual(['wash:s', undefined]);
    expect(isBehind(parcel, rows, done(), null)).toBe(false);
    const other = row('grill', 560, 600, { ovenId: 'p' });
    expect(isBehind(heat, [...rows, other], done({ stepId: 'grill' }), 640)).toBe(false);
  });

  test('how far behind is told in minutes, on the day itself and in the night after it', () => {
    const behind = (nowMin: number | null) => nowAndNext(rows, done(), nowMin).behindMin;
    expect([559, 560, 561, 1500].map(behind)).toEqual([null, null, 1, 940]);
    expect([null, -30, 2880].map(behind)).toEqual([null, null, null]);
  });

  test('neither is done, and every row before now is behind us', () => {
    const refs = rows.map(({ entry }): RowRef =>
      entry.stepId === null ? { entryId: entry.id } : { stepId: entry.stepId },
    );
    fc.assert(
      fc.property(fc.subarray(refs), fc.integer({ min: 500, max: 700 }), (marked, nowMin) => {
        const fold = done(...marked);
        const { now, next } = nowAndNext(rows, fold, nowMin);
        const open = rows.filter((r) => !isBehind(r, rows, fold, nowMin));
        expect([now, next]).toEqual([open[0] ?? null, open[1] ?? null]);
        const behind = now === null ? rows : rows.slice(0, rows.indexOf(now));
        for (const r of behind) expect(isBehind(r, rows, fold, nowMin)).toBe(true);
      }),
    );
  });
});
