import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { lockDifference } from '#lib/lock/lock-difference';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { lockHolds, takeLock } from '#lib/lock/numbers-lock';

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
// Texts of the edit are no input of numbers, and no lock keeps them.
const { edit: _, publish: __, ...file } = parsed.value;
const lock = takeLock(file);

const differenceTo = (other: EpisodeFile) =>
  lockDifference(lock.snapshot, other, episodeFigures(other));

function changed(change: (copy: EpisodeFile) => void): EpisodeFile {
  const copy = structuredClone(file);
  change(copy);
  return copy;
}

const firstDish = (of: EpisodeFile) => {
  const [dish] = dishesOf(of.episode.segments);
  if (!dish) throw new Error('the demo has a dish');
  return dish;
};
const firstLine = (of: EpisodeFile) => {
  const [line] = firstDish(of).recipe.lines;
  if (!line) throw new Error('the demo has ingredients');
  return line;
};
const firstFood = (of: EpisodeFile) => {
  const food = of.foods.find(({ id }) => id === firstLine(of).foodId);
  if (!food) throw new Error('its food is there');
  return food;
};

test('nothing where the lock holds', () => {
  expect(differenceTo(file)).toEqual({ holds: true, otherEngine: false, numbers: [], inputs: [] });
  const renamed = changed((copy) => void (copy.episode.title = 'Another title'));
  expect(differenceTo(renamed).holds).toBe(true);
});

test('a snapshot is read as what it froze: the same figures and the same file', () => {
  const locked = readSnapshot(lock.snapshot);
  expect(locked?.file).toEqual(file);
  expect(lockHolds({ ...lock, inputsSha256: locked?.inputsSha256 ?? '' }, file)).toBe(true);
  const [dish] = episodeFigures(file).dishes;
  expect(locked?.figures.dishes[0]?.whole.protein?.value).toBe(dish?.whole.protein?.value);
  expect(readSnapshot('{')).toBeNull();
  expect(readSnapshot('{"figures":{}}')).toBeNull();
});

test('grams of an ingredient: the number that changed of dish, portion and day, old and new with ranges, and the grams', () => {
  const mg = { lowMg: 400_000, valueMg: 400_000, highMg: 400_000 };
  const other = changed((copy) => {
    const { recipe } = firstDish(copy);
    const line = firstLine(copy);
    line.planned = mg;
    recipe.weighings = recipe.weighings.filter(
      ({ shares }) => !shares.some(({ lineId }) => lineId === line.id),
    );
  });
  const told = differenceTo(other);
  expect(told.holds).toBe(false);
  const energy = told.numbers.filter(({ nutrient }) => nutrient === 'energyKcal');
  expect(energy.map(({ dish, part }) => [dish, part])).toEqual([
    ['Barley skillet', 'the whole dish'],
    ['Barley skillet', 'one of two'],
    [null, 'the dishes shown'],
  ]);
  for (const { from, to, unit } of energy) {
    expect(unit).toBe('kcal');
    expect(Number(to?.text)).toBeGreaterThan(Number(from?.text));
    expect(from?.range).toMatch(/^likely \d+–\d+/);
    expect(to?.range).toMatch(/^likely \d+–\d+/);
  }
  expect(told.inputs).toContainEqual({
    where: 'Barley skillet',
    segmentId: firstDish(file).id,
    what: '“150 g pearl barley”, grams',
    from: expect.any(String) as string,
    to: '400 g',
  });
});

test('what is new or gone is told from nothing or to nothing', () => {
  const without = changed((copy) => {
    const { recipe } = firstDish(copy);
    recipe.lines = recipe.lines.filter(({ text }) => text !== 'Salt to taste');
    recipe.portions = [];
  });
  const { inputs, numbers } = differenceTo(without);
  expect(inputs).toContainEqual({
    where: 'Barley skillet',
    segmentId: firstDish(file).id,
    what: '“Salt to taste”',
    from: 'Salt to taste',
    to: '',
  });
  const half = numbers.find(({ part }) => part === 'one of two');
  expect(half).toMatchObject({ to: null, dish: 'Barley skillet' });
});

test('another calculation is told as that', () => {
  const older = JSON.stringify({
    ...(JSON.parse(lock.snapshot) as object),
    engineVersion: 'older',
  });
  expect(lockDifference(older, file, episodeFigures(file))).toMatchObject({
    holds: false,
    otherEngine: true,
    inputs: [],
  });
});

test('a range that moved under the same number is told as that', () => {
  const other = changed((copy) => {
    for (const scale of copy.kitchen.scales) scale.resolutionMg *= 5;
  });
  const { numbers, inputs } = differenceTo(other);
  expect(inputs.map(({ what }) => what)).toContain(
    `the scale “${file.kitchen.scales[0]?.name ?? ''}”, steps`,
  );
  expect(numbers.some(({ rangeOnly }) => rangeOnly)).toBe(true);
});

/** One change of everything that a lock hashes. */
const CHANGES: readonly (readonly [what: string, change: (copy: EpisodeFile) => void])[] = [
  ['region', ({ episode }) => void (episode.region = 'EU')],
  ['calories are written to', ({ episode }) => void (episode.energyStep = 10)],
  ['anything else', ({ episode }) => void (episode.anythingElse = { kind: 'nothing' })],
  ['counts to the day', (copy) => void (firstDish(copy).eaten = { num: 1, den: 3 })],
  ['counts to the day', (copy) => void (firstDish(copy).ate = { kind: 'byEye', permille: 100 })],
  [
    'change of weight',
    (copy) =>
      void (firstDish(copy).recipe.cooking = {
        moisturePermille: -100,
        fatPermille: 0,
        spreadPermille: 50,
        source: 'a table',
      }),
  ],
  ['food', (copy) => void (firstLine(copy).foodId = null)],
  ['or food', (copy) => void (firstLine(copy).orFoodId = copy.foods[0]?.id ?? null)],
  ['amount', (copy) => void (firstLine(copy).unit = 'oz')],
  ['state', (copy) => void (firstLine(copy).state = 'cooked')],
  ['peel', (copy) => void (firstLine(copy).asBought = true)],
  [
    'left behind',
    (copy) => void (firstLine(copy).leftBehind = { kind: 'weighed', where: 'pan', made: 'alike' }),
  ],
  ['cooked', (copy) => void (firstLine(copy).cookMethod = 'boiled')],
  ['loss in cooking', (copy) => void (firstLine(copy).retention = '0001')],
  ['bounded', (copy) => void (firstLine(copy).bounded = [{ nutrient: 'zinc', maxPer100: 3 }])],
  [
    'photo',
    (copy) =>
      void (firstLine(copy).photographed = {
        at: '2026-12-12T10:00:00.000Z',
        sha256: 'a'.repeat(64),
      }),
  ],
  ['an ingredient', (copy) => void firstDish(copy).recipe.lines.pop()],
  ['portion', (copy) => void firstDish(copy).recipe.portions.pop()],
  ['reading', (copy) => void firstDish(copy).recipe.weighings.pop()],
  [
    'reading',
    (copy) => {
      const [reading] = firstDish(copy).recipe.weighings;
      if (reading) reading.grossMg += 1000;
    },
  ],
  [
    'reading',
    (copy) => {
      const [reading] = firstDish(copy).recipe.weighings;
      if (reading) reading.method = 'difference';
    },
  ],
  [
    'calories',
    (copy) =>
      void (firstFood(copy).version.values.energyKcal = { kind: 'eq', mantissa: 999, scale: 0 }),
  ],
  ['source', (copy) => void (firstFood(copy).version.source = 'my own table')],
  ['rounded by', (copy) => void (firstFood(copy).version.rule = 'us')],
  ['where fibre stands', (copy) => void (firstFood(copy).version.carbBasis = 'available')],
  ['holds for it', (copy) => void (firstFood(copy).version.state = 'cooked')],
  ['stated for', (copy) => void (firstFood(copy).version.basis = 'per100ml')],
  [
    'peel and trim',
    (copy) => void (firstFood(copy).version.refuse = { percent: 7, text: 'ends', inValues: false }),
  ],
  [
    'a measure',
    (copy) =>
      void firstFood(copy).measures.push({
        ...{
          id: 'm',
          name: 'ladle',
          qtyNum: 1,
          qtyDen: 1,
          massMg: 90_000,
          digits: 0,
          source: 'a table',
        },
      }),
  ],
  [
    'yield',
    (copy) =>
      void firstFood(copy).yields.push({
        ...{
          id: 'y',
          method: 'boiled',
          rawMg: 100_000,
          cookedMg: 300_000,
          source: 'a table',
          own: null,
        },
      }),
  ],
  [
    'accuracy',
    ({ kitchen }) => {
      const [scale] = kitchen.scales;
      if (scale) scale.accuracyPpm += 500;
    },
  ],
  [
    'may miss',
    ({ kitchen }) => {
      const [spread] = kitchen.spreads;
      if (spread) spread.permille += 50;
      else kitchen.spreads.push({ id: 's', kind: 'spoon', permille: 300 });
    },
  ],
];

describe('whatever breaks a lock is told in words', () => {
  it.each(CHANGES)('%s', (what, change) => {
    const other = changed(change);
    expect(lockHolds(lock, other)).toBe(false);
    const { inputs } = differenceTo(other);
    expect(inputs.length).toBeGreaterThan(0);
    const words = inputs
      .map((each) => `${each.where} ${each.what} ${each.from} ${each.to}`)
      .join('\n');
    expect(words).not.toContain('has no words here');
    if (!what.startsWith('a')) expect(words).toContain(what);
  });
});
