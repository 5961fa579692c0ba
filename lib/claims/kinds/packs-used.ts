import { foodBehind } from './amount-foods';
import type { Quantity } from '../numbers/quantity';
import { isDish } from '../words/dish-word';
import type { Text } from '../words/text';

/** Packs that somebody cooks with at most. */
const MOST_PACKS = 24;

/** '2 x 400g tins of tomatoes', 'three 150 gram pots of skyr': so many packs of a food; what one holds is their size. */
export function sayPacks(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((size, index) => {
    const count = quantities[index - 1];
    if (!count || (size.unit?.of !== 'mass' && size.unit?.of !== 'volume')) return;
    const pack = text.marks.at('pack', size.unitEnd);
    if (!pack || !isCount(count) || count.killed === 'aim') return;
    const times = text.marks.at('multiplied', count.to)?.to ?? count.to;
    if (times !== size.begin) return;
    const food = foodBehind(text, size, true);
    if (!food || isDish(text, food.name)) return;
    count.said = { kind: 'amount', unit: 'piece', food: food.name };
    count.end = food.to;
    count.killed = null;
    size.said = null;
    size.killed = 'size of a pack';
  });
}

const isCount = ({ unit, noun, low, high, fraction }: Quantity) =>
  unit === null && noun === null && low === high && !fraction && low >= 1 && low <= MOST_PACKS;
