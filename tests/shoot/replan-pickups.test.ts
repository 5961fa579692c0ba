import { describe, expect, test } from 'vitest';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import { pickupRef, rowKey, rowRefOf, type DayEvent, type Entry } from '#lib/shoot/day-log';
import { foldDay } from '#lib/shoot/fold-day';
import { dayLots, lotsNow } from '#lib/shoot/lot-actions';
import { openPickups, placedPickups } from '#lib/shoot/placed-pickups';
import { planDay } from '#lib/shoot/plan-day';
import { promisedOrder } from '#lib/shoot/replan-order';
import { replanWithPickups } from '#lib/shoot/replan-pickups';
import { rowsNow } from '#lib/shoot/replan-rows';
import { replanNews } from '#lib/shoot/replan-words';
import { dayFile, link, segment, step } from './made-day';

const lot = {
  id: 'crumb',
  name: 'The crumb',
  limitS: 3600,
  thrownAway: false,
  spans: [
    { fromStepId: 'mix', fromAnchor: 'start' as const, toStepId: 'show', toAnchor: 'end' as const },
  ],
};
const file = (wrapByMin: number | null = null) =>
  dayFile(
    [
      segment(
        'a',
        [
          step('mix', { hands: true }),
          step('show', { hands: true, role: 'shoot' }),
          step('eat', { hands: true, role: 'eat' }),
        ],
        { perishables: [lot] },
      ),
      segment('b', [step('talk', { hands: true, role: 'talk', usualS: 1800 })]),
    ],
    [link('mix', 'show', 0, null), link('show', 'eat', 0, null)],
    { wrapByMin },
  );
const MIDNIGHT = Date.parse('2026-06-06T00:00:00.000Z');
const minuteOf = (at: string): number => (Date.parse(at) - MIDNIGHT) / 60_000;

let seq = 0;
function made(minute: number, entry: Entry): DayEvent {
  seq += 1;
  const own = { id: `p${seq}`, deviceId: 'phone', deviceSeq: seq };
  const at = new Date(MIDNIGHT + minute * 60_000).toISOString();
  return dayEventSchema.parse({ ...own, at, ...entry });
}
const later = (minute: number, text: string, stepId: string | null, minutes = 7) =>
  made(minute, {
    kind: 'pickup',
    refs: stepId === null ? {} : { stepId },
    payload: { text, minutes },
  });
const mark = (kind: 'started' | 'done' | 'skipped', minute: number, stepId: string) =>
  made(minute, { kind, refs: { stepId }, payload: {} });

function replanned(of: ReturnType<typeof file>, events: readonly DayEvent[], nowMin: number) {
  const { entries } = planDay(of, { seed: 1 });
  const fold = foldDay(events);
  const promised = promisedOrder([...entries, ...placedPickups(fold)], fold.order);
  const { replan, notPlaced } = replanWithPickups(of, promised, fold, { nowMin, minuteOf });
  const news = replanNews(replan, promised, nowMin, notPlaced);
  const at = (id: string) => replan.plan.entries.find((entry) => entry.id === id);
  return { news, at, replan, entries, fold };
}

describe('what is to be got later', () => {
  const start = planDay(file(), { seed: 1 }).startMin;

  test('gets a place after its step and before the plate is eaten, for as long as it takes', () => {
    const pickup = later(start + 1, 'The crumb,\nclose', 'show');
    const { news, at } = replanned(file(), [mark('started', start, 'mix'), pickup], start + 1);
    const placed = at(`step:pickup-${pickup.id}`);
    expect(placed).toMatchObject({ title: 'The crumb, close', hands: true, onCamera: true });
    expect((placed?.endMin ?? 0) - (placed?.startMin ?? 0)).toBe(7);
    expect(placed?.startMin).toBeGreaterThanOrEqual(at('step:show')?.endMin ?? Infinity);
    expect(placed?.endMin).toBeLessThanOrEqual(at('step:eat')?.startMin ?? -Infinity);
    expect(news.changes.some((words) => words.startsWith('New: The crumb, close at'))).toBe(true);
    expect(news.notPlaced).toEqual([]);
  });

  test('once its order is taken it is a row that is marked as the pickup is, and keeps its place', () => {
    const pickup = later(start + 1, 'Crumb', null);
    const begun = [mark('started', start, 'mix'), pickup];
    const { news } = replanned(file(), begun, start + 1);
    const taken = made(start + 2, { kind: 'replanned', refs: {}, payload: news.order });
    const [row] = placedPickups(foldDay([...begun, taken]));
    if (!row) throw new Error('no row');
    expect(rowRefOf(row)).toEqual(pickupRef(pickup.id));
    const again = replanned(file(), [...begun, taken], start + 2);
    expect(again.news.changes).toEqual([]);
    expect(again.at(row.id)).toMatchObject({ startMin: row.startMin, endMin: row.endMin });

    const got = made(start + 3, { kind: 'done', refs: pickupRef(pickup.id), payload: {} });
    const fold = foldDay([...begun, taken, got]);
    expect(fold.pickups[0]?.gotAt).toBe(got.at);
    expect(fold.doneAt.has(rowKey(rowRefOf(row)))).toBe(true);
    expect(openPickups(fold)).toEqual([]);
    const without = made(start + 3, { kind: 'skipped', refs: pickupRef(pickup.id), payload: {} });
    expect(openPickups(foldDay([...begun, taken, without]))).toEqual([]);

    // Taken back, the day is as it was before that order.
    const back = made(start + 4, {
      kind: 'orderBack',
      refs: {},
      payload: { replannedId: taken.id },
    });
    expect(foldDay([...begun, taken, back]).order).toBeNull();
    const more = made(start + 5, { kind: 'replanned', refs: {}, payload: news.order });
    expect(foldDay([...begun, taken, more, back]).order?.id).toBe(more.id);
  });

  test('that does not fit before the latest end is left out and told why; what fits is placed', () => {
    const { wrapMin } = planDay(file(), { seed: 1 });
    const small = later(start + 1, 'Hands', null, 5);
    const large = later(start + 1, 'The whole table again', null, 60);
    const events = [mark('started', start, 'mix'), small, large];
    const { news, at, replan } = replanned(file(wrapMin + 6), events, start + 1);
    expect(news.notPlaced.map(({ text }) => text)).toEqual(['The whole table again']);
    expect(news.notPlaced[0]?.why).not.toBe('');
    expect(at(`step:pickup-${small.id}`)).toBeDefined();
    expect(at(`step:pickup-${large.id}`)).toBeUndefined();
    expect(replan.plan.broken).toEqual([]);
  });

  test('about a dish that is eaten is placed all the same: what is left of it can be shown', () => {
    const at0 = (id: string) =>
      planDay(file(), { seed: 1 }).entries.find(({ stepId }) => stepId === id);
    const end = (id: string) => at0(id)?.endMin ?? 0;
    const events = [
      ...['mix', 'show', 'eat'].map((id) => mark('done', end(id), id)),
      later(end('eat'), 'The empty plate', 'show'),
    ];
    const { news } = replanned(file(), events, end('eat') + 1);
    expect(news.notPlaced).toEqual([]);
    expect(news.changes.join()).toContain('New: The empty plate');
  });
});

describe('food that stands out', () => {
  const { entries, startMin: start } = planDay(file(), { seed: 1 });
  const lots = dayLots(file());
  const actions = (events: readonly DayEvent[], nowMin: number) =>
    lotsNow(lots, entries, rowsNow(entries, foldDay(events), { nowMin, minuteOf }), nowMin);

  // USDA FSIS: two hours out of the refrigerator, one above 32 °C; this lot's limit is set to one hour.
  test('is told to be chilled while it can be, and thrown away once it is over its limit', () => {
    const out = [mark('started', start, 'mix')];
    expect(actions(out, start + 5)).toEqual([]);
    const late = actions([...out, mark('done', start + 55, 'mix')], start + 55);
    expect(late).toMatchObject([
      { text: expect.stringMatching(/^Chill The crumb as soon/) as string },
    ]);
    const over = actions([...out, mark('done', start + 61, 'mix')], start + 61);
    expect(over).toMatchObject([
      { text: expect.stringMatching(/^Throw The crumb away/) as string },
    ]);
    expect(over[0]?.source).toMatch(/FSIS/);
  });

  test('is chilled at once where the step that puts it away was skipped, and has no clock for the picture only', () => {
    const events = [mark('started', start, 'mix'), mark('skipped', start + 5, 'show')];
    expect(actions(events, start + 6)).toMatchObject([
      { text: expect.stringMatching(/^Chill The crumb now/) as string },
    ]);
    const whole = file();
    const segments = whole.episode.segments.map((one) => ({
      ...one,
      perishables: one.perishables.map((own) => ({ ...own, thrownAway: true })),
    }));
    expect(dayLots({ ...whole, episode: { ...whole.episode, segments } })).toEqual([]);
  });
});
