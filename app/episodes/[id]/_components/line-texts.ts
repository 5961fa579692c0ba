import { STATE_WORDS, UNIT_WORDS } from '../../../_ui/words';
import type { Choice } from '../../../_ui/form/field';
import { LINE_UNITS, type RecipeLine } from '#lib/episode/recipe-schema';
import { STATES, type Food } from '#lib/foods/food';
import { gramsText, quantityText } from '#lib/units/read-quantity';
import { foodHit } from '../../../foods/search/food-hit';
import type { LineTexts } from './line-form';

export const UNIT_CHOICES: readonly Choice[] = LINE_UNITS.map((value) => ({
  value,
  words: UNIT_WORDS[value],
}));

/**
 * The units that an ingredient can be given in: servings only where its food's label states one, batches and
 * portions only of a recipe, and always the one that it has.
 */
export function unitChoices({ unit, madeFrom }: RecipeLine, food: Food | null): readonly Choice[] {
  const servings = food === null || food.version.serving !== null;
  const fits = (value: string) =>
    (value !== 'serving' || servings) && (!OF_RECIPES.has(value) || madeFrom !== null);
  return UNIT_CHOICES.filter(({ value }) => value === unit || fits(value));
}

const OF_RECIPES: ReadonlySet<string> = new Set(['batch', 'portion']);

/** The units that a new ingredient can be given in. */
export const NEW_UNIT_CHOICES = UNIT_CHOICES.filter(({ value }) => !OF_RECIPES.has(value));

export const STATE_CHOICES: readonly Choice[] = STATES.map((value) => ({
  value,
  words: STATE_WORDS[value],
}));

/** For a new ingredient, whose food mostly says it. */
export const NEW_STATE_CHOICES: readonly Choice[] = [
  { value: '', words: 'as its food is listed' },
  ...STATE_CHOICES,
];

/** An ingredient not yet typed. */
export const EMPTY_LINE: LineTexts = {
  text: '',
  quantity: '',
  unit: 'g',
  state: '',
  grams: '',
  leftBehind: '',
  leftWeighed: false,
  leftWhere: 'pan',
  leftMade: 'alike',
  note: '',
  shopNote: '',
  asBought: false,
  spoiltByTake: false,
  measureName: '',
  cookMethod: '',
  retention: '',
  food: null,
};

/** An ingredient as its form shows it. Read again by the form's schema, it is the same ingredient. */
export function lineTexts(line: RecipeLine, food: Food | null): LineTexts {
  const { leftBehind } = line;
  const behind = leftBehind.kind === 'none' ? null : leftBehind;
  return {
    text: line.text,
    quantity: line.quantity ? quantityText(line.quantity) : '',
    unit: line.unit ?? 'g',
    state: line.state,
    grams: line.planned ? gramsText(line.planned) : '',
    leftBehind: leftBehind.kind === 'mass' ? gramsText(leftBehind) : '',
    leftWeighed: leftBehind.kind === 'weighed',
    leftWhere: behind?.where ?? 'pan',
    leftMade: behind?.made ?? 'alike',
    note: line.note,
    shopNote: line.shopNote,
    asBought: line.asBought,
    spoiltByTake: line.spoiltByTake,
    measureName: line.measureName ?? '',
    cookMethod: line.cookMethod ?? '',
    retention: line.retention ?? '',
    food: food ? foodHit(food) : null,
  };
}
