import { describe, expect, test } from 'vitest';
import { FREE_FROM_CAUTION } from '#lib/claims/free-from/free-from-caution';
import type { Judged } from '#lib/claims/judged';
import { waysToMend } from '#lib/claims/ways-to-mend';
import { proposeAllergens } from '#lib/foods/propose-allergens';
import type { Allergen, AllergenFact, Food } from '#lib/foods/food';
import type { EpisodeFile } from '#lib/episode/schema';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';
import { rowsOf, subRip } from './edit-build';

const fact = (allergen: Allergen, standing: AllergenFact['standing']): AllergenFact => ({
  id: `${allergen} ${standing}`,
  allergen,
  standing,
  reason: '',
});

/** A food of a table: what its name proposes stands as proposed. */
const tableFood = (name: string, allergens?: AllergenFact[]): Food =>
  aFood(
    name,
    {},
    {
      name,
      allergens:
        allergens ?? proposeAllergens(name, null).map(({ allergen }) => fact(allergen, 'proposed')),
    },
  );

/** A dish of ingredients by their words, each with the food it is; of null none is chosen. */
function dishOf(
  id: string,
  title: string,
  lines: readonly (readonly [text: string, food: Food | null])[],
) {
  const rows = lines.map(([text, food], at) => aLine(`${id}-${at}`, food?.id ?? null, { text }));
  return aDish(id, aRecipe(`${id}-r`, rows), { title });
}

function flapjacks(...lines: (readonly [text: string, food: Food | null])[]): EpisodeFile {
  const foods = lines.flatMap(([, food]) => food ?? []);
  return aFile([dishOf('s', 'Cherry flapjacks', lines)], foods);
}

const OATS = ['200 g oats', tableFood('Oats, rolled', [fact('treeNuts', 'denied')])] as const;
const WALNUTS = tableFood('Nuts, walnuts, english');

function only(file: EpisodeFile, text: string): Judged {
  const rows = rowsOf(file, text).filter(({ statement }) => statement.kind === 'freeFrom');
  expect(rows).toHaveLength(1);
  return rows[0] as Judged;
}

// Allergens: FALCPA 2004 and the FASTER Act 2021, Regulation (EU) 1169/2011 Annex II; dishes and words of our own.
describe('an ingredient has it: off', () => {
  test('with the ingredient, its line, and what to say instead', () => {
    const walnuts = { ...WALNUTS, allergens: [fact('treeNuts', 'confirmed')] };
    const row = only(flapjacks(OATS, ['60 g walnuts, chopped', walnuts]), "they're nut free");
    expect(row).toMatchObject({
      verdict: 'off',
      sayInstead: 'contains walnuts',
      remark: null,
      against: { kind: 'line', segmentId: 's', lineId: 's-1' },
    });
    expect(row.why).toBe('“nut free”: your ingredient “60 g walnuts, chopped” has tree nuts.');
  });

  test('by its words and its food’s name, which nobody has confirmed: to be confirmed', () => {
    const row = only(flapjacks(OATS, ['60 g walnuts', WALNUTS]), 'there are no nuts in these');
    expect(row).toMatchObject({ verdict: 'off', remark: 'toConfirm' });
    expect(row.why).toContain('by its name; nobody has confirmed it');
  });

  test.each([
    [
      'these are gluten free',
      '2 tbsp soy sauce',
      'Soy sauce',
      'wheat',
      'contains wheat (soy sauce)',
    ],
    ["there's no egg in it", '1 egg to glaze', 'Egg, whole, raw', 'egg', 'contains egg'],
    ['they are dairy free', '80 g butter', 'Butter, salted', 'milk', 'contains milk (butter)'],
    ['made without soy', '90 g edamame', 'Edamame, frozen', 'soy', 'contains soy (edamame)'],
    ['sesame free too', '1 tbsp tahini', 'Tahini', 'sesame', 'contains sesame (tahini)'],
  ] as const)('%s, with %s', (said, text, name, allergen, sayInstead) => {
    const food = tableFood(name, [fact(allergen, 'declared')]);
    expect(only(flapjacks([text, food]), said)).toMatchObject({ verdict: 'off', sayInstead });
  });

  test('through what the dish is made from, with the line of the dish itself', () => {
    const base = aRecipe('base', [aLine('deep', WALNUTS.id, { text: '30 g walnuts' })]);
    const made = aLine('made', null, {
      text: '1 batch praline',
      madeFrom: { recipeId: 'base', unit: 'batch', portionName: null, num: 1, den: 1 } as never,
    });
    const file = aFile([aDish('s', aRecipe('r', [made]))], [WALNUTS], { recipes: [base] });
    expect(only(file, 'these are nut free')).toMatchObject({
      verdict: 'off',
      against: { lineId: 'made' },
    });
  });

  test.each([
    ['these are vegan', '2 tbsp honey', 'Honey', 'contains honey'],
    ['it is vegetarian', '150 g bacon', 'Pork, bacon, cured', 'contains bacon'],
    ['a vegetarian soup', '5 g gelatine', 'Gelatins, dry powder', 'contains gelatine'],
    ['it is meat free', '100 g chorizo', 'Chorizo', 'contains chorizo'],
  ])('a diet leaves it out: %s, with %s', (said, text, name, sayInstead) => {
    const row = only(flapjacks([text, tableFood(name, [])]), said);
    expect(row.verdict).toBe('off');
    expect(row.sayInstead).toBe(sayInstead);
  });

  test('a card says so, and no sentence that would not hold together', () => {
    const text = 'now they are nut free, so take some';
    const file = flapjacks(['60 g walnuts', WALNUTS]);
    const captions = subRip([[10, 13, text]]);
    const ways = waysToMend(only(file, captions), text, 150);
    expect(ways.card?.words).toBe('Correction: contains walnuts, not “nut free”');
    expect(ways.cut?.startMs).toBe(10_000);
    expect(ways.sentence).toBeNull();
  });
});

describe('no ingredient is known to have it: nobody can say', () => {
  test('and it never agrees, even where the person has denied it of every ingredient', () => {
    const row = only(flapjacks(OATS), 'these are nut free');
    expect(row.verdict).toBe('unknown');
    expect(row.why).toContain('traces and cross-contact are not known here');
  });

  test('ingredients of which nobody has said anything are named', () => {
    const row = only(
      flapjacks(OATS, ['100 g cherries', tableFood('Cherries, sweet')], ['1 tsp mix', null]),
      'these are nut free',
    );
    expect(row.verdict).toBe('unknown');
    expect(row.why).toContain('in “100 g cherries” and “1 tsp mix”');
  });

  test.each([
    ['a trace on its label', '80 g oats', [fact('treeNuts', 'mayContain')], 'nut free'],
    [
      'a rule that proposes it by its food alone',
      '1 cup base',
      [fact('treeNuts', 'proposed')],
      'nut free',
    ],
    [
      'oats, which the law lets be gluten free',
      '80 g oats',
      [fact('glutenCereals', 'proposed')],
      'gluten free',
    ],
    [
      'words that say it is without',
      '80 g gluten free bread',
      [fact('wheat', 'proposed')],
      'gluten free',
    ],
  ])('%s', (_, text, allergens, said) => {
    const row = only(flapjacks([text, tableFood('A base', allergens)]), `these are ${said}`);
    expect(row.verdict).toBe('unknown');
    expect(row.why).toContain(`“${text}” may have`);
  });

  test('a food that may be another: only one of them has it', () => {
    const oil = tableFood('Oil', [fact('milk', 'denied')]);
    const butter = tableFood('Butter, salted', [fact('milk', 'declared')]);
    const line = aLine('l', oil.id, { text: '20 g oil or butter', orFoodId: butter.id });
    const file = aFile([aDish('s', aRecipe('r', [line]))], [oil, butter]);
    expect(only(file, 'these are dairy free').verdict).toBe('unknown');
  });

  test.each([
    ['vegan', '2 vegan sausages', 'Sausage, meatless'],
    ['vegan', '1 tbsp peanut butter', 'Peanut butter, smooth'],
    ['vegan', '400 ml coconut milk', 'Nuts, coconut milk, canned'],
    ['vegetarian', '2 beef tomatoes', 'Tomatoes, red, ripe'],
    ['vegan', '1 honeydew melon', 'Melons, honeydew'],
  ])('%s with %s', (said, text, name) => {
    expect(only(flapjacks([text, tableFood(name)]), `these are ${said}`).verdict).toBe('unknown');
  });
});

describe('several dishes', () => {
  const plain = dishOf('b', 'Pea soup', [['300 g peas', tableFood('Peas, green')]]);
  const nutty = dishOf('a', 'Walnut loaf', [['60 g walnuts', WALNUTS]]);
  const both = aFile([nutty, plain], [WALNUTS, tableFood('Peas, green')]);

  test('where nobody knows which, it is asked, and the dish that has it is named', () => {
    const rows = rowsOf(both, 'A nut free week', 'title').filter(
      ({ statement }) => statement.kind === 'freeFrom',
    );
    expect(rows.map(({ verdict }) => verdict)).toEqual(['unknown']);
    expect(rows[0]?.why).toContain('which dish? Walnut loaf:');
  });
});

// 21 CFR 101.91; FALCPA 2004; Regulation (EU) No 1169/2011, Annex II; Regulation (EU) No 828/2014.
test('the caution names the law and who decides', () => {
  expect(FREE_FROM_CAUTION).toContain('21 CFR 101.91');
  expect(FREE_FROM_CAUTION).toContain('1169/2011');
  expect(FREE_FROM_CAUTION).toContain('licensed advice decide');
});
