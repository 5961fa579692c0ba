import { STATE_WORDS, UNIT_WORDS } from '../../../_ui/words';
import type { Choice } from '../../../_ui/form/field';
import { LINE_UNITS, type RecipeLine } from '#lib/episode/schema';
import { STATES, type Food } from '#lib/foods/food';
import { gramsText, quantityText } from '#lib/units/read-quantity';
import { foodHit } from '../../../foods/search/food-hit';
import type { LineTexts } from './line-form';
import { measureChoices } from './measure-choices';

export const UNIT_CHOICES: readonly Choice[] = LINE_UNITS.map((value) => ({
  value,
  words: UNIT_WORDS[value],
}));

/** The units that an ingredient's food can be given in: servings only where its label states one. */
export function unitChoices({ unit }: RecipeLine, food: Food | null): readonly Choice[] {
  const servings = food === null || food.version.serving !== null || unit === 'serving';
  return servings ? UNIT_CHOICES : UNIT_CHOICES.filter(({ value }) => value !== 'serving');
}

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
  note: '',
  asBought: false,
  spoiltByTake: false,
  measureName: '',
  measures: [],
  food: null,
};

/** An ingredient as its form shows it. Read again by the form's schema, it is the same ingredient. */
export function lineTexts(line: RecipeLine, food: Food | null): LineTexts {
  return {
    text: line.text,
    quantity: line.quantity ? quantityText(line.quantity) : '',
    unit: line.unit ?? 'g',
    state: line.state,
    grams: line.planned ? gramsText(line.planned) : '',
    leftBehind: line.leftBehind.kind === 'mass' ? gramsText(line.leftBehind) : '',
    note: line.note,
    asBought: line.asBought,
    spoiltByTake: line.spoiltByTake,
    measureName: line.measureName ?? '',
    measures: measureChoices(line, food),
    food: food ? foodHit(food) : null,
  };
}
