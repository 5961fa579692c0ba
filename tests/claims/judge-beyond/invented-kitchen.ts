import type { DishFacts, EditFacts } from '#lib/claims/edit-facts';
import { isBeyond, judgeBeyond } from '#lib/claims/judge-beyond/judge-beyond';
import type { BeyondContext } from '#lib/claims/judge-beyond/beyond-context';
import { readStatements } from '#lib/claims/read-statements';
import type { TextContext } from '#lib/claims/statement';
import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { UNSAID_STEP } from '#lib/episode/unsaid';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../../support/build';

/** A kitchen and dishes made up for these tests; masses of measures are invented too. */

export function aStep(id: string, title: string, more: Partial<Step> = {}): Step {
  return {
    id,
    title,
    role: 'cook',
    lowS: 600,
    usualS: 600,
    highS: 600,
    choose: null,
    hands: false,
    burners: 0,
    racks: 0,
    oven: null,
    coreMilliC: null,
    restS: 0,
    onCamera: false,
    daylight: false,
    note: '',
    ...UNSAID_STEP,
    ...more,
  };
}

const measure = (id: string, name: string, massMg: number) => ({
  id,
  name,
  qtyNum: 1,
  qtyDen: 1,
  massMg,
  digits: 1,
  source: 'invented',
});

export const FOODS = [
  aFood('chicken', {}, { name: 'Chicken, breast, raw' }),
  aFood('stock', {}, { name: 'Soup, stock, chicken' }),
  aFood('oats', {}, { name: 'Oats', measures: [measure('cup', 'cup', 80_000)] }),
  aFood('oil', {}, { name: 'Oil, olive', measures: [measure('tbsp', 'tbsp', 13_500)] }),
  aFood('egg', {}, { name: 'Egg, whole, raw', measures: [measure('large', 'large', 50_000)] }),
  aFood('white', {}, { name: 'Egg, white, raw' }),
  aFood('cheese', {}, { name: 'Cheese, feta' }),
  aFood('onion', {}, { name: 'Onions, raw' }),
];

const quantity = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });

/** Roast chicken with oats: weighed, with steps, portions, two onions and a finished weight. */
export const ROAST = aDish(
  'roast',
  aRecipe(
    'roast-recipe',
    [
      grams('l-chicken', 'chicken', 220, { text: '220 g chicken breast, diced', state: 'raw' }),
      grams('l-stock', 'stock', 300, { text: '300 g chicken stock' }),
      grams('l-oats', 'oats', 120, { text: '120 g rolled oats' }),
      aLine('l-oil', 'oil', { text: '2 tbsp olive oil', quantity: quantity(2), unit: 'tbsp' }),
      aLine('l-egg', 'egg', { text: '3 eggs', quantity: quantity(3), unit: 'piece' }),
      grams('l-cheese', 'cheese', 100, { text: '100 g feta' }),
      grams('l-onion-1', 'onion', 80, { text: '80 g red onion' }),
      grams('l-onion-2', 'onion', 120, { text: '120 g white onion' }),
      aLine('l-salt', null, { text: 'black pepper to taste' }),
    ],
    {
      weighings: [
        aReading('w-chicken', 'raw', 248, {
          shares: [{ lineId: 'l-chicken', share: { num: 1, den: 1 } }],
        }),
        aReading('w-cooked', 'cooked', 180, {
          shares: [{ lineId: 'l-chicken', share: { num: 1, den: 1 } }],
        }),
        aReading('w-finished', 'finished', 900),
      ],
      portions: [{ id: 'p4', kind: 'count', name: 'a portion', of: 4 }],
    },
  ),
  {
    title: 'Roast chicken bowl',
    steps: [
      aStep('s-chop', 'Chop the onions', {
        role: 'prep',
        hands: true,
        lowS: 300,
        usualS: 360,
        highS: 600,
      }),
      aStep('s-roast', 'Roast the chicken', {
        lowS: 1200,
        usualS: 1500,
        highS: 1800,
        oven: { ovenId: null, milliC: 200_000 },
        coreMilliC: 74_000,
        restS: 300,
      }),
      aStep('s-simmer', 'Simmer the oats', {
        lowS: 600,
        usualS: 780,
        highS: 900,
        choose: { minS: 720, maxS: 900 },
      }),
    ],
  },
);

/** A dish with two oven temperatures, a fan and several portions; made twice. */
export const BAKE = aDish(
  'bake',
  aRecipe('bake-recipe', [grams('b-white', 'white', 200, { text: '200 g egg whites' })], {
    portions: [
      { id: 'q8', kind: 'count', name: 'a slice', of: 8 },
      { id: 'q2', kind: 'count', name: 'half', of: 2 },
    ],
  }),
  {
    title: 'Tray bake',
    batches: { num: 2, den: 1 },
    steps: [
      aStep('b-hot', 'Bake the base', { oven: { ovenId: null, milliC: 220_000 } }),
      aStep('b-low', 'Dry the topping', { oven: { ovenId: null, milliC: 120_000 } }),
    ],
  },
);

export const POULTRY_CAUTION =
  'Inside temperature of poultry, whole, parts, ground or stuffing: at least 73.9 °C (165 °F). (FoodSafety.gov, Safe Minimum Internal Temperature Chart, 12 April 2019) Follow your local food code and licensed practice; figures here are for information only.';

export const NO_LOG: DishFacts = {
  segmentId: 'roast',
  readyAfterS: null,
  steps: [],
  coreMilliC: [],
  cost: null,
  inside: [],
};

export function aContext(
  dishes: readonly Segment[],
  facts: readonly Partial<DishFacts>[] = [],
  more: Partial<EditFacts> & { readonly region?: EpisodeFile['episode']['region'] } = {},
): BeyondContext {
  const file = aFile([...dishes], FOODS, { episode: { region: more.region ?? 'US' } });
  const all = facts.map((each) => ({ ...NO_LOG, ...each }));
  return {
    file,
    facts: { dishes: all, dayCost: more.dayCost ?? null },
    dishes: dishesOf(file.episode.segments).map((dish) => ({
      dish,
      facts: all.find(({ segmentId }) => segmentId === dish.id) ?? null,
    })),
  };
}

/** The first statement beyond nutrition of a text, judged of a dish. */
export function judgeText(
  text: string,
  context: BeyondContext,
  segmentId: string | null,
  form: TextContext['form'] = 'description',
) {
  const dish = context.dishes.find((each) => each.dish.id === segmentId) ?? null;
  const statement = readStatements(text, { form, dish: dish?.dish.title }).find(isBeyond);
  if (!statement || !isBeyond(statement)) throw new Error(`nothing read in “${text}”`);
  const spoken = form === 'captions' || form === 'talkingPoint';
  return judgeBeyond(statement, { dish, spoken, text }, context);
}
