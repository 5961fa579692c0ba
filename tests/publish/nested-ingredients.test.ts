import { describe, expect, it } from 'vitest';
import { amountContext } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { allergenList } from '#lib/publish/allergen-list';
import { allergenQuestions } from '#lib/publish/allergen-questions';
import { description } from '#lib/publish/description';
import { ingredientText } from '#lib/publish/ingredient-text';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const macros = { energyKcal: '100', protein: '10.0', fat: '2.0', carbohydrate: '8.0' };
const TOMATO = aFood('tomato', macros, { name: 'Tomatoes' });
const BUTTER = aFood(
  'butter',
  macros,
  {
    kind: 'label',
    name: 'Quay butter',
    allergens: [
      { id: 'a', allergen: 'milk', standing: 'declared', reason: 'label' },
      { id: 'b', allergen: 'soy', standing: 'proposed', reason: 'by rule' },
    ],
  },
  { source: 'package label' },
);
const ratio = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });
const made = (text: string, recipeId: string, more: Partial<RecipeLine> = {}): RecipeLine =>
  aLine(text, null, { madeFrom: { recipeId, rev: 1 }, ...more });

const ROUX = aRecipe('roux', [grams('40 g butter', 'butter', 40)], { title: 'Roux' });
const SAUCE = aRecipe(
  'sauce',
  [
    grams('400 g tomatoes', 'tomato', 400),
    made('the roux', 'roux', { quantity: ratio(1), unit: 'batch' }),
  ],
  {
    title: 'Tomato sauce',
    portions: [{ id: 'p', kind: 'mass', name: 'a ladle', massMg: 80_000 }],
    weighings: [aReading('w', 'finished', 400)],
  },
);
const mg = (g: number) => ({ lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 });

function file(line: RecipeLine, together = false): EpisodeFile {
  const lasagne = aDish('lasagne', aRecipe('r-lasagne', [line]), { title: 'Lasagne' });
  const sauce = aDish('s-sauce', SAUCE, { title: 'Tomato sauce' });
  const dishes = together ? [lasagne, sauce] : [lasagne];
  return aFile(dishes, [TOMATO, BUTTER], { recipes: together ? [ROUX] : [SAUCE, ROUX] });
}
const text = (line: RecipeLine, dishes?: ReadonlyMap<string, string>) =>
  ingredientText(line, [], amountContext(file(line)), dishes);

describe('an ingredient that is a dish', () => {
  const seen = new Map([['sauce', 'Tomato sauce']]);

  it.each([
    [
      made('tomato sauce', 'sauce', { planned: mg(120) }),
      'tomato sauce (120 g, as made, see Tomato sauce)',
    ],
    [
      made('120 g tomato sauce', 'sauce', { planned: mg(120) }),
      '120 g tomato sauce (as made, see Tomato sauce)',
    ],
    [
      made('tomato sauce', 'sauce', { quantity: ratio(1, 2), unit: 'batch' }),
      'tomato sauce (1/2 batch, see Tomato sauce)',
    ],
    [
      made('tomato sauce', 'sauce', { quantity: ratio(2), unit: 'batch' }),
      'tomato sauce (2 batches, see Tomato sauce)',
    ],
    [
      made('tomato sauce', 'sauce', {
        quantity: ratio(2),
        unit: 'portion',
        measureName: 'a ladle',
      }),
      'tomato sauce (160 g, as made, see Tomato sauce)',
    ],
    [made('tomato sauce', 'sauce'), 'tomato sauce (not weighed, see Tomato sauce)'],
  ])('names it where the text has it: %#', (line, words) => {
    expect(text(line, seen)).toBe(words);
  });

  it('says what it is made of where the text does not have it, at any depth', () => {
    expect(text(made('tomato sauce', 'sauce', { planned: mg(120) }))).toBe(
      'tomato sauce (120 g, as made, made of: 400 g tomatoes, as sold; 40 g butter, as sold)',
    );
  });

  it.each([
    [
      false,
      '- tomato sauce (120 g, as made, made of: 400 g tomatoes, as sold; 40 g butter, as sold)',
    ],
    [true, '- tomato sauce (120 g, as made, see Tomato sauce)'],
  ])('is written so in the description (its dish there too: %s)', (together, words) => {
    const of = file(made('tomato sauce', 'sauce', { planned: mg(120) }), together);
    const said = description(of).text;
    expect(said).toContain(words);
    // Its foods count as those of any ingredient: allergens, sources, questions.
    expect(said).toContain('Allergens: contains milk.');
    expect(said).toContain('Sources of the figures: test table 1; package labels (Quay butter).');
    expect(allergenList(of).contains).toMatchObject([{ allergen: 'milk', foods: ['Quay butter'] }]);
    expect(allergenQuestions(of)).toMatchObject([{ allergen: 'soy', foodId: 'butter' }]);
  });

  it('leaves the description without a number where it is open, and says why', () => {
    const open = file(made('tomato sauce', 'sauce', { planned: mg(120) }));
    const unweighed = { ...open, recipes: [{ ...SAUCE, weighings: [] }, ROUX] };
    const { text: said, open: why } = description(unweighed);
    expect(said).toContain('The whole dish: calories open · protein open');
    expect(why[0]).toMatchObject({
      title: 'Lasagne',
      reason: 'no finished weight for tomato sauce',
    });
  });
});
