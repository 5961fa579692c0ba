import type { Segment } from '#lib/episode/schema';
import type { StepLink } from '#lib/episode/step-schema';
import { UNSAID_SEGMENT } from '#lib/episode/unsaid';
import { MICROWAVE, OVEN, SCALE } from '#seed/demo/kitchen';
import { LABEL } from '#seed/demo/label-foods';
import { FOOD } from '#seed/demo/reference-foods';
import {
  amount,
  celsius,
  line,
  link,
  minutes,
  part,
  reading,
  say,
  shot,
  span,
  step,
} from '#seed/demo/shorthand';

/** Weighed at the trial on Wednesday evening. */
const trial = { at: '2026-12-09T18:05:00.000Z', scaleId: SCALE.flat } as const;
const fine = { ...trial, scaleId: SCALE.fine } as const;

const recipe: Segment['recipe'] = {
  id: 'recipe-skyr',
  title: 'Skyr pots with a cardamom oat crumb',
  lines: [
    line('line-skyr-skyr', '600 g plain skyr', LABEL.skyr, {
      quantity: amount(600),
      unit: 'g',
      spoiltByTake: true,
    }),
    line('line-skyr-berries', '200 g frozen blueberries', FOOD.blueberries, {
      quantity: amount(200),
      unit: 'g',
    }),
    line('line-skyr-oats', '80 g rolled oats', FOOD.oats, {
      quantity: amount(80),
      unit: 'g',
      state: 'dry',
    }),
    line('line-skyr-almonds', '25 g blanched almonds, chopped', FOOD.almonds, {
      quantity: amount(25),
      unit: 'g',
    }),
    line('line-skyr-butter', '2 tablespoons unsalted butter', FOOD.butter, {
      quantity: amount(2),
      unit: 'tbsp',
    }),
    line('line-skyr-sugar', '20 g brown sugar', FOOD.brownSugar, {
      quantity: amount(20),
      unit: 'g',
    }),
    line('line-skyr-cardamom', '1 teaspoon ground cardamom', FOOD.cardamom, {
      quantity: amount(1),
      unit: 'tsp',
      note: 'the table has no sugar value for it',
    }),
    line('line-skyr-salt', 'A pinch of salt, 0.6 g', FOOD.salt, {
      quantity: amount(6, 10),
      unit: 'g',
    }),
  ],
  weighings: [
    // The tub before and after: 1034 g and 426 g.
    reading(
      'weigh-skyr',
      'line-skyr-skyr',
      { gross: 1034, tare: 426 },
      {
        ...trial,
        method: 'difference',
      },
    ),
    reading('weigh-berries', 'line-skyr-berries', { gross: 201 }, trial),
    reading('weigh-skyr-oats', 'line-skyr-oats', { gross: 80 }, trial),
    reading('weigh-almonds', 'line-skyr-almonds', { gross: 25.2 }, fine),
    reading('weigh-sugar', 'line-skyr-sugar', { gross: 20.1 }, fine),
    reading('weigh-pinch', 'line-skyr-salt', { gross: 0.6 }, fine),
  ],
  portions: [{ id: 'portion-skyr-pot', kind: 'count', name: 'one of four', of: 4 }],
  cooking: null,
  method: [
    'Rub oats, almonds, butter, sugar, cardamom and salt to a rough crumb. Bake at 160 °C (320 °F) for 18 minutes.',
    'Leave it alone for 15 minutes: warm it is sand, cold it is crunch.',
    'Warm the berries until they run. Layer skyr, berries and crumb in four pots; lids on the three you do not eat.',
  ].join('\n'),
};

export const SKYR: Segment = {
  ...UNSAID_SEGMENT,
  id: 'seg-skyr',
  kind: 'recipe',
  title: 'Skyr pots with oat crumb',
  batches: part(1),
  eaten: part(1, 4),
  ate: { kind: 'share' },
  inFrame: 9625,
  outFrame: 12750,
  plannedS: 125,
  recipe,
  steps: [
    step('step-skyr-rub', 'Rub the crumb', 'prep', [6, 8, 12], { onCamera: true }),
    step('step-skyr-bake', 'Bake the crumb', 'cook', [16, 18, 22], {
      hands: false,
      racks: 1,
      oven: { ovenId: OVEN, milliC: celsius(160) },
    }),
    step('step-skyr-thaw', 'Berries into the fridge to thaw', 'prep', [1, 2, 3], {
      evening: true,
      note: 'In their own bowl, on the lowest shelf.',
    }),
    step('step-skyr-berries', 'Warm the berries', 'cook', [3, 4, 6], {
      hands: false,
      applianceId: MICROWAVE,
    }),
    step('step-skyr-layer', 'Weigh the skyr, layer four pots', 'prep', [7, 9, 14], {
      onCamera: true,
      contact: 'readyToEat',
    }),
    step('step-skyr-spoon', 'Spoon through the layers', 'shoot', [4, 6, 12], { onCamera: true }),
    step('step-skyr-number', 'Say the number over the pot', 'talk', [2, 4, 8], {
      onCamera: true,
    }),
    step('step-skyr-chill', 'Lids on three pots, into the fridge', 'prep', [2, 3, 4]),
    step('step-skyr-eat', 'Eat one pot', 'eat', [8, 10, 15]),
  ],
  perishables: [
    {
      id: 'lot-skyr',
      name: 'Skyr, three pots for the fridge',
      limitS: 7200,
      spans: [span(['step-skyr-layer', 'start'], ['step-skyr-chill', 'end'])],
      thrownAway: false,
    },
  ],
  shots: [
    shot('shot-skyr-rub', 'Butter disappears into oats', 'step-skyr-rub', 'close', 10),
    shot(
      'shot-skyr-crumb',
      'Crumb breaks off the cold tray',
      'step-skyr-layer',
      'close, for the sound',
      8,
    ),
    shot(
      'shot-skyr-layer',
      'White, purple, gold, four times',
      'step-skyr-layer',
      'side, eye level',
      20,
    ),
    shot('shot-skyr-still', 'Untouched, for the thumbnail', 'step-skyr-spoon', 'a little above', 3),
    shot('shot-skyr-spoon', 'Spoon goes through all three', 'step-skyr-spoon', 'macro', 14),
  ],
  talkingPoints: [
    say(
      'say-skyr-number',
      'Four pots are [energy, whole]. One pot is [energy, each] with [protein, each] of protein, and most of that is skyr doing its job.',
    ),
    say(
      'say-skyr-cardamom',
      'And here is the other number I do not have: nobody has measured the sugar in cardamom for my table, so for sugars my line reads [sugars, each].',
    ),
    say(
      'say-skyr-crunch',
      'Crumb goes on last. Ten minutes in skyr and it is porridge. Good porridge, but still.',
    ),
  ],
  spareTakes: 1,
  spareScope: 'whole',
  washUpS: minutes(8),
};

export const SKYR_LINKS: readonly StepLink[] = [
  link('link-skyr-bake', 'step-skyr-rub', 'step-skyr-bake', {}, 'rubbed before it is baked'),
  link(
    'link-skyr-set',
    'step-skyr-bake',
    'step-skyr-layer',
    { atLeast: 15 },
    'the crumb must set first',
  ),
  link(
    'link-skyr-thaw',
    'step-skyr-thaw',
    'step-skyr-berries',
    { atLeast: 600 },
    'thawed through, so four minutes warm them evenly',
  ),
  link(
    'link-skyr-berries',
    'step-skyr-berries',
    'step-skyr-layer',
    { atLeast: 5, atMost: 60 },
    'berries warm, not hot',
  ),
  link(
    'link-skyr-crunch',
    'step-skyr-layer',
    'step-skyr-spoon',
    { atMost: 5 },
    'while the crumb still crunches',
  ),
  link(
    'link-skyr-say',
    'step-skyr-spoon',
    'step-skyr-number',
    { atMost: 5 },
    'the number with the spoon in hand',
  ),
  link(
    'link-skyr-eat',
    'step-skyr-number',
    'step-skyr-eat',
    { atMost: 10 },
    'before the crumb goes soft',
  ),
  link(
    'link-skyr-chill',
    'step-skyr-spoon',
    'step-skyr-chill',
    {},
    'the other three are in the picture first',
  ),
];
