import { describe, expect, it } from 'vitest';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { timesWords } from '#lib/shopping/list-words';
import { shoppingList } from '#lib/shopping/shopping-list';
import { shoppingText } from '#lib/shopping/shopping-text';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const TOMATO = aFood('tomato', {}, { name: 'Tomatoes' });
const BONE = aFood('bone', {}, { name: 'Bones' });
const ratio = (num: number, den = 1) => ({ num, den });
const made = (recipeId: string, more: Partial<RecipeLine> = {}): RecipeLine =>
  aLine(`from ${recipeId}`, null, {
    madeFrom: { recipeId, rev: 1 },
    quantity: { low: ratio(1), high: ratio(1) },
    unit: 'batch',
    ...more,
  });
const halfBatch = { quantity: { low: ratio(1, 2), high: ratio(1, 2) } };
const byGrams = (g: number) => ({
  quantity: null,
  unit: null,
  planned: { lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 },
});

/** 400 g of tomatoes and a quarter of a stock of 800 g of bones. */
const SAUCE = (more: Partial<Recipe> = {}) =>
  aRecipe(
    'sauce',
    [
      grams('400 g tomatoes', 'tomato', 400),
      made('stock', { quantity: { low: ratio(1, 4), high: ratio(1, 4) } }),
    ],
    { portions: [{ id: 'p', kind: 'count', name: 'a jar', of: 5 }], ...more },
  );
const STOCK = aRecipe('stock', [grams('800 g bones', 'bone', 800)]);

function needs(file: EpisodeFile) {
  const list = shoppingList(file);
  return Object.fromEntries(
    list.items.map(({ foodId, needMg }) => [foodId, needMg === null ? null : needMg / 1000]),
  );
}
const lasagne = (line: RecipeLine, more: Partial<Segment> = {}) =>
  aDish('lasagne', aRecipe('r-lasagne', [line]), more);
const apart = (line: RecipeLine, more: Partial<Segment> = {}, sauce = SAUCE()) =>
  aFile([lasagne(line, more)], [TOMATO, BONE], { recipes: [sauce, STOCK] });

describe('a dish made from one of another episode', () => {
  it.each([
    ['a batch', {}, 400, 200],
    ['half a batch', halfBatch, 200, 100],
    [
      'two jars of five',
      { quantity: { low: ratio(2), high: ratio(2) }, unit: 'portion', measureName: 'a jar' },
      160,
      80,
    ],
    [
      'two to four batches, at their middle',
      { quantity: { low: ratio(2), high: ratio(4) } },
      1200,
      600,
    ],
  ] as const)('buys its foods for %s, at any depth', (_, of, tomato, bone) => {
    expect(needs(apart(made('sauce', of)))).toEqual({ tomato, bone });
  });

  it('buys by grams of the finished weight, weighed or cited', () => {
    const weighed = SAUCE({ weighings: [aReading('w', 'finished', 500)] });
    expect(needs(apart(made('sauce', byGrams(125)), {}, weighed))).toEqual({
      tomato: 100,
      bone: 50,
    });
    // 800 g of bones boiled down by a half, of which 100 g: a quarter.
    const cooking = { moisturePermille: -500, fatPermille: 0, spreadPermille: 50, source: 'mine' };
    const file = aFile([lasagne(made('stock', byGrams(100)))], [BONE], {
      recipes: [{ ...STOCK, cooking }],
    });
    expect(needs(file)).toEqual({ bone: 200 });
  });

  it('takes batches and spare takes with it', () => {
    const more = { batches: ratio(3), spareTakes: 1, spareScope: 'whole' } as const;
    expect(needs(apart(made('sauce', halfBatch), more))).toEqual({ tomato: 800, bone: 400 });
    const spoilt = { ...more, spareScope: 'spoiltLines' } as const;
    expect(needs(apart(made('sauce', halfBatch), spoilt))).toEqual({ tomato: 600, bone: 300 });
    const line = made('sauce', { ...halfBatch, spoiltByTake: true });
    expect(needs(apart(line, spoilt))).toEqual({ tomato: 800, bone: 400 });
  });

  it('says in which ingredient it is needed, and how often', () => {
    const list = shoppingList(apart(made('sauce', halfBatch), { batches: ratio(3) }));
    const [row] = list.items.find(({ foodId }) => foodId === 'bone')?.working ?? [];
    expect(row).toMatchObject({
      segment: 'lasagne',
      line: '800 g bones, in from stock, in from sauce',
    });
    expect(row && timesWords(row)).toBe('0.375 times');
  });

  it('leaves its foods open, and on the list, where nobody knows how much is taken', () => {
    const file = apart(made('sauce', byGrams(125)));
    expect(needs(file)).toEqual({ tomato: null, bone: null });
    expect(shoppingText(shoppingList(file))).toContain(
      'Tomatoes: amount open\n      amount open: 400 g tomatoes, in from sauce',
    );
  });

  it('lists what has no food yet, and what is made from nothing known', () => {
    const sauce = aRecipe('sauce', [aLine('a handful of greens', null)]);
    expect(shoppingList(apart(made('sauce'), {}, sauce)).unmatched).toEqual([
      { segment: 'lasagne', line: 'a handful of greens, in from sauce' },
    ]);
    expect(shoppingList(apart(made('gone'))).unmatched).toEqual([
      { segment: 'lasagne', line: 'from gone' },
    ]);
  });
});

describe('a dish made from another of the same episode', () => {
  const sauceDish = (more: Partial<Segment> = {}) => aDish('sauce-dish', SAUCE(), more);
  const both = (taken: Partial<RecipeLine>, more: Partial<Segment> = {}, sauceFirst = false) => {
    const dishes = [lasagne(made('sauce', taken), more), sauceDish()];
    return aFile(sauceFirst ? dishes.reverse() : dishes, [TOMATO, BONE], { recipes: [STOCK] });
  };

  it('takes from what is made there anyway, and buys none of it twice', () => {
    expect(needs(both(halfBatch))).toEqual({ tomato: 400, bone: 200 });
    expect(needs(both(byGrams(125)))).toEqual({ tomato: 400, bone: 200 });
  });

  it.each([true, false])('buys what it takes beyond that, whichever is shown first', (first) => {
    expect(needs(both(halfBatch, { batches: ratio(5) }, first))).toEqual({
      tomato: 1000,
      bone: 500,
    });
  });

  it('reaches it through one that came along', () => {
    const file = aFile(
      [
        lasagne(made('sauce', { quantity: { low: ratio(6), high: ratio(6) } })),
        aDish('stock-dish', STOCK),
      ],
      [TOMATO, BONE],
      { recipes: [SAUCE()] },
    );
    // Six quarters of the stock, of which one is made anyway.
    expect(needs(file)).toEqual({ tomato: 2400, bone: 1200 });
  });

  it('ends where dishes are made from each other', () => {
    const ring = (id: string, of: string) =>
      aDish(
        `d-${id}`,
        aRecipe(id, [grams(`tomatoes of ${id}`, 'tomato', 100), made(of, { id: `l-${id}` })]),
      );
    const file = aFile([ring('a', 'b'), ring('b', 'a')], [TOMATO]);
    expect(shoppingList(file).items[0]?.working).toHaveLength(2);
  });
});
