import { describe, expect, test } from 'vitest';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { missingShots, shotState } from '#lib/shoot/day-shots';
import { dayTimers, leftText, stillRunning } from '#lib/shoot/day-timers';
import { foldDay } from '#lib/shoot/fold-day';
import { leastInside, leastWords, readingWords } from '#lib/shoot/inside-least';
import { nowAndNext, type OrderRow } from '#lib/shoot/now-and-next';
import { demoFile } from '../ui/page-support';

const START = Date.parse('2026-05-02T08:00:00.000Z');
let seq = 0;
function made(minute: number, entry: Entry): DayEvent {
  seq += 1;
  const own = { id: `h${seq}`, deviceId: 'phone', deviceSeq: seq };
  return { ...own, at: new Date(START + minute * 60_000).toISOString(), ...entry };
}
const mark = (kind: 'started' | 'done' | 'skipped', minute: number, stepId: string) =>
  made(minute, { kind, refs: { stepId }, payload: {} });
const row = (id: string, startMin: number, endMin: number, hands: boolean): OrderRow => ({
  entry: { id, kind: 'step', stepId: id, startMin, endMin, hands, ovenId: null },
});

describe('timers', () => {
  const rows = [row('bake', 600, 630, false), row('talk', 600, 610, true)];

  test('end so long after the start as was planned, and later where it takes longer', () => {
    const begun = [mark('started', 3, 'bake'), mark('started', 3, 'talk')];
    const [timer, ...others] = dayTimers(rows, foldDay(begun));
    expect(others).toEqual([]);
    expect(timer).toMatchObject({ key: 'step bake', endsAt: START + 33 * 60_000 });
    const more = made(30, { kind: 'longer', refs: { stepId: 'bake' }, payload: { minutes: 5 } });
    expect(dayTimers(rows, foldDay([...begun, more]))[0]?.endsAt).toBe(START + 35 * 60_000);
    expect(dayTimers(rows, foldDay([...begun, mark('done', 20, 'bake')]))).toEqual([]);
    expect(dayTimers(rows, foldDay([...begun, mark('skipped', 20, 'bake')]))).toEqual([]);
  });

  test('keep a row from being what is done now, until they are out', () => {
    const fold = foldDay([mark('started', 0, 'bake')]);
    const timers = dayTimers(rows, fold);
    const now = (minute: number) =>
      nowAndNext(rows, fold, null, stillRunning(timers, START + minute * 60_000)).now?.entry.id;
    expect([now(0), now(29), now(30)]).toEqual(['talk', 'talk', 'bake']);
  });

  test.each([
    [245_000, '4:05'],
    [3_845_000, '1:04:05'],
    [1, '0:01'],
    [0, 'out since 0 min'],
    [-90_000, 'out since 1 min'],
  ])('%s ms are told as %s', (ms, words) => {
    expect(leftText(ms)).toBe(words);
  });
});

describe('shots', () => {
  const shots = [
    { id: 'raw', stepId: 'cut' },
    { id: 'steam', stepId: 'show' },
    { id: 'bite', stepId: 'eat' },
    { id: 'table', stepId: null },
  ];
  const take = (minute: number, shotId: string, good: boolean) =>
    made(minute, { kind: 'take', refs: {}, payload: { shotId, good } });
  const missing = (role: 'eat' | 'taste' | 'shoot', events: readonly DayEvent[]) =>
    missingShots({ id: 'eat', role }, shots, foldDay(events)).map(({ id }) => id);

  test('of a dish are asked for before it is eaten, but those of the eating itself', () => {
    expect(missing('eat', [])).toEqual(['raw', 'steam', 'table']);
    expect(missing('taste', [take(1, 'raw', true)])).toEqual(['steam', 'table']);
    expect(missing('shoot', [])).toEqual([]);
  });

  test('are there when the last take was good, or when the day does without', () => {
    const twice = [take(1, 'raw', true), take(2, 'raw', false)];
    expect(missing('eat', twice)).toContain('raw');
    expect(shotState(foldDay(twice), 'raw')).toEqual({ takes: 2, good: false });
    const without = made(3, { kind: 'without', refs: {}, payload: { shotId: 'steam' } });
    expect(missing('eat', [without])).toEqual(['raw', 'table']);
  });
});

describe('inside temperatures', () => {
  const file = demoFile();
  const found = file.episode.segments.flatMap((segment) =>
    segment.steps.flatMap((step) => {
      const least = leastInside(file, segment, step);
      return least ? [{ step, least }] : [];
    }),
  );

  // FoodSafety.gov, Safe Minimum Internal Temperature Chart: poultry 165 °F, no rest.
  test('of the turkey loaf are at least what the chart has for poultry, with its source', () => {
    expect(found).toHaveLength(1);
    const [{ least } = { least: null }] = found;
    expect(least?.milliC).toBeGreaterThanOrEqual(((165 - 32) * 5000) / 9);
    expect(least?.caution).toContain('165 °F');
    expect(least?.caution).toContain('FoodSafety.gov');
    expect(least?.caution).toContain('local food code');
  });

  test('that a step asks too little of are those of the chart', () => {
    const [segment] = file.episode.segments.filter(({ steps }) =>
      steps.some(({ coreMilliC }) => coreMilliC !== null),
    );
    const step = segment?.steps.find(({ coreMilliC }) => coreMilliC !== null);
    if (!segment || !step) throw new Error('the demo reads a temperature');
    const low = leastInside(file, segment, { ...step, coreMilliC: 60_000 });
    expect(low?.milliC).toBe(73_889);
    expect(leastInside(file, segment, { ...step, coreMilliC: null })).toBeNull();
  });

  const least = { milliC: 73_889, restS: 180, caution: null };
  test('are told never below what they stand for, a reading never above what it was', () => {
    expect(leastWords(least, 'EU')).toBe('Inside at least 73.9 °C, then 3 min rest.');
    expect(leastWords(least, 'US')).toBe('Inside at least 165 °F, then 3 min rest.');
    expect(readingWords(least, 73_889, 'US')).toEqual({
      reached: true,
      words: '165 °F: reached. Now rest it for 3 min.',
    });
    expect(readingWords(least, 73_850, 'EU')).toEqual({
      reached: false,
      words: '73.8 °C: not reached, 0.1 °C short. Go on, and read again.',
    });
  });
});
