import type { Segment } from '#lib/episode/schema';
import type { StepLink } from '#lib/episode/step-schema';
import { UNSAID_SEGMENT } from '#lib/episode/unsaid';
import { SCALE } from '#seed/demo/kitchen';
import { LABEL } from '#seed/demo/label-foods';
import { FOOD } from '#seed/demo/reference-foods';
import {
  amount,
  line,
  link,
  minutes,
  part,
  reading,
  say,
  shot,
  step,
  typed,
} from '#seed/demo/shorthand';

/** Weighed at the trial cook on Wednesday, three days before the camera. */
const trial = { at: '2026-12-09T15:20:00.000Z', scaleId: SCALE.flat } as const;
const BOWL = 312;

const recipe: Segment['recipe'] = {
  id: 'recipe-skillet',
  title: 'Barley skillet with mushrooms and greens',
  lines: [
    line('line-skillet-barley', '150 g pearl barley', FOOD.barley, {
      quantity: amount(150),
      unit: 'g',
      state: 'dry',
    }),
    line('line-skillet-mushrooms', '250 g button mushrooms, sliced', FOOD.mushrooms, {
      quantity: amount(250),
      unit: 'g',
      state: 'raw',
    }),
    line('line-skillet-onion', '110 g onion, chopped', FOOD.onion, {
      quantity: amount(110),
      unit: 'g',
      state: 'raw',
    }),
    line('line-skillet-carrot', '55 g carrot, in small dice', FOOD.carrot, {
      quantity: amount(55),
      unit: 'g',
      state: 'raw',
    }),
    line('line-skillet-garlic', '2 cloves of garlic', FOOD.garlic, {
      quantity: amount(2),
      unit: 'piece',
      measureName: 'clove',
      state: 'raw',
    }),
    // Cooked grams of a food whose values hold raw: turned back by what she weighed before.
    line('line-skillet-turkey', '60 g browned ground turkey, left from Wednesday', FOOD.turkey, {
      planned: typed(60),
      state: 'cooked',
    }),
    line('line-skillet-oil', '1 tablespoon olive oil', FOOD.oliveOil, {
      quantity: amount(1),
      unit: 'tbsp',
    }),
    line('line-skillet-peas', '1 cup frozen peas', FOOD.peas, {
      quantity: amount(1),
      unit: 'cup',
    }),
    line('line-skillet-spinach', '2 cups baby spinach', FOOD.spinach, {
      quantity: amount(2),
      unit: 'cup',
      state: 'raw',
      spoiltByTake: true,
      note: 'wilts in seconds: a second take wants fresh leaves',
    }),
    line('line-skillet-lemon', '1 tablespoon lemon juice', FOOD.lemonJuice, {
      quantity: amount(1),
      unit: 'tbsp',
      state: 'raw',
    }),
    line('line-skillet-pepper', '1/2 teaspoon black pepper', FOOD.blackPepper, {
      quantity: amount(1, 2),
      unit: 'tsp',
    }),
    line('line-skillet-salt', 'Salt to taste', FOOD.salt, {
      note: 'never weighed, so the sodium stays open',
    }),
    line('line-skillet-cheese', '2 servings farmhouse cheese, grated', LABEL.cheese, {
      quantity: amount(2),
      unit: 'serving',
      spoiltByTake: true,
    }),
    line('line-skillet-crispbread', '4 pieces rye crispbread', LABEL.crispbread, {
      quantity: amount(4),
      unit: 'piece',
      measureName: 'piece',
      spoiltByTake: true,
    }),
  ],
  weighings: [
    reading('weigh-barley', 'line-skillet-barley', { gross: 462, tare: BOWL }, trial),
    reading('weigh-mushrooms', 'line-skillet-mushrooms', { gross: 252 }, trial),
    // One bowl, one reading: two parts onion to one part carrot.
    reading(
      'weigh-onion-carrot',
      null,
      { gross: 480, tare: BOWL },
      {
        ...trial,
        shares: [
          { lineId: 'line-skillet-onion', share: part(2, 3) },
          { lineId: 'line-skillet-carrot', share: part(1, 3) },
        ],
      },
    ),
  ],
  portions: [{ id: 'portion-skillet-half', kind: 'count', name: 'one of two', of: 2 }],
  cooking: null,
  method: [
    'Toast the barley in a dry pot until it smells of popcorn, cover with 600 ml water and simmer for half an hour.',
    'Meanwhile brown the mushrooms in the oil and do not stir them as much as you want to. Onion, carrot and garlic follow.',
    'Fold in barley, peas and spinach. Lemon, pepper, salt. Cheese on top, crispbread on the side.',
  ].join('\n'),
};

export const SKILLET: Segment = {
  ...UNSAID_SEGMENT,
  id: 'seg-skillet',
  kind: 'recipe',
  title: 'Barley skillet',
  batches: part(1),
  eaten: part(1, 2),
  ate: { kind: 'share' },
  inFrame: 1125,
  outFrame: 4875,
  plannedS: 150,
  recipe,
  steps: [
    step('step-skillet-prep', 'Weigh and chop for the skillet', 'prep', [12, 15, 22], {
      onCamera: true,
    }),
    step('step-skillet-toast', 'Toast the barley', 'cook', [4, 5, 7], {
      burners: 1,
      onCamera: true,
    }),
    step('step-skillet-simmer', 'Simmer the barley', 'cook', [28, 32, 38], {
      hands: false,
      burners: 1,
    }),
    step('step-skillet-brown', 'Brown mushrooms, onion and carrot', 'cook', [10, 12, 16], {
      burners: 1,
      onCamera: true,
    }),
    step('step-skillet-fold', 'Fold in barley, peas and spinach', 'cook', [3, 4, 6], {
      burners: 1,
      onCamera: true,
    }),
    step('step-skillet-plate', 'Plate it and show it hot', 'shoot', [4, 6, 12], {
      onCamera: true,
      contact: 'readyToEat',
      daylight: true,
    }),
    step('step-skillet-number', 'Say the number over the plate', 'talk', [2, 4, 8], {
      onCamera: true,
    }),
    step('step-skillet-eat', 'Eat half of it, for real', 'eat', [12, 18, 30]),
  ],
  perishables: [],
  shots: [
    shot(
      'shot-skillet-scale',
      'Barley falls into the bowl, 150 on the scale',
      'step-skillet-prep',
      'top down',
      8,
    ),
    shot(
      'shot-skillet-toast',
      'Grains turning the color of rope',
      'step-skillet-toast',
      'close',
      10,
    ),
    shot(
      'shot-skillet-mushrooms',
      'Mushrooms squeak, then brown',
      'step-skillet-brown',
      'close, side light',
      18,
    ),
    shot(
      'shot-skillet-spinach',
      'A whole heap of spinach gives up',
      'step-skillet-fold',
      'top down',
      12,
    ),
    shot(
      'shot-skillet-plate',
      'Steam against the window',
      'step-skillet-plate',
      'low, back light',
      14,
    ),
    shot(
      'shot-skillet-crack',
      'Crispbread breaks over the plate',
      'step-skillet-plate',
      'close, for the sound',
      6,
    ),
    shot(
      'shot-skillet-still',
      'Untouched, for the thumbnail',
      'step-skillet-plate',
      'a little above',
      3,
    ),
  ],
  talkingPoints: [
    say(
      'say-skillet-number',
      'The whole pan is [energy, whole] and [protein, whole] of protein, so my half is [energy, each] and [protein, each].',
    ),
    say(
      'say-skillet-fibre',
      'And barley is the quiet one here: [fibre, each] of fiber in each half.',
    ),
    say(
      'say-skillet-salt',
      'Salt is to taste, which means I did not weigh it, which means you get no sodium from me for this pan.',
    ),
  ],
  spareTakes: 1,
  spareScope: 'spoiltLines',
  washUpS: minutes(10),
};

export const SKILLET_LINKS: readonly StepLink[] = [
  link(
    'link-skillet-prep',
    'step-skillet-prep',
    'step-skillet-toast',
    {},
    'weighed before the pot is hot',
  ),
  link(
    'link-skillet-water',
    'step-skillet-toast',
    'step-skillet-simmer',
    { atMost: 1 },
    'water on before the barley burns',
  ),
  link(
    'link-skillet-chop',
    'step-skillet-prep',
    'step-skillet-brown',
    {},
    'chopped before the pan is hot',
  ),
  link(
    'link-skillet-barley',
    'step-skillet-simmer',
    'step-skillet-fold',
    { atMost: 15 },
    'barley goes to glue if it sits',
  ),
  link(
    'link-skillet-pan',
    'step-skillet-brown',
    'step-skillet-fold',
    { atMost: 5 },
    'while the pan is still hot',
  ),
  link('link-skillet-hot', 'step-skillet-fold', 'step-skillet-plate', { atMost: 10 }, 'shown hot'),
  link(
    'link-skillet-say',
    'step-skillet-plate',
    'step-skillet-number',
    { atMost: 5 },
    'the number while it steams',
  ),
  link(
    'link-skillet-eat',
    'step-skillet-number',
    'step-skillet-eat',
    { atMost: 5 },
    'nobody believes cold food',
  ),
];
