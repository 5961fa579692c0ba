import { describe, expect, it } from 'vitest';
import type { Allergen } from '#lib/foods/food';
import { proposeAllergens } from '#lib/foods/propose-allergens';
import { loadSr28 } from '#seed/load-sr28';

const byNumber = new Map(loadSr28().map((food) => [food.version.sourceNo, food]));

function proposedFor(sourceNo: string): Allergen[] {
  const food = byNumber.get(sourceNo);
  if (!food) throw new Error(`no food ${sourceNo}`);
  return food.allergens.map(({ allergen }) => allergen).sort();
}

describe('proposed allergens', () => {
  // Source: US list of nine (FALCPA 2004, FASTER Act 2021), EU list of fourteen (Regulation 1169/2011 Annex II).
  it.each<[string, string, Allergen[]]>([
    ['Worcestershire sauce', '06971', ['fish', 'glutenCereals']],
    ['tahini', '12166', ['sesame']],
    ['soy sauce', '16123', ['glutenCereals', 'soy', 'wheat']],
    ['tamari', '16124', ['soy']],
    ['oyster sauce', '06176', ['molluscs']],
    ['milk', '01077', ['milk']],
    ['egg', '01123', ['egg']],
    ['white flour', '20081', ['glutenCereals', 'wheat']],
    ['pearl barley', '20005', ['glutenCereals']],
    ['oats', '20038', ['glutenCereals']],
    ['almonds', '12061', ['treeNuts']],
    ['peanut butter', '16098', ['peanuts']],
    ['shrimp', '15149', ['crustaceans']],
    ['salmon', '15076', ['fish']],
    ['mustard', '02046', ['mustard']],
    ['celery', '11143', ['celery']],
    ['lupins', '16076', ['lupin']],
    ['dried apricots', '09032', ['sulphites']],
  ])('%s (%s): %j', (_name, sourceNo, expected) => {
    expect(proposedFor(sourceNo)).toEqual(expected);
  });

  it.each<[string, string]>([
    ['oyster mushrooms have no molluscs', '11987'],
    ['coconut milk is neither milk nor a tree nut of the lists', '12117'],
    ['butternut squash has no butter', '11485'],
    ['eggplant has no egg', '11209'],
    ['buckwheat is not wheat', '20008'],
    ['cream of tartar has no cream', '18373'],
    ['chicken breast has none', '05062'],
    ['spaghetti squash is no pasta', '11492'],
  ])('%s', (_words, sourceNo) => {
    expect(proposedFor(sourceNo)).toEqual([]);
  });

  it('reads a label name without a group, and says the rule', () => {
    expect(proposeAllergens('Celery salt', null)).toEqual([
      { allergen: 'celery', reason: 'its name says "celery"' },
    ]);
    expect(proposeAllergens('Soy sauce', null)).toEqual([
      { allergen: 'wheat', reason: 'its name says "soy sauce": brewed with wheat' },
      { allergen: 'soy', reason: 'its name says "soy"' },
      {
        allergen: 'glutenCereals',
        reason:
          'wheat is a cereal containing gluten, and its name says "soy sauce": brewed with wheat',
      },
    ]);
  });

  it('only ever proposes: nothing from the table is declared or confirmed', () => {
    const standings = new Set(
      [...byNumber.values()].flatMap(({ allergens }) => allergens.map(({ standing }) => standing)),
    );
    expect([...standings]).toEqual(['proposed']);
  });
});
