import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('parts by how many there are of them', () => {
  const kcal = (number: number, scope: string) => `nutrient ${number} energyKcal kcal ${scope}`;
  const gram = (number: number, scope: string) => `nutrient ${number} protein g ${scope}`;
  test.each([
    [
      'the whole pan is 1800 calories and 132 of protein, I got six bowls, so three hundred, twenty two',
      [
        kcal(1800, 'whole'),
        gram(132, 'whole'),
        'portions 6 portion',
        kcal(300, 'portion'),
        gram(22, 'portion'),
      ],
    ],
    [
      'it is 2240 calories for the lot and there were four of us so a quarter of that is five sixty',
      [kcal(2240, 'whole'), kcal(560, 'portion')],
    ],
    [
      'the whole tray is 1800 calories, I cut it into twelve squares, so a twelfth of it, 150',
      [kcal(1800, 'whole'), 'portions 12 slice', kcal(150, 'slice')],
    ],
    [
      'one of these jars is 310 calories. and there are five of them, so it is 1550',
      [kcal(310, 'portion'), 'portions 5 portion', kcal(1550, 'whole')],
    ],
    [
      'they are 145 calories a square, so for the tray of twelve you get 1740',
      [kcal(145, 'slice'), kcal(1740, 'whole')],
    ],
    [
      'the loaf is 1600 calories, sixteen slices, a hundred each',
      [kcal(1600, '').trim(), 'portions 16 slice', kcal(100, 'slice')],
    ],
    // A few times what one part has is no part with a name.
    [
      'per portion it is 410 calories, 22 protein, and if you go back for seconds it is 820 and 44',
      [kcal(410, 'portion'), gram(22, 'portion'), kcal(820, 'unknown'), gram(44, 'unknown')],
    ],
    [
      'a wedge is 190 calories, so if you have a quarter like my dad, 380',
      [kcal(190, 'slice'), kcal(380, 'unknown')],
    ],
    // A part that is said is that part.
    ['a bowl is 210 calories and the whole pot is 840', [kcal(210, 'portion'), kcal(840, 'whole')]],
    [
      'a bowl is 200 calories so stir in 400 grams of tomatoes',
      [kcal(200, 'portion'), 'amount 400 g tomato'],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});
