import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import {
  inDayOrder,
  instantAfter,
  NOTE_MAX,
  LONGER_MAX,
  pickupRef,
  ROW_KINDS,
  rowKey,
  storable,
  type DayEvent,
  type Entry,
  type RowEvent,
  type RowRef,
} from '#lib/shoot/day-log';
import { entryClock } from '#lib/shoot/entry-clock';
import { foldScale } from '#lib/shoot/day-weighings';
import { foldSaid } from '#lib/shoot/fold-said';
import { foldDay, isUnderWay } from '#lib/shoot/fold-day';
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
const rowRef = fc.constantFrom(...ROWS);
const about = fc.constantFrom<RowRef | Record<string, never>>(...ROWS, {});
const shotId = fc.constantFrom('cut', 'bite');
const ordered = fc.record({
  id: fc.constantFrom('step:a', 'wash:b'),
  startMin: fc.integer({ min: 0, max: 700 }),
  endMin: fc.integer({ min: 700, max: 1500 }),
  ovenId: fc.constantFrom('oven', null),
});
/** Every kind of entry, whatever it is about. */
const entry: fc.Arbitrary<Entry> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(fc.constantFrom(...ROW_KINDS), rowRef)
      .map(([kind, refs]): Entry => ({ kind, refs, payload: {} })),
  },
  fc
    .tuple(rowRef, fc.integer({ min: 1, max: LONGER_MAX }))
    .map(([refs, minutes]): Entry => ({ kind: 'longer', refs, payload: { minutes } })),
  fc
    .tuple(fc.constantFrom('note' as const, 'pickup' as const), about, fc.string())
    .map(([kind, refs, text]): Entry => ({ kind, refs, payload: { text } })),
  fc
    .tuple(about, fc.record({ shotId, good: fc.boolean() }))
    .map(([refs, payload]): Entry => ({ kind: 'take', refs, payload })),
  fc
    .tuple(about, fc.record({ shotId }))
    .map(([refs, payload]): Entry => ({ kind: 'without', refs, payload })),
  fc.integer({ min: 0, max: 120_000 }).map((milliC): Entry => ({
    kind: 'temperature',
    refs: { stepId: 'a' },
    payload: { milliC },
  })),
  fc
    .tuple(fc.array(ordered, { minLength: 1, maxLength: 3 }), fc.array(ordered, { maxLength: 2 }))
    .map(([rows, changes]): Entry => {
      const heats = changes.map((row) => ({
        ...row,
        kind: 'preheat' as const,
        title: 'Heat',
        milliC: 200_000,
      }));
      return { kind: 'replanned', refs: {}, payload: { rows, heats } };
    }),
);
/** Ids of entries, few, so that what takes something back often finds it. */
const entryId = fc.nat(12).map((n) => `e${n}`);
const lineId = fc.constantFrom('oats', 'milk');
const atScaleOrSaid: fc.Arbitrary<Entry> = fc.oneof(
  fc
    .record({
      lineId,
      of: fc.constantFrom('raw' as const, 'container' as const),
      grossMg: fc.integer({ min: 2, max: 9 }),
      answersId: fc.option(entryId),
      photoId: fc.option(entryId),
    })
    .map((some): Entry => ({
      kind: 'weighed',
      refs: {},
      payload: {
        recipeId: 'r',
        tareMg: 1,
        method: 'direct',
        scaleId: 's',
        afterId: null,
        readAt: null,
        ...some,
      },
    })),
  lineId.map((on): Entry => ({
    kind: 'display',
    refs: {},
    payload: {
      recipeId: 'r',
      lineId: on,
      of: 'raw',
      way: 'direct',
      scaleId: 's',
      containerMg: 0,
      beforeId: null,
      sha256: 'a'.repeat(64),
    },
  })),
  entryId.map((weighingId): Entry => ({ kind: 'struckOut', refs: {}, payload: { weighingId } })),
  fc
    .tuple(fc.constantFrom('d1', 'd2'), fc.integer({ min: 1, max: 900 }))
    .map(([segmentId, amount]): Entry => ({
      kind: 'said',
      refs: {},
      payload: {
        scope: { kind: 'whole', segmentId },
        text: `It has ${amount}.`,
        numbers: [{ nutrient: 'energyKcal', amount, hedge: 'exact', value: amount }],
      },
    })),
  entryId.map((saidId): Entry => ({ kind: 'unsaid', refs: {}, payload: { saidId } })),
  entryId.map((replannedId): Entry => {
    return { kind: 'orderBack', refs: {}, payload: { replannedId } };
  }),
);
const event: fc.Arbitrary<DayEvent> = fc
  .tuple(made, fc.oneof({ weight: 2, arbitrary: entry }, atScaleOrSaid))
  .map(([m, e]) => ({ ...m, ...e }) as DayEvent);
const isMark = (e: DayEvent): e is RowEvent => (ROW_KINDS as readonly string[]).includes(e.kind);

/** A log as devices really write it: ids and numbers unlike, the clock of each as it likes. */
const log = fc
  .array(event, { maxLength: 15 })
  .map((events) => events.map((e, n): DayEvent => ({ ...e, id: `own-${n}`, deviceSeq: n + 1 })));

const at = (minute: number) => new Date(START + minute * 60_000).toISOString();
let seq = 0;
function mark(kind: RowEvent['kind'], minute: number, refs: RowRef, deviceId = 'phone') {
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
          expect(foldScale(again)).toEqual(foldScale(events));
          expect(foldSaid(again)).toEqual(foldSaid(events));
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
        const fold = foldDay(events);
        const of = (kind: DayEvent['kind']) => events.filter((e) => e.kind === kind).length;
        expect(fold.notes).toHaveLength(of('note'));
        expect(fold.pickups).toHaveLength(of('pickup'));
        expect(fold.takes).toHaveLength(of('take'));
        expect(fold.readings).toHaveLength(of('temperature'));
        const orders = kept.flatMap((e) => (e.kind === 'replanned' ? [e.payload] : []));
        expect(fold.order?.rows).toEqual(orders.at(-1)?.rows);
      }),
    );
  });

  test('a row is what it was marked last, and under way from its beginning until it is over', () => {
    fc.assert(
      fc.property(log, (events) => {
        const fold = foldDay(events);
        for (const ref of ROWS) {
          const own = inDayOrder(events).filter(
            (e) => JSON.stringify(e.refs) === JSON.stringify(ref),
          );
          expect([fold.doneAt.get(rowKey(ref)), fold.skippedAt.get(rowKey(ref))]).toEqual(
            plainly(own),
          );
          const begun = own.some((e) => e.kind === 'started' || e.kind === 'longer');
          if (!begun) expect(isUnderWay(fold, rowKey(ref))).toBe(false);
          const fresh = own.findLastIndex((e) => e.kind === 'redo');
          const since = own.slice(fresh + 1).filter(isMark);
          expect(fold.redone.get(rowKey(ref)) ?? 0).toBe(
            own.filter(({ kind }) => kind === 'redo').length,
          );
          if (fresh >= 0 && since.length === 0) {
            expect(fold.doneAt.has(rowKey(ref)) || fold.skippedAt.has(rowKey(ref))).toBe(false);
          }
        }
      }),
    );
  });

  /** Since when a row is done, and since when skipped, told from the last mark backwards. */
  function plainly(own: readonly DayEvent[]): [string | undefined, string | undefined] {
    const marks = own.filter(isMark);
    const last = marks.findLastIndex(({ kind }, n) =>
      kind === 'started' ? plainly(marks.slice(0, n))[1] !== undefined : true,
    );
    const found = marks[last];
    const before = () => plainly(marks.slice(0, last));
    if (found?.kind === 'done') return [before()[0] ?? found.at, undefined];
    if (found?.kind === 'skipped') return [undefined, before()[1] ?? found.at];
    return [undefined, undefined];
  }

  test('what is pressed last counts, whatever the clocks of the devices say', () => {
    const kinds = fc.constantFrom('done' as const, 'skipped' as const, 'redo' as const);
    fc.assert(
      fc.property(log, kinds, fc.constantFrom(...ROWS), fc.nat(5), (events, kind, refs, minute) => {
        const now = new Date(START + minute * 60_000);
        const last = instantAfter(now, events, { kind, refs });
        expect(last >= now.toISOString()).toBe(true);
        const pressed = { ...mark(kind, 0, refs, 'another'), at: last };
        const fold = foldDay([...events, pressed]);
        expect(fold.doneAt.has(rowKey(refs))).toBe(kind === 'done');
        expect(fold.skippedAt.has(rowKey(refs))).toBe(kind === 'skipped');
      }),
    );
  });

  test('an order that is taken last counts, whatever the clocks say', () => {
    const taken = (id: string) =>
      ({
        kind: 'replanned',
        refs: {},
        payload: { rows: [{ id, startMin: 1, endMin: 2, ovenId: null }], heats: [] },
      }) as const;
    const ahead = { id: 'o1', deviceId: 'phone', deviceSeq: 1, at: at(30), ...taken('old') };
    const here = instantAfter(new Date(START), [ahead], taken('new'));
    const later = { id: 'o2', deviceId: 'laptop', deviceSeq: 1, at: here, ...taken('new') };
    expect(foldDay([later, ahead]).order?.rows[0]?.id).toBe('new');
    expect(instantAfter(new Date(START), [ahead], { kind: 'note', refs: {} })).toBe(at(0));
  });

  test('started, longer, done, not done after all: it goes on as before; again: from the beginning', () => {
    const ref = { stepId: 'bake' };
    const key = rowKey(ref);
    const longer = {
      ...mark('started', 5, ref),
      kind: 'longer',
      payload: { minutes: 12 },
    } as const;
    const begun = [mark('started', 1, ref), longer];
    expect(foldDay([longer]).startedAt.get(key)).toBe(at(5));
    expect(foldDay(begun).longerUntil.get(key)).toBe(at(17));
    const back = foldDay([...begun, mark('done', 6, ref), mark('takenBack', 7, ref)]);
    expect(isUnderWay(back, key)).toBe(true);
    expect(back.startedAt.get(key)).toBe(at(1));
    expect(isUnderWay(foldDay([...begun, mark('takenBack', 7, ref)]), key)).toBe(false);
    const again = foldDay([...begun, mark('done', 6, ref), mark('redo', 7, ref)]);
    expect(again.redone.get(key)).toBe(1);
    expect([again.startedAt.has(key), again.longerUntil.has(key)]).toEqual([false, false]);
  });

  test('a pickup is there once its own row is done; a take undoes going without the shot', () => {
    const own = { id: 'p', deviceId: 'phone', deviceSeq: 900, at: at(1) };
    const pickup = { ...own, kind: 'pickup', refs: {}, payload: { text: 'the bite' } } as const;
    expect(foldDay([pickup]).pickups).toMatchObject([{ text: 'the bite', gotAt: null }]);
    const got = foldDay([mark('done', 3, pickupRef('p')), pickup]);
    expect(got.pickups).toMatchObject([{ gotAt: at(3) }]);
    const payload = { shotId: 'bite' };
    const without = { ...own, id: 'w', kind: 'without', refs: {}, payload } as const;
    expect([...foldDay([without]).without]).toEqual(['bite']);
    const good = { ...payload, good: true };
    const take = { ...own, id: 't', deviceSeq: 901, at: at(2), kind: 'take', refs: {} } as const;
    const both = foldDay([without, { ...take, payload: good }]);
    expect(both.without.size).toBe(0);
    expect(both.takes).toMatchObject([{ shotId: 'bite', good: true, at: at(2) }]);
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
            (e.kind !== 'note' && e.kind !== 'pickup') ||
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
    [
      'a reading of boiling oil',
      { ...note('x'), kind: 'temperature', refs: { stepId: 'a' }, payload: { milliC: 180_000 } },
    ],
    ['a reading of no step', { ...note('x'), kind: 'temperature', payload: { milliC: 70_000 } }],
    [
      'no minutes longer',
      { ...note('x'), kind: 'longer', refs: { stepId: 'a' }, payload: { minutes: 0 } },
    ],
    ['a take of no shot', { ...note('x'), kind: 'take', payload: { good: true } }],
    [
      'an order that runs backwards',
      {
        ...note('x'),
        kind: 'replanned',
        payload: { rows: [{ id: 'step:a', startMin: 9, endMin: 8, ovenId: null }], heats: [] },
      },
    ],
    ['an order of nothing', { ...note('x'), kind: 'replanned', payload: { rows: [], heats: [] } }],
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
