import { UNSAID_LINE } from '#lib/episode/unsaid';
import type { z } from 'zod';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { lineColumns } from '#lib/store/episode-columns';
import type { lineForm } from './line-schema';

type LineTexts = Omit<z.output<typeof lineForm>, 'episodeId' | 'lineId' | 'rev'>;
type NewLineTexts = Omit<LineTexts, 'measureName' | 'measuresOf' | 'cookMethod' | 'retention'>;

function leftBehind({
  leftBehind: mass,
  leftWeighed,
  leftWhere: where,
  leftMade: made,
}: NewLineTexts): RecipeLine['leftBehind'] {
  if (leftWeighed) return { kind: 'weighed', where, made };
  return mass ? { kind: 'mass', ...mass, where, made } : { kind: 'none' };
}

/** An ingredient from its form. A unit without an amount is none. */
function recipeLine(id: string, texts: LineTexts): RecipeLine {
  const { quantity, unit, foodId, measuresOf } = texts;
  // The names are those of one food: another's would mean nothing, or something else.
  const ofFood = (name: string | null) => (foodId === measuresOf ? name : null);
  return {
    id,
    text: texts.text,
    quantity,
    unit: quantity ? unit : null,
    measureName: ofFood(texts.measureName),
    foodId,
    // Whoever saves the form has seen the food that it names.
    match: 'confirmed',
    orFoodId: null,
    madeFrom: null,
    state: texts.state,
    asBought: texts.asBought,
    planned: texts.grams,
    leftBehind: leftBehind(texts),
    cookMethod: ofFood(texts.cookMethod),
    retention: texts.retention,
    bounded: [],
    spoiltByTake: texts.spoiltByTake,
    note: texts.note,
    ...UNSAID_LINE,
    shopNote: texts.shopNote,
  };
}

/** The columns of a new ingredient. It means the first of the food's measures that fits. */
export function newLineColumns(id: string, texts: NewLineTexts) {
  const rest = { measureName: null, measuresOf: null, cookMethod: null, retention: null };
  return {
    ...lineColumns(recipeLine(id, { ...texts, ...rest })),
    madeFromId: null,
    madeFromRev: null,
  };
}

/**
 * The columns of an ingredient that its form changes. What the form does not show stays as it is: bounded
 * values and a second food, unless another food is chosen in their place; the recipe that it is made from, unless a food is.
 */
export function linePatch(id: string, texts: LineTexts) {
  const { bounded, orFoodId, ...columns } = lineColumns(recipeLine(id, texts));
  if (texts.foodId === texts.measuresOf) return columns;
  const made = texts.foodId === null ? {} : { madeFromId: null, madeFromRev: null };
  return { ...columns, bounded, orFoodId, ...made };
}

/** The form's field for a column that the store refuses. */
export function lineField(column: string): string {
  if (column.startsWith('planned')) return 'grams';
  if (column === 'leftWhere' || column === 'leftMade') return column;
  if (column.startsWith('left')) return 'leftBehind';
  if (/^(low|high)/.test(column)) return 'quantity';
  return column;
}
