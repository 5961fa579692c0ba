import { followingParts } from '#lib/foods/merge-foods';
import type { Merge } from '#lib/store/merge-foods';
import type { EntityName } from '#lib/store/rows';

const KINDS: readonly (readonly [EntityName, string, string])[] = [
  ['RecipeLine', 'ingredient', 'ingredients'],
  ['StockLot', 'lot in stock', 'lots in stock'],
  ['PantryFood', 'answer about stock', 'answers about stock'],
  ['Pack', 'pack with its prices', 'packs with their prices'],
  ['LineMatch', 'remembered wording', 'remembered wordings'],
  ['Food', 'other food that names it', 'other foods that name it'],
];

/** What moves with a food, counted: `'7 ingredients, 1 lot in stock, 2 cooked weights'`. */
export function movedWords({ from, into, naming }: Merge): string {
  const { measures, yields } = followingParts(from.food, into.food);
  const counted = (count: number, one: string, many: string) =>
    count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  const words = [
    ...KINDS.flatMap(([entity, one, many]) =>
      counted(naming.filter((each) => each.entity === entity).length, one, many),
    ),
    ...counted(yields.length, 'cooked weight', 'cooked weights'),
    ...counted(measures.length, 'weight of a measure', 'weights of measures'),
  ];
  return words.length === 0 ? 'nothing: no dish or shelf has it' : words.join(', ');
}
