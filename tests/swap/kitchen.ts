import type { SwapStep, Variant } from '#lib/episode/publish-schema';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { applySwap } from '#lib/swap/apply-swap';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

/** An invented kitchen with foods that can take each other's place. */
export const FOODS = [
  aFood(
    'lean',
    {
      energyKcal: '61',
      protein: '9.8',
      fat: '0.4',
      carbohydrate: '4.1',
      fibre: '0.0',
      sodium: '40',
    },
    { name: 'Skimmed curd' },
  ),
  aFood(
    'rich',
    {
      energyKcal: '112',
      protein: '8.9',
      fat: '7.2',
      carbohydrate: '3.6',
      fibre: '0.0',
      sodium: '44',
    },
    { name: 'Full-fat curd' },
  ),
  aFood(
    'oats',
    {
      energyKcal: '379',
      protein: '13.2',
      fat: '6.5',
      carbohydrate: '67.7',
      fibre: '10.1',
      sodium: '6',
    },
    { name: 'Rolled oats' },
  ),
  aFood('bare', { energyKcal: '250' }, { name: 'A spread of the house' }),
  aFood(
    'oil',
    { energyKcal: '884', protein: '0', fat: '100.0', carbohydrate: '0', fibre: '0', sodium: '0' },
    { name: 'Oil', section: 'oilsAndSauces' },
  ),
];
export const FOOD_IDS = FOODS.map(({ id }) => id);

export function kitchen(lines: RecipeLine[], more: Partial<Segment> = {}): EpisodeFile {
  const recipe = aRecipe('r', lines, {
    portions: [
      { id: 'third', kind: 'count', name: 'one of three', of: 3 },
      {
        id: 'spoonful',
        kind: 'byEye',
        name: 'a spoonful',
        share: { num: 1, den: 8 },
        permille: 100,
      },
    ],
    weighings: [
      aReading('w', 'raw', 203.4, { shares: [{ lineId: 'curd', share: { num: 1, den: 1 } }] }),
    ],
  });
  const side = aDish('side', aRecipe('r-side', [grams('side oats', 'oats', 55)]));
  return aFile([aDish('bowl', recipe, more), side], FOODS);
}

/** Curd that was weighed, oats and a spread in planned grams, and salt that nobody weighed. */
export const LINES: RecipeLine[] = [
  aLine('curd', 'lean'),
  grams('oats', 'oats', 80),
  grams('spread', 'bare', 15),
  aLine('salt', null, { text: 'salt to taste' }),
];

export const variant = (steps: SwapStep[], name = 'a swap'): Variant => ({
  id: 'v',
  segmentId: 'bowl',
  name,
  steps,
});

export function swapped(file: EpisodeFile, steps: SwapStep[]): EpisodeFile {
  const applied = applySwap(file, variant(steps));
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join(' '));
  return applied.value;
}
