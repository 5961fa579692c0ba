import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import {
  confirmedOnly,
  publishedNumbers,
  type NumberScope,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import type { AllergenFact } from '#lib/foods/food';
import { takeLock } from '#lib/lock/numbers-lock';
import { numbersToPublish } from '#lib/publish/from-lock';
import { aDish, aFile, aFood, aLine, aRecipe, aTalk, grams } from '../support/build';

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const { edit: _, ...demo } = parsed.value;
const { snapshot } = takeLock(demo);

function changed(of: EpisodeFile, change: (copy: EpisodeFile) => void): EpisodeFile {
  const copy = structuredClone(of);
  change(copy);
  return copy;
}

/** Every number that an episode can print, as text, range and status. */
function allNumbers(figures: EpisodeFigures, numbers: PublishedNumbers, of = figures) {
  const scopes: NumberScope[] = [
    { kind: 'day' },
    ...of.dishes.flatMap(({ segmentId, portions, per100g }): NumberScope[] => [
      { kind: 'whole', segmentId },
      { kind: 'eaten', segmentId },
      ...(per100g ? [{ kind: 'per100g', segmentId } as const] : []),
      ...portions.map(({ portionId }) => ({ kind: 'portion', portionId }) as const),
    ]),
  ];
  return scopes.flatMap((scope) =>
    of.nutrients.map((nutrient) => {
      const { text, range, status } = numbers(nutrient, scope);
      return [nutrient, JSON.stringify(scope), text, range, status].join(' ');
    }),
  );
}

const numbersOf = (file: EpisodeFile) => {
  const figures = episodeFigures(file);
  return allNumbers(figures, confirmedOnly(publishedNumbers(file, figures)));
};

const dishAt = (file: EpisodeFile, index: number) => {
  const dish = dishesOf(file.episode.segments)[index];
  if (!dish) throw new Error(`no dish ${String(index)}`);
  return dish;
};

/** Sets an ingredient's grams and drops its readings. */
function reweigh(file: EpisodeFile, dish: number, line: number, mg: number): void {
  const { recipe } = dishAt(file, dish);
  const of = recipe.lines[line % recipe.lines.length];
  if (!of) return;
  of.planned = { lowMg: mg, valueMg: mg, highMg: mg };
  recipe.weighings = recipe.weighings.filter(
    ({ shares }) => !shares.some(({ lineId }) => lineId === of.id),
  );
}

describe('numbers to publish', () => {
  it('without a lock are those of now, a draft', () => {
    const told = numbersToPublish(demo, null);
    expect(told).toMatchObject({ standing: 'draft', ofLock: false, lockedAt: null, changed: null });
    expect(told.file).toBe(demo);
    expect(allNumbers(told.figures, told.numbers)).toEqual(numbersOf(demo));
  });

  it('are the lock’s while it holds, with the words of now', () => {
    const renamed = changed(demo, (copy) => {
      copy.episode.title = 'Another title';
      copy.savedAt = '2027-01-01T00:00:00.000Z';
    });
    const told = numbersToPublish(renamed, snapshot);
    expect(told).toMatchObject({ standing: 'locked', ofLock: true, lockedAt: demo.savedAt });
    expect(told.changed).toBeNull();
    expect(told.file.episode.title).toBe('Another title');
    expect(allNumbers(told.figures, told.numbers)).toEqual(numbersOf(demo));
    expect(told.figures.dishes[0]?.lines.length).toBeGreaterThan(0);
  });

  it('come from the snapshot, not from working out again what it says', () => {
    const data = JSON.parse(snapshot) as {
      figures: { dishes: { whole: { protein: { value: number; low: number; high: number } } }[] };
    };
    const protein = data.figures.dishes[0]?.whole.protein;
    Object.assign(protein ?? {}, { value: 500, low: 499, high: 501 });
    const told = numbersToPublish(demo, JSON.stringify(data));
    expect(told.figures.dishes[0]?.whole.protein?.value).toBe(500);
  });

  it('stay what they were when the lock is broken, with its ingredients, and name the dish that changed', () => {
    const other = changed(demo, (copy) => reweigh(copy, 0, 0, 400_000));
    const told = numbersToPublish(other, snapshot);
    expect(told).toMatchObject({ standing: 'broken', ofLock: true, lockedAt: demo.savedAt });
    expect(allNumbers(told.figures, told.numbers)).toEqual(numbersOf(demo));
    expect(dishAt(told.file, 0).recipe.lines).toEqual(dishAt(demo, 0).recipe.lines);
    expect(told.changed?.dishes).toEqual([
      {
        segmentId: dishAt(demo, 0).id,
        title: 'Barley skillet',
        kind: 'touched',
        words: expect.stringMatching(/^1409 → \d+ kcal, 68 → \d+ g$/) as string,
      },
    ]);
    expect(told.changed?.reason).toContain('Barley skillet 1409');
  });

  // The law behind the page: whatever changes after the lock, what goes out is what was locked.
  it('of a broken lock are those of the lock whatever was changed, and every number can be asked for', () => {
    const edits: Record<string, (copy: EpisodeFile, pick: number) => void> = {
      grams: (copy, pick) => reweigh(copy, pick % 3, pick, 1000 + pick * 1000),
      order: ({ episode }) => void episode.segments.reverse(),
      eaten: (copy, pick) => void (dishAt(copy, pick % 3).eaten = { num: 1, den: 3 + pick }),
      gone: ({ episode }, pick) => void episode.segments.splice(1 + (pick % 3), 1),
      portions: (copy, pick) => void dishAt(copy, pick % 2).recipe.portions.splice(0, 1),
      region: ({ episode }) => void (episode.region = 'EU'),
      step: ({ episode }) => void (episode.energyStep = 10),
      target: ({ episode }) =>
        void episode.targets.push({
          ...{ id: 't', nutrient: 'netCarbohydrate', relation: 'atMost', amount: 100 },
          ...{ segmentId: null, portionId: null },
        }),
      answer: ({ episode }) => void (episode.anythingElse = { kind: 'nothing' }),
      food: ({ foods }, pick) => {
        const food = foods[pick % foods.length];
        if (food) food.version = { ...food.version, values: {} };
      },
      fresh: ({ episode, foods }) => {
        foods.push(aFood('new-food', { energyKcal: '100' }));
        const dish = aDish('new', aRecipe('new-r', [grams('new-l', 'new-food', 100)]));
        episode.segments.splice(1, 0, dish);
      },
    };
    const edit = fc.tuple(fc.constantFrom(...Object.keys(edits)), fc.nat(40));
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (all) => {
        const other = changed(demo, (copy) => {
          for (const [name, pick] of all) {
            if (dishesOf(copy.episode.segments).length >= 3) edits[name]?.(copy, pick);
          }
        });
        const told = numbersToPublish(other, snapshot);
        const locked = episodeFigures(demo);
        expect(allNumbers(told.figures, told.numbers, locked)).toEqual(numbersOf(demo));
        // Nothing that its file and figures name is without a number.
        expect(() => allNumbers(told.figures, told.numbers)).not.toThrow();
        const named = dishesOf(told.file.episode.segments).map(({ id }) => id);
        expect(told.figures.dishes.map(({ segmentId }) => segmentId)).toEqual(named);
        expect([...named].sort()).toEqual(
          dishesOf(demo.episode.segments)
            .map(({ id }) => id)
            .sort(),
        );
      }),
      { numRuns: 25 },
    );
  }, 60_000);
});

const macros = { energyKcal: '100', protein: '10.0', fat: '2.0', carbohydrate: '8.0' };
const base = aFile(
  [
    aTalk('hello'),
    aDish('a', aRecipe('ra', [grams('l', 'oats', 100, { text: '100 g oats' })])),
    aDish('b', aRecipe('rb', [grams('m', 'oats', 50)]), { inFrame: 100 }),
  ],
  [aFood('oats', macros)],
);
const kept = takeLock(base).snapshot;

describe('a dish since the lock', () => {
  it('that is new has no number and is told as not in the lock', () => {
    const fresh = aDish('c', aRecipe('rc', [grams('n', 'oats', 10)]), { title: 'Crumb' });
    const told = numbersToPublish(
      changed(base, ({ episode }) => void episode.segments.push(fresh)),
      kept,
    );
    const segment = told.file.episode.segments.find(({ id }) => id === 'c');
    expect(segment).toMatchObject({ title: 'Crumb', recipe: null });
    expect(told.changed?.dishes).toEqual([
      { segmentId: 'c', title: 'Crumb', kind: 'new', words: 'not in the lock' },
    ]);
    expect(told.numbers('energyKcal', { kind: 'day' }).text).toBe('150');
  });

  it('that is gone stands where it stood, without a time in the cut', () => {
    const told = numbersToPublish(
      changed(base, ({ episode }) => void episode.segments.splice(1, 1)),
      kept,
    );
    expect(told.file.episode.segments.map(({ id }) => id)).toEqual(['hello', 'a', 'b']);
    expect(told.file.episode.segments[1]?.inFrame).toBeNull();
    expect(told.changed?.dishes.map(({ title, kind }) => [title, kind])).toEqual([['a', 'gone']]);
  });

  it('speaks in the words of now where its amount is the same, and in the lock’s where it is not', () => {
    const other = changed(base, (copy) => {
      reweigh(copy, 0, 0, 120_000);
      const [line] = dishAt(copy, 0).recipe.lines;
      if (line) line.text = '120 g oats';
      const [same] = dishAt(copy, 1).recipe.lines;
      if (same) same.text = 'rolled oats';
      dishAt(copy, 0).title = 'Oats in another bowl';
      dishAt(copy, 0).recipe.method = 'Stir.';
    });
    const { file } = numbersToPublish(other, kept);
    expect(dishAt(file, 0).recipe.lines[0]?.text).toBe('100 g oats');
    expect(dishAt(file, 1).recipe.lines[0]?.text).toBe('rolled oats');
    expect(dishAt(file, 0)).toMatchObject({ title: 'Oats in another bowl' });
    expect(dishAt(file, 0).recipe.method).toBe('Stir.');
  });
});

describe('a food that nobody has confirmed', () => {
  const waits = aFile(
    [aDish('a', aRecipe('ra', [grams('l', 'oats', 100, { match: 'provisional' })]))],
    [aFood('oats', macros)],
  );
  const lock = takeLock(waits).snapshot;
  const confirmed = changed(waits, (copy) => {
    const [line] = dishAt(copy, 0).recipe.lines;
    if (line) line.match = 'confirmed';
  });
  const energy = (told: ReturnType<typeof numbersToPublish>) =>
    told.numbers('energyKcal', { kind: 'whole', segmentId: 'a' }).text;

  it('is open in the lock, and known once it is confirmed, which breaks no lock', () => {
    expect(energy(numbersToPublish(waits, lock))).toBe('open');
    const told = numbersToPublish(confirmed, lock);
    expect(told.standing).toBe('locked');
    expect(energy(told)).toBe('100');
  });
});

describe('a lock that cannot be read any more', () => {
  it.each([
    ['no JSON', '{'],
    ['another shape', '{"figures":{}}'],
  ])('(%s) is broken with its reason, and the numbers are those of now', (_name, text) => {
    const told = numbersToPublish(base, text);
    expect(told).toMatchObject({ standing: 'broken', ofLock: false, lockedAt: null });
    expect(told.changed?.reason).toContain('cannot be read');
    expect(told.file).toBe(base);
    expect(allNumbers(told.figures, told.numbers)).toEqual(numbersOf(base));
  });

  it('the same where only its inputs cannot be read', () => {
    const data = JSON.parse(kept) as { file: unknown; inputsSha256: string };
    const told = numbersToPublish(
      base,
      JSON.stringify({ ...data, file: { no: 'file' }, inputsSha256: 'other' }),
    );
    expect(told).toMatchObject({ standing: 'broken', ofLock: false });
    expect(told.changed?.reason).toContain('cannot be read');
  });
});

describe('allergens of both', () => {
  const fact = (
    allergen: AllergenFact['allergen'],
    standing: AllergenFact['standing'],
  ): AllergenFact => ({ id: `${allergen}-${standing}`, allergen, standing, reason: '' });
  const of = (...facts: AllergenFact[]) =>
    aFile(
      [aDish('a', aRecipe('ra', [grams('l', 'cheese', 100), aLine('x', null)]))],
      [aFood('cheese', macros, { allergens: facts })],
    );
  const contains = (live: EpisodeFile, then: EpisodeFile) =>
    numbersToPublish(live, takeLock(then).snapshot).allergens.contains.map((e) => e.allergen);

  it('are those of the lock and those of now', () => {
    expect(contains(of(fact('egg', 'declared')), of(fact('milk', 'declared')))).toEqual([
      'milk',
      'egg',
    ]);
    const swapped = changed(of(), ({ foods, episode }) => {
      foods.push(aFood('oil', macros));
      const [line] = dishesOf(episode.segments)[0]?.recipe.lines ?? [];
      if (line) line.foodId = 'oil';
    });
    expect(contains(swapped, of(fact('milk', 'confirmed')))).toEqual(['milk']);
  });

  it('lose what the person has denied since', () => {
    expect(contains(of(fact('milk', 'denied')), of(fact('milk', 'confirmed')))).toEqual([]);
  });

  it('ask only about what is there to be answered', () => {
    const { allergens } = numbersToPublish(
      of(fact('milk', 'confirmed')),
      takeLock(of(fact('milk', 'proposed'))).snapshot,
    );
    expect(allergens.proposed).toEqual([]);
  });
});
