import { describe, expect, test } from 'vitest';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import { foldDay } from '#lib/shoot/fold-day';
import { planDay } from '#lib/shoot/plan-day';
import { replanDay } from '#lib/shoot/replan';
import { promisedOrder } from '#lib/shoot/replan-order';
import { rowsNow, slipMin } from '#lib/shoot/replan-rows';
import { replanNews } from '#lib/shoot/replan-words';
import { dayFile, link, segment, step } from './made-day';

/** A day from 09:00: mixed by hand for ten minutes, baked for half an hour, talked about meanwhile, then shown. */
const lot = {
  id: 'crumb',
  name: 'The crumb',
  limitS: 3600,
  thrownAway: false,
  spans: [
    { fromStepId: 'mix', fromAnchor: 'start' as const, toStepId: 'show', toAnchor: 'end' as const },
  ],
};
const file = dayFile(
  [
    segment(
      'a',
      [
        step('mix', { hands: true }),
        step('bake', { oven: { ovenId: null, milliC: 180_000 }, racks: 1, usualS: 1800 }),
        step('show', { hands: true }),
      ],
      { perishables: [lot] },
    ),
    segment('b', [step('talk', { hands: true, role: 'talk' })]),
  ],
  [link('mix', 'bake', 0, null), link('bake', 'show', 0, 600)],
);
const { entries } = planDay(file, { seed: 1 });
const MIDNIGHT = Date.parse('2026-06-06T00:00:00.000Z');
const minuteOf = (at: string): number => (Date.parse(at) - MIDNIGHT) / 60_000;
const at = (id: string): number => entries.find((e) => e.stepId === id)?.startMin ?? 0;

let seq = 0;
function made(minute: number, entry: Entry): DayEvent {
  seq += 1;
  const own = { id: `w${seq}`, deviceId: 'phone', deviceSeq: seq };
  return { ...own, at: new Date(MIDNIGHT + minute * 60_000).toISOString(), ...entry };
}
const mark = (kind: 'started' | 'done' | 'skipped', minute: number, stepId: string) =>
  made(minute, { kind, refs: { stepId }, payload: {} });
function news(events: readonly DayEvent[], nowMin: number) {
  const promised = promisedOrder(entries, foldDay(events).order);
  const replan = replanDay(file, promised, foldDay(events), { nowMin, minuteOf });
  return replanNews(replan, promised, nowMin);
}

describe('a new order in words', () => {
  const mixed = [mark('started', at('mix'), 'mix'), mark('done', at('bake'), 'mix')];
  const baking = [...mixed, mark('started', at('bake'), 'bake')];
  const takes = (minutes: number) =>
    made(at('bake') + 5, { kind: 'longer', refs: { stepId: 'bake' }, payload: { minutes } });
  const longer = takes(32);

  test('what takes longer moves what waits for it, and nothing else', () => {
    const told = news([...baking, longer], at('bake') + 6);
    const clock = (minute: number) =>
      `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
    const from = at('show');
    const to = at('bake') + 37;
    expect(told.changes.filter((change) => change.startsWith('Step show'))).toEqual([
      `Step show moves from ${clock(from)} to ${clock(to)}`,
    ]);
    expect(told.changes.every((change) => !change.startsWith('Step mix'))).toBe(true);
    expect(told.broken).toEqual([]);
  });

  test('an order that is taken is the one that is promised, and goes through the log', () => {
    const nowMin = at('bake') + 6;
    const { order } = news([...baking, longer], nowMin);
    const taken = made(nowMin, { kind: 'replanned', refs: {}, payload: order });
    expect(dayEventSchema.parse(JSON.parse(JSON.stringify(taken)))).toEqual(taken);
    expect(news([...baking, longer, taken], nowMin).changes).toEqual([]);
    const fold = foldDay([...baking, longer, taken]);
    const promised = promisedOrder(entries, fold.order);
    const rows = rowsNow(promised, fold, { nowMin, minuteOf });
    expect(slipMin(promised, rows, nowMin)).toBe(0);
  });

  test('food that has stood out too long is named with its source and what to do', () => {
    const late = at('mix') + 65;
    const told = news(baking, late);
    expect(told.actions).toEqual([
      {
        text: 'Throw The crumb away, or keep it for the picture only: it has stood out for 1 h 5 min, and at most 1 h is allowed.',
        source: 'USDA FSIS, Danger Zone (40 °F to 140 °F)',
      },
    ]);
    const soon = news([...baking, takes(60)], at('bake') + 6);
    expect(soon.actions.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^Chill The crumb as soon as it can be done/),
    ]);
  });

  test('what was to come soon and cannot any more is named, and everything still has a time', () => {
    const done = [...baking, mark('done', at('bake') + 30, 'bake')];
    const told = news(done, at('bake') + 45);
    expect(told.broken).toEqual([expect.stringContaining('at most 10 min after')]);
    const shown = told.order.rows.find(({ id }) => id === 'step:show');
    expect(shown?.startMin).toBe(at('bake') + 45);
  });

  test('what was skipped is not in the order, and what came after it still comes after what it came after', () => {
    const told = news([mark('skipped', at('mix') + 1, 'bake')], at('mix') + 1);
    const order = new Map(told.order.rows.map((row) => [row.id, row]));
    expect(order.has('step:bake')).toBe(false);
    expect(told.order.heats).toEqual([]);
    const mixEnds = order.get('step:mix')?.endMin ?? Infinity;
    expect(order.get('step:show')?.startMin).toBeGreaterThanOrEqual(mixEnds);
  });

  test('who presses nothing is taken to be busy with what is first; it is said', () => {
    const told = news([], at('mix') + 4);
    expect(told.assumed).toEqual([
      expect.stringMatching(/^Step \w+ is taken to be under way since \d\d:\d\d\.$/),
    ]);
    const fold = foldDay([]);
    const rows = rowsNow(entries, fold, { nowMin: at('mix') + 14, minuteOf });
    expect(slipMin(entries, rows, at('mix') + 14)).toBeGreaterThanOrEqual(4);
  });
});
