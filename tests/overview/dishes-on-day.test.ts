import { describe, expect, test } from 'vitest';
import { dishesOnDay, type DishesOnDay } from '#lib/overview/dishes-on-day';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { readingId } from '#lib/shoot/day-weighings';
import type { SaidScope } from '#lib/episode/said-line';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../support/build';

// 100 kcal and 10 g of protein in 100 g, as printed; so grams and kilocalories are one number.
const food = aFood('f', { energyKcal: '100.00', protein: '10.00' });
const file = aFile(
  [
    aDish('soup', aRecipe('r1', [grams('leek', 'f', 200), grams('cream', 'f', 51)])),
    aDish('bread', aRecipe('r2', [grams('flour', 'f', 300)])),
  ],
  [food],
);

let seq = 0;
function made(entry: Entry): DayEvent {
  seq += 1;
  const at = new Date(Date.parse('2026-03-07T11:00:00.000Z') + seq * 1000).toISOString();
  return { id: `d${seq}`, deviceId: 'phone', deviceSeq: seq, at, ...entry } as DayEvent;
}
const weighed = (lineId: string, g: number, of: 'raw' | 'left' = 'raw'): DayEvent =>
  made({
    kind: 'weighed',
    refs: {},
    payload: {
      recipeId: 'r1',
      lineId,
      of,
      grossMg: g * 1000,
      tareMg: 0,
      method: 'direct',
      scaleId: 'scale',
      afterId: null,
      answersId: null,
      photoId: null,
      readAt: null,
    },
  });
const said = (scope: SaidScope, amount: number): DayEvent =>
  made({
    kind: 'said',
    refs: {},
    payload: {
      scope,
      text: 'said',
      numbers: [{ nutrient: 'energyKcal', amount, hedge: 'exact', value: amount }],
    },
  });
const text = (of: DishesOnDay, dish: number, about: string): string => {
  const found = of.dishes[dish]?.says.find((one) => one.about === about);
  return found?.line.ready ? found.line.text : 'open';
};

describe('what can be said on the filming day', () => {
  test('is of the whole, of half and of the day so far, and of the day at its last dish', () => {
    const dishes = dishesOnDay(file, [], []);
    expect(text(dishes, 0, 'All of it')).toBe(
      'The whole dish has 251 calories and 25 grams of protein.',
    );
    expect(text(dishes, 0, 'Half of it')).toBe(
      'Half of it has 126 calories and 13 grams of protein.',
    );
    expect(text(dishes, 0, 'The day so far')).toBe(
      'So far the day has 251 calories and 25 grams of protein.',
    );
    expect(text(dishes, 1, 'The day')).toBe(
      'The dishes shown have 551 calories and 55 grams of protein.',
    );
    expect(dishes.dishes.map(({ soFar }) => soFar)).toEqual([['soup'], ['soup', 'bread']]);
  });

  test('is made from what was weighed, also where only the device has it yet, and counts it once', () => {
    const leek = weighed('leek', 250);
    const waits = dishesOnDay(file, [], [leek]);
    expect(text(waits, 0, 'All of it')).toContain('301 calories');
    expect(waits.counted).toEqual([readingId(leek.id)]);
    // Arrived: the file holds its reading.
    const [soup, bread] = file.episode.segments;
    if (!soup?.recipe || !bread) throw new Error('no dish');
    const share = [{ lineId: 'leek', share: { num: 1, den: 1 } }];
    const reading = aReading(readingId(leek.id), 'raw', 250, { shares: share });
    const recipe = { ...soup.recipe, weighings: [reading] };
    const episode = { ...file.episode, segments: [{ ...soup, recipe }, bread] };
    const there = dishesOnDay({ ...file, episode }, [leek], []);
    expect(text(there, 0, 'All of it')).toBe(text(waits, 0, 'All of it'));
    // Kept, and its reading taken out since: it counts no more.
    expect(text(dishesOnDay(file, [leek], []), 0, 'All of it')).toContain('251 calories');
  });

  test('what is left of an ingredient comes off from its first reading on', () => {
    const dishes = dishesOnDay(file, [], [weighed('leek', 50, 'left')]);
    expect(text(dishes, 0, 'All of it')).toContain('201 calories');
  });

  test('what was said stands, the others give way, and a line never leans on itself', () => {
    // 250.6 and 300.4 would print as 251 and 300 under 551.
    const near = aFile(
      [
        aDish('soup', aRecipe('r1', [grams('leek', 'f', 250.4)])),
        aDish('bread', aRecipe('r2', [grams('flour', 'f', 300.4)])),
      ],
      [food],
      { resolutionMg: 10 },
    );
    expect(text(dishesOnDay(near, [], []), 1, 'The day')).toContain('551 calories');
    const soup = said({ kind: 'whole', segmentId: 'soup' }, 250);
    const bread = said({ kind: 'whole', segmentId: 'bread' }, 300);
    const both = dishesOnDay(near, [soup, bread], []);
    expect(both.dishes.flatMap(({ says }) => says).some(({ clashes }) => clashes)).toBe(false);
    expect(text(both, 1, 'The day')).toContain('550 calories');
    const off = said({ kind: 'day' }, 551);
    const clashing = dishesOnDay(near, [soup, bread, off], []);
    expect(clashing.dishes.flatMap(({ says }) => says).some(({ clashes }) => clashes)).toBe(true);
  });
});

test('a display that was photographed leaves its dish unsaid until its number is typed, also on the device alone', () => {
  const photo = made({
    kind: 'display',
    refs: {},
    payload: {
      ...{ recipeId: 'r1', lineId: 'leek', of: 'raw', way: 'direct', scaleId: 'scale' },
      ...{ containerMg: 0, beforeId: null, sha256: 'ab'.repeat(32) },
    },
  });
  const why = (of: DishesOnDay): string => {
    const [say] = of.dishes[0]?.says ?? [];
    return say?.line.ready === false ? say.line.why : 'ready';
  };
  expect(why(dishesOnDay(file, [], []))).toBe('ready');
  expect(why(dishesOnDay(file, [], [photo]))).toBe('photographed, not typed yet: leek');
  const typed = weighed('leek', 190);
  const number = { ...typed, payload: { ...typed.payload, photoId: photo.id } } as DayEvent;
  expect(why(dishesOnDay(file, [photo], [number]))).toBe('ready');
  const kept = structuredClone(file);
  const leek = kept.episode.segments[0]?.recipe?.lines[0];
  if (leek) leek.photographed = { at: '2026-03-07T11:00:00Z', sha256: 'ab'.repeat(32) };
  // The file still has it, and the device has typed its number already; a photo of another day stays.
  expect(why(dishesOnDay(kept, [photo], [number]))).toBe('ready');
  expect(why(dishesOnDay(kept, [], []))).toBe('photographed, not typed yet: leek');
});
