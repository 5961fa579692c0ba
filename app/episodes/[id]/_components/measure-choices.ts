import type { Choice } from '../../../_ui/form/field';
import { UNIT_WORDS } from '../../../_ui/words';
import { findMeasure, measureUnit } from '#lib/episode/line-amount';
import { countsSaid } from '#lib/episode/match-line';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Food, FoodMeasure } from '#lib/foods/food';
import { gramsText, quantityText } from '#lib/units/read-quantity';

/**
 * What a piece, cup or spoon of an ingredient can mean: its food's measures with their grams.
 * A name that the food no longer has is kept in the list, so that nothing changes unasked.
 */
export function measureChoices(
  { measureName }: Pick<RecipeLine, 'measureName'>,
  food: Food | null,
): readonly Choice[] {
  const measures = food?.measures ?? [];
  const names = [...new Set(measures.map(({ name }) => name))];
  const listed = names.flatMap((name) => {
    const first = measures.find((measure) => measure.name === name);
    return first ? [{ value: name, words: oneMeasure(first) }] : [];
  });
  const lost =
    measureName !== null && !names.includes(measureName)
      ? [{ value: measureName, words: `“${measureName}”: this food has no such measure` }]
      : [];
  if (listed.length + lost.length === 0) return [];
  return [{ value: '', words: 'the first that fits the unit' }, ...listed, ...lost];
}

/** The measure that an amount in pieces or by volume is counted by; null where none is, or grams are given. */
export function measureWords(line: RecipeLine, food: Food | null): string | null {
  if (!food || !line.unit || !line.quantity || line.planned) return null;
  const found = findMeasure(line.unit, line.measureName, food);
  return found && `a ${UNIT_WORDS[line.unit]} by: ${oneMeasure(found.measure)}`;
}

/** `'1 large, 50 g'`. */
function oneMeasure({ name, qtyNum, qtyDen, massMg }: FoodMeasure): string {
  const ratio = { num: qtyNum, den: qtyDen };
  const grams = gramsText({ lowMg: massMg, valueMg: massMg, highMg: massMg });
  return `${quantityText({ low: ratio, high: ratio })} ${name}, ${grams} g`;
}

/**
 * The measures that an open amount may count, one of which settles it: those of its unit and of the word that it was
 * counted in, each with its grams.
 * None where the amount names no unit that is counted.
 */
export function openMeasures(
  { quantity, unit, measureName }: Pick<RecipeLine, 'quantity' | 'unit' | 'measureName'>,
  food: Food | null,
): readonly Choice[] {
  if (!food || !quantity || !unit) return [];
  // Half of an aubergine is not half of a cup of it.
  const counts = (measure: FoodMeasure) =>
    unit !== 'piece' || (measureUnit(measure) === null && countsSaid(measureName, measure));
  const fitting = food.measures
    .filter(counts)
    .filter(({ name }) => findMeasure(unit, name, food)?.measure.name === name);
  return fitting.map((measure) => ({ value: measure.name, words: oneMeasure(measure) }));
}
