import type { z } from 'zod';
import type { dishLineForm } from './dish-line-schema';

export type DishLineTexts = Omit<z.output<typeof dishLineForm>, 'episodeId' | 'lineId' | 'rev'>;

/** The columns of an ingredient that is a dish. A unit without an amount is none. */
export function dishLineColumns(
  texts: DishLineTexts,
  dish: { readonly id: string; readonly rev: number; readonly title: string },
) {
  const { quantity, unit, note, spoiltByTake } = texts;
  return {
    text: texts.text || dish.title,
    lowNum: quantity?.low.num ?? null,
    lowDen: quantity?.low.den ?? null,
    highNum: quantity?.high.num ?? null,
    highDen: quantity?.high.den ?? null,
    unit: quantity ? unit.unit : null,
    measureName: quantity ? unit.measureName : null,
    madeFromId: dish.id,
    madeFromRev: dish.rev,
    note,
    spoiltByTake,
    // What only a food has. Grams typed before would win over the amount above.
    foodId: null,
    orFoodId: null,
    match: 'confirmed',
    state: 'asIs',
    asBought: false,
    plannedLowMg: null,
    plannedMg: null,
    plannedHighMg: null,
    cookMethod: null,
    retention: null,
    bounded: null,
  } as const;
}

/** What a new ingredient leaves nowhere. */
export function plainLineColumns() {
  return { leftKind: 'none', leftLowMg: null, leftMg: null, leftHighMg: null } as const;
}
