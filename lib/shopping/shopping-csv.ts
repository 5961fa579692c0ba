import type { PackCount, ShoppingItem, ShoppingList } from '#lib/shopping/list-types';
import { SECTION_WORDS, isInStock } from '#lib/shopping/shopping-text';
import { csvText } from '#lib/units/csv';
import { minorText } from '#lib/units/print-money';
import { printTo } from '#lib/units/print';

const HEAD = [
  'section',
  'food',
  'need (g)',
  'need (ml)',
  'in stock (g)',
  'to buy (g)',
  'shop',
  'pack',
  'packs',
  'pack (g)',
  'pack (ml)',
  'price',
  'currency',
  'price seen on',
  'left over (g)',
  'left over until',
  'note',
  'mind',
] as const;

/**
 * The shopping list as a table for other programs: one record for each kind of pack of a food, one for a food without
 * packs; what is in the kitchen stands in it too, with nothing to buy. Unknown is empty, never 0. Grams with one
 * decimal, prices in the currency's main unit.
 */
export function shoppingCsv(list: ShoppingList): string {
  const shops = new Map(list.shops.map(({ id, name }) => [id, name]));
  const records = list.items.flatMap((item) => {
    const packs: readonly (PackCount | null)[] = item.packs.length > 0 ? item.packs : [null];
    return packs.map((pack, at) => record(item, pack, at === 0, shops));
  });
  const unmatched = list.unmatched.map(({ segment, line }) =>
    HEAD.map((name) =>
      name === 'food' ? line : name === 'mind' ? `no food chosen: ${segment}` : '',
    ),
  );
  return csvText([...HEAD], [...records, ...unmatched]);
}

/** Amounts of the food stand in its first record, so that a column may be added up. */
function record(
  item: ShoppingItem,
  pack: PackCount | null,
  isFirst: boolean,
  shops: ReadonlyMap<string, string>,
): readonly string[] {
  const once = (text: string) => (isFirst ? text : '');
  const { minor, currency } = pack ?? { minor: null, currency: null };
  const mind = [
    ...item.open.map((line) => `amount open: ${line}`),
    ...item.notCounted.map((reason) => `not counted: ${reason}`),
    ...(item.why === null ? [] : [item.why]),
    ...item.asks,
    ...(isInStock(item) ? ['in the kitchen'] : []),
  ];
  return [
    SECTION_WORDS[item.section],
    item.name,
    once(grams(item.needMg)),
    once(item.needMl === null ? '' : printTo(item.needMl, 0.1)),
    once(item.stockMg > 0 ? grams(item.stockMg) : ''),
    once(grams(item.buyMg)),
    shops.get(pack?.shopId ?? '') ?? '',
    pack?.name ?? '',
    pack === null ? '' : String(pack.count),
    grams(pack?.netMg ?? null),
    pack?.netMl == null ? '' : printTo(pack.netMl, 0.1),
    minor === null || currency === null ? '' : minorText(minor, currency),
    currency ?? '',
    pack?.seenOn ?? '',
    once(grams(item.leftover?.mg ?? null)),
    once(item.leftover?.lastDay ?? ''),
    once(item.notes.join('; ')),
    once(mind.join('; ')),
  ];
}

function grams(mg: number | null): string {
  return mg === null ? '' : printTo(mg / 1000, 0.1);
}
