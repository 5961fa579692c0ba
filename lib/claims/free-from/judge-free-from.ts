import { plainly, cannotSay, type Verdicted } from '#lib/claims/judge/verdicted';
import type { Statement } from '#lib/claims/statement';
import type { Diet } from '#lib/claims/free-from-words';
import type { AmountContext, Dish } from '#lib/episode/context';
import { ALLERGEN_WORDS, allergenStanding } from '#lib/foods/allergen-standing';
import type { Allergen } from '#lib/foods/food';
import {
  heldIngredients,
  holdingOf,
  type Held,
  type HeldIngredient,
  type Holding,
} from './held-ingredients';

export type FreeFromStatement = Extract<Statement, { readonly kind: 'freeFrom' }>;

/** What each diet leaves out; by common practice, since no law of the US or the EU defines these words. */
const DIETS: Readonly<Record<Diet, readonly Held[]>> = {
  meatFree: ['meat'],
  vegetarian: ['meat', 'fish', 'crustaceans', 'molluscs', 'gelatine'],
  vegan: ['meat', 'fish', 'crustaceans', 'molluscs', 'gelatine', 'milk', 'egg', 'honey'],
};

/** Named by itself: a nut, a fish and a meat say what they are (FALCPA asks for the kind of nut and fish). */
const OWN_NAMES: readonly Held[] = [
  'treeNuts',
  'peanuts',
  'fish',
  'crustaceans',
  'molluscs',
  'meat',
  'gelatine',
  'honey',
];

/**
 * Holds 'nut free' or 'vegan' against the ingredients of a dish: off where one has it, else nobody can say. It never
 * agrees: a breakdown cannot show that a dish is free of something.
 * @param dishes those that it may be about; of several it is off only if it is off for each
 * @example judgeFreeFrom(nutFree, [loaf], context).why // '“nut free”: “60 g walnuts” has tree nuts …'
 */
export function judgeFreeFrom(
  statement: FreeFromStatement,
  dishes: readonly Dish[],
  context: AmountContext,
): Verdicted {
  const [only, ...others] = dishes;
  if (!only) return cannotSay('which dish?');
  if (others.length === 0) return plainly(judgeOn(statement, only, context));
  const all = dishes.map((dish) => ({ dish, ...judgeOn(statement, dish, context) }));
  const off = all.filter(({ verdict }) => verdict === 'off');
  const whys = off.map(({ dish, why }) => `${dish.title}: ${why}`).join(' ');
  const [first] = off;
  if (first && off.length === all.length) {
    return { ...first, why: whys, sayInstead: null, against: null };
  }
  return cannotSay(off.length === 0 ? 'which dish?' : `which dish? ${whys}`);
}

interface Found {
  readonly ingredient: HeldIngredient;
  readonly held: Held;
  readonly holding: Holding;
}

function judgeOn(statement: FreeFromStatement, dish: Dish, context: AmountContext): Verdicted {
  const ingredients = heldIngredients(dish, context);
  const asked = statement.diet === undefined ? statement.from : DIETS[statement.diet];
  const found = [...new Set([...statement.from, ...asked])].flatMap((held) =>
    ingredients.map((ingredient): Found => ({
      ingredient,
      held,
      holding: holdingOf(ingredient, held),
    })),
  );
  const has = found.filter(({ holding }) => holding === 'has' || holding === 'named');
  const [first] = has;
  if (!first) return cannotSay(openWords(found, ingredients));
  const sure = has.some(({ holding }) => holding === 'has');
  const remark = sure ? null : 'toConfirm';
  const against = {
    kind: 'line',
    segmentId: dish.id,
    lineId: first.ingredient.lineId,
  } as const;
  const why = `“${statement.words.replace(/\s+/g, ' ')}”: ${has.map(hasWords).join('; ')}.`;
  if (statement.unsure) {
    return cannotSay(`it may be said of one ingredient. Of the dish it would be off: ${why}`, {
      remark: 'toConfirm',
      against,
    });
  }
  const sayInstead = `contains ${listed([...new Set(has.map(nameOf))])}`;
  return { verdict: 'off', why, difference: null, sayInstead, remark, against };
}

/** '“60 g walnuts” has tree nuts, by its name, which nobody has confirmed'. */
function hasWords({ ingredient, held, holding }: Found): string {
  const by = holding === 'named' ? ', by its name; nobody has confirmed it' : '';
  return `your ingredient “${ingredient.text}” has ${wordOf(ingredient, held)}${by}`;
}

/** What viewers have to hear: 'walnuts', 'wheat (soy sauce)'. */
function nameOf({ ingredient, held }: Found): string {
  const { name } = ingredient;
  const word = wordOf(ingredient, held);
  if (OWN_NAMES.includes(held) || name.toLowerCase().includes(word.toLowerCase())) return name;
  return `${word} (${name})`;
}

function wordOf({ foods }: HeldIngredient, held: Held): string {
  if (held === 'glutenCereals' && foods.some((food) => allergenStanding(food, 'wheat'))) {
    return 'wheat';
  }
  return isAllergen(held) ? ALLERGEN_WORDS[held] : held;
}

const isAllergen = (held: Held): held is Allergen => held in ALLERGEN_WORDS;

/** Names of ingredients that are told, at most. */
const MOST = 4;

function openWords(found: readonly Found[], ingredients: readonly HeldIngredient[]): string {
  if (ingredients.length === 0) return 'the dish has no ingredients';
  const textsOf = (holding: Holding) => [
    ...new Set(
      found.filter((each) => each.holding === holding).map(({ ingredient }) => ingredient.text),
    ),
  ];
  const may = found
    .filter(({ holding }) => holding === 'may')
    .map(({ ingredient, held }) => `“${ingredient.text}” may have ${wordOf(ingredient, held)}`);
  const unchecked = textsOf('unchecked');
  const [shown, more] = [unchecked.slice(0, MOST), unchecked.length - MOST];
  const names = [...shown.map((text) => `“${text}”`), ...(more > 0 ? [`${more} more`] : [])];
  const parts = [
    may.length > 0
      ? `${[...new Set(may)].join('; ')}: check it, and say so where the allergens of the dish are listed`
      : 'no ingredient is known to have it',
    ...(unchecked.length > 0 ? [`nobody has said which allergens are in ${listed(names)}`] : []),
    'labels, traces and cross-contact are not known here',
  ];
  return `${parts.join('; ')}.`;
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
