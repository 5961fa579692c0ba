import { describe, expect, it } from 'vitest';
import { parseEpisodeData } from '#lib/episode/file';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const madeFrom = (recipeId: string, more: Partial<RecipeLine> = {}): RecipeLine =>
  aLine(`of ${recipeId}`, null, { madeFrom: { recipeId, rev: 1 }, unit: 'batch', ...more });

/** A lasagne made from a sauce that came along, which is made from a stock. */
const good: EpisodeFile = aFile(
  [aDish('lasagne', aRecipe('r-lasagne', [grams('sheets', 'oats', 200), madeFrom('r-sauce')]))],
  [aFood('oats', { energyKcal: '379' })],
  {
    recipes: [
      aRecipe('r-sauce', [madeFrom('r-stock'), grams('tomatoes', 'oats', 400)], {
        title: 'Sauce',
        portions: [{ id: 'p-ladle', kind: 'mass', name: 'a ladle', massMg: 80_000 }],
      }),
      aRecipe('r-stock', [grams('bones', 'oats', 500)], { title: 'Stock' }),
    ],
  },
);

const nth = <T>(items: readonly T[] | undefined, n: number): T => {
  const item = items?.[n];
  if (item === undefined) throw new Error(`no ${n}`);
  return item;
};
const sauce = ({ recipes }: EpisodeFile): Recipe => nth(recipes, 0);
const stock = ({ recipes }: EpisodeFile): Recipe => nth(recipes, 1);
const lasagne = ({ episode }: EpisodeFile): Recipe => {
  const { recipe } = nth(episode.segments, 0);
  if (!recipe) throw new Error('a dish has a recipe');
  return recipe;
};

function told(change: (file: EpisodeFile) => void): string[] {
  const copy = structuredClone(good);
  change(copy);
  const result = parseEpisodeData(copy);
  return result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`);
}

describe('recipes made from recipes, in a file', () => {
  it('are read where every id names something', () => {
    expect(told(() => undefined)).toEqual([]);
  });

  it.each<[string, (file: EpisodeFile) => void, string]>([
    [
      'a recipe that is not here',
      (file) => Object.assign(nth(lasagne(file).lines, 1), { madeFrom: { recipeId: 'x', rev: 1 } }),
      'episode.segments[0].recipe.lines[1].madeFrom.recipeId: no recipe has the id "x"',
    ],
    [
      'a food beside it',
      (file) => Object.assign(nth(sauce(file).lines, 0), { foodId: 'oats' }),
      'recipes[0].lines[0].foodId: an ingredient made from a recipe has no food beside it',
    ],
    [
      'a food of a recipe that came along',
      (file) => Object.assign(nth(stock(file).lines, 0), { foodId: 'gold' }),
      'recipes[1].lines[0].foodId: no food has the id "gold"',
    ],
    [
      'a portion that it does not have',
      (file) =>
        Object.assign(nth(lasagne(file).lines, 1), { unit: 'portion', measureName: 'a bucket' }),
      'episode.segments[0].recipe.lines[1].measureName: no portion of "Sauce" is called "a bucket"',
    ],
    [
      'a code of no row of retention factors',
      (file) => Object.assign(nth(stock(file).lines, 0), { retention: '9999' }),
      'recipes[1].lines[0].retention: no row of retention factors has the code "9999"',
    ],
    [
      'a running total after a reading of another dish',
      (file) => {
        lasagne(file).weighings.push(aReading('w-1', 'raw', 200));
        stock(file).weighings.push(aReading('w-2', 'raw', 500, { afterId: 'w-1' }));
      },
      'recipes[1].weighings[0].afterId: no other reading of this dish has the id "w-1"',
    ],
    [
      'a running total after itself',
      (file) => stock(file).weighings.push(aReading('w-2', 'raw', 500, { afterId: 'w-2' })),
      'recipes[1].weighings[0].afterId: no other reading of this dish has the id "w-2"',
    ],
    [
      'an id of an ingredient that another recipe has',
      (file) => Object.assign(nth(stock(file).lines, 0), { id: 'sheets' }),
      'episode.segments[].recipe.lines: the id "sheets" is given twice',
    ],
    [
      'the id of a recipe given twice',
      (file) => file.recipes.push(aRecipe('r-lasagne', [])),
      'episode.segments[].recipe: the id "r-lasagne" is given twice',
    ],
  ])('tell %s, with its place', (_, change, fault) => {
    expect(told(change)).toEqual([fault]);
  });

  it('are refused where they close a ring, which is named', () => {
    const ring = (file: EpisodeFile) => stock(file).lines.push(madeFrom('r-sauce', { id: 'back' }));
    expect(told(ring)).toEqual(['recipes: a recipe is made from itself: Sauce → Stock → Sauce']);
    const self = (file: EpisodeFile) => sauce(file).lines.push(madeFrom('r-sauce', { id: 'self' }));
    expect(told(self)).toEqual(['recipes: a recipe is made from itself: Sauce → Sauce']);
  });

  it('may take one recipe twice: that is no ring', () => {
    const twice = (file: EpisodeFile) =>
      lasagne(file).lines.push(madeFrom('r-stock', { id: 'again' }));
    expect(told(twice)).toEqual([]);
  });
});
