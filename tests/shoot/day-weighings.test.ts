import { describe, expect, test } from 'vitest';
import type { Weighing } from '#lib/episode/recipe-schema';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import {
  beforeDisplay,
  beforeIt,
  foldScale,
  readingId,
  weighedEntry,
  weighingsNow,
  type Before,
} from '#lib/shoot/day-weighings';
import type { OnScale } from '#lib/shoot/scale-entries';
import { inOrderFor, unweighedOf } from '#lib/shoot/unweighed';

const START = Date.parse('2026-05-02T08:00:00.000Z');
let seq = 0;
function made(entry: Entry): DayEvent {
  seq += 1;
  const at = new Date(START + seq * 60_000).toISOString();
  return { id: `w${seq}`, deviceId: 'phone', deviceSeq: seq, at, ...entry } as DayEvent;
}
const on = (lineId: string, way: OnScale['way'], containerMg = 0): OnScale => {
  return { recipeId: 'r', lineId, of: 'raw', way, scaleId: 's', containerMg };
};
const now = (events: readonly DayEvent[], base: readonly Weighing[] = [], counted: string[] = []) =>
  weighingsNow({ id: 'r', weighings: base }, foldScale(events), new Set(counted));

/** Puts something on the scale, after all that was entered before. */
function weigh(events: DayEvent[], what: OnScale, grams: number): DayEvent {
  const before = beforeIt(what, now(events), foldScale(events).displays);
  const read = weighedEntry(what, grams * 1000, before);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const event = made({ kind: 'weighed', refs: {}, payload: read.value });
  expect(dayEventSchema.safeParse(event).success).toBe(true);
  events.push(event);
  return event;
}
const photograph = (events: DayEvent[], what: OnScale): DayEvent => {
  const before = beforeIt(what, now(events), foldScale(events).displays);
  const beforeId = before.kind === 'reading' ? before.weighing.id : null;
  const payload = { ...what, beforeId, sha256: 'a'.repeat(64) };
  const event = made({ kind: 'display', refs: {}, payload });
  events.push(event);
  return event;
};
const net = (weighings: readonly Weighing[]) =>
  weighings
    .filter(({ kind }) => kind === 'raw')
    .map(({ grossMg, tareMg, shares }) => [shares[0]?.lineId, (grossMg - tareMg) / 1000]);

describe('the scale on the day', () => {
  test('one thing after another goes into the bowl: each is what it adds', () => {
    const events: DayEvent[] = [];
    const oats = weigh(events, on('oats', 'direct', 310_000), 390);
    weigh(events, on('milk', 'total'), 640);
    weigh(events, on('seeds', 'total'), 652.5);
    const weighings = now(events);
    expect(net(weighings)).toEqual([
      ['oats', 80],
      ['milk', 250],
      ['seeds', 12.5],
    ]);
    // The readings of a running total share their error: each names the one before.
    expect(weighings[0]).toMatchObject({ id: readingId(oats.id), afterId: null });
    expect(weighings[1]?.afterId).toBe(readingId(oats.id));
  });

  test('a jar before and after: the first reading waits, and becomes a part of the second', () => {
    const events: DayEvent[] = [];
    const first = weigh(events, on('honey', 'difference'), 410);
    expect(now(events)).toMatchObject([
      { id: readingId(first.id), kind: 'container', grossMg: 410_000 },
    ]);
    weigh(events, on('honey', 'difference'), 382);
    expect(net(now(events))).toEqual([['honey', 28]]);
    expect(now(events)).toHaveLength(1);
    const more = beforeIt(on('oats', 'total'), now(events), []);
    // After a reading by difference nobody knows what stands on the scale.
    expect(more).toEqual({ kind: 'nothing' });
    expect(weighedEntry(on('oats', 'total'), 90_000, more)).toMatchObject({ ok: false });
  });

  test('a jar that grew is no reading, and nothing on the scale is none', () => {
    const events: DayEvent[] = [];
    weigh(events, on('honey', 'difference'), 410);
    const before = beforeIt(on('honey', 'difference'), now(events), []);
    for (const mg of [410_000, 500_000]) {
      expect(weighedEntry(on('honey', 'difference'), mg, before)).toMatchObject({ ok: false });
    }
    expect(weighedEntry(on('oats', 'direct'), 0, { kind: 'nothing' })).toMatchObject({ ok: false });
    const bowl = weighedEntry(on('oats', 'direct', 300_000), 300_000, { kind: 'nothing' });
    expect(bowl).toMatchObject({ ok: false, problems: [{ path: 'tare' }] });
  });

  test('of a photo nothing is known until its number is typed; it then counts from when it was taken', () => {
    const events: DayEvent[] = [];
    const oats = weigh(events, on('oats', 'direct'), 80);
    const photo = photograph(events, on('milk', 'total'));
    const { displays } = foldScale(events);
    expect(displays.map(({ id }) => id)).toEqual([photo.id]);
    expect(net(now(events))).toEqual([['oats', 80]]);
    // What is put on top of it is held against a number that nobody knows.
    const onTop = beforeIt(on('seeds', 'total'), now(events), displays);
    expect(onTop).toMatchObject({ kind: 'photo' });
    expect(weighedEntry(on('seeds', 'total'), 400_000, onTop)).toMatchObject({
      ok: false,
      problems: [{ code: 'untyped-photo' }],
    });

    const [display] = displays;
    if (!display) throw new Error('no photo');
    const before: Before = beforeDisplay(display, now(events));
    const typed = weighedEntry(display, 330_000, before, display);
    if (!typed.ok) throw new Error('refused');
    expect(typed.value).toMatchObject({
      photoId: photo.id,
      readAt: photo.at,
      afterId: readingId(oats.id),
    });
    const number = made({ kind: 'weighed', refs: {}, payload: typed.value });
    events.push(number);
    expect(foldScale(events).displays).toEqual([]);
    expect(net(now(events))).toEqual([
      ['oats', 80],
      ['milk', 250],
    ]);
    expect(now(events)[1]?.at).toBe(photo.at);

    // A wrong number that is struck out leaves the photo to be typed again.
    events.push(
      made({ kind: 'struckOut', refs: {}, payload: { weighingId: readingId(number.id) } }),
    );
    expect(foldScale(events).displays.map(({ id }) => id)).toEqual([photo.id]);
    events.push(made({ kind: 'struckOut', refs: {}, payload: { weighingId: photo.id } }));
    expect(foldScale(events).displays).toEqual([]);
  });

  test('what the dish has already is not added again, and what was taken out there stays out', () => {
    const events: DayEvent[] = [];
    const oats = weigh(events, on('oats', 'direct'), 80);
    const [there] = now(events);
    if (!there) throw new Error('no reading');
    expect(now(events, [there])).toEqual([there]);
    expect(now(events, [there], [readingId(oats.id)])).toEqual([there]);
    // The program took account of the entry, and its reading is gone: the person took it out.
    expect(now(events, [], [readingId(oats.id)])).toEqual([]);
    events.push(made({ kind: 'struckOut', refs: {}, payload: { weighingId: readingId(oats.id) } }));
    expect(now(events, [there], [readingId(oats.id)])).toEqual([]);
  });
});

describe('what is still to be weighed', () => {
  const lines = [
    { id: 'butter', text: '20 g butter' },
    { id: 'barley', text: '180 g pearl barley' },
    { id: 'honey', text: '1 tbsp honey' },
  ];

  test('names the photo that waits for its number, and the jar that was weighed before only', () => {
    const events: DayEvent[] = [];
    weigh(events, on('butter', 'direct'), 20);
    weigh(events, on('honey', 'difference'), 410);
    photograph(events, on('barley', 'direct'));
    expect(unweighedOf(lines, now(events), foldScale(events).displays)).toEqual([
      { lineId: 'barley', text: '180 g pearl barley', why: 'photo' },
      { lineId: 'honey', text: '1 tbsp honey', why: 'half' },
    ]);
  });

  test('comes first, and of it first what the step names', () => {
    const order = (step: string, weighed: readonly string[]) =>
      inOrderFor(
        step,
        lines,
        unweighedOf(lines, [], []).filter(({ lineId }) => !weighed.includes(lineId)),
      ).map(({ id }) => id);
    expect(order('Toast the barley', [])).toEqual(['barley', 'butter', 'honey']);
    expect(order('Toast the barley', ['barley'])).toEqual(['butter', 'honey', 'barley']);
    expect(order('Rest', [])).toEqual(['butter', 'barley', 'honey']);
  });
});

test('an entry that cannot be is refused where it is wrong', () => {
  const good: Entry = {
    kind: 'weighed',
    refs: {},
    payload: {
      recipeId: 'r',
      lineId: 'oats',
      of: 'raw',
      grossMg: 80_000,
      tareMg: 0,
      method: 'direct',
      scaleId: 's',
      afterId: null,
      answersId: null,
      photoId: null,
      readAt: null,
    },
  };
  const paths = (payload: object) => {
    const event = made({ ...good, payload: { ...good.payload, ...payload } } as Entry);
    const read = dayEventSchema.safeParse(event);
    return read.success ? [] : read.error.issues.map(({ path }) => path.join('.'));
  };
  expect(paths({})).toEqual([]);
  expect(paths({ tareMg: 80_000 })).toEqual(['payload.grossMg']);
  expect(paths({ grossMg: 1.5 })).toEqual(['payload.grossMg']);
  expect(paths({ grossMg: 2_000_000_000 })).toEqual(['payload.grossMg']);
  expect(paths({ lineId: null })).toEqual(['payload.lineId']);
  expect(paths({ of: 'finished' })).toEqual(['payload.lineId']);
  expect(paths({ readAt: 'noon' })).toEqual(['payload.readAt']);
  expect(paths({ more: 1 })).toEqual(['payload']);
});
