import type { Section } from '#lib/foods/food';
import type { ShoppingItem, ShoppingList } from '#lib/shopping/shopping-list';
import { printCount, printGrams, printTo, settled } from '#lib/units/print';

/** The words over each part of the shop. */
export const SECTION_WORDS: Readonly<Record<Section, string>> = {
  produce: 'Fruit and vegetables',
  bakery: 'Bread',
  meatAndFish: 'Meat and fish',
  dairyAndEggs: 'Dairy and eggs',
  frozen: 'Frozen',
  tinsAndJars: 'Tins and jars',
  dryGoods: 'Grains, pasta, pulses',
  spicesAndBaking: 'Spices and baking',
  oilsAndSauces: 'Oils and sauces',
  drinks: 'Drinks',
  other: 'Other',
};

/**
 * How much to buy, in words: packs where their size is known, else grams or millilitres, both where a part
 * of the need is known by volume only.
 * `buyText(item)` → `'2 × Fjordlea skyr 450 g'`, `'394 g'`, `'in stock'`, `'amount open'`.
 */
export function buyText(item: ShoppingItem): string {
  if (item.packs) {
    const packs = `${printCount(item.packs.count)} × ${item.packs.name}`;
    return item.buyMg !== null && item.needMl !== null ? `${packs} and ${ml(item.needMl)}` : packs;
  }
  if (item.buyMg === null && item.needMl === null) return 'amount open';
  if (item.buyMg === 0 && item.needMl === null) return 'in stock';
  return amounts(item.buyMg === 0 ? null : item.buyMg, item.needMl);
}

/** Whether nothing of a food has to be bought: all of its need is known, and in stock. */
export function isInStock(item: ShoppingItem): boolean {
  return item.buyMg === 0 && item.needMl === null && item.open.length === 0;
}

/** Where the amount comes from: `need 794 g, in stock 400 g`. */
export function needText(item: ShoppingItem): string {
  const need = amounts(item.needMg, item.needMl);
  if (need === '') return '';
  return item.stockMg > 0 ? `need ${need}, in stock ${printGrams(item.stockMg)} g` : `need ${need}`;
}

function amounts(mg: number | null, volumeMl: number | null): string {
  return [...(mg === null ? [] : [gramsUp(mg)]), ...(volumeMl === null ? [] : [ml(volumeMl)])].join(
    ' + ',
  );
}

/** What is needed and bought is rounded up, so that the list never falls short by rounding. */
export function gramsUp(mg: number): string {
  return mg < 10_000 ? `${printGrams(mg)} g` : `${printCount(Math.ceil(settled(mg / 1000)))} g`;
}

function ml(volumeMl: number): string {
  return `${printTo(volumeMl, 1)} ml`;
}

/** A price in its currency's code, as in `USD 23.40`; minor units are hundredths here. */
export function priceText(minor: number, currency: string): string {
  return `${currency} ${(minor / 100).toFixed(2)}`;
}

/** The list as plain text: by section, a box to tick before each, line feeds only. */
export function shoppingText(list: ShoppingList): string {
  const lines = [`SHOPPING: ${list.episode}`];
  if (list.forDate) lines.push(`For filming on ${list.forDate}`);
  let section: Section | null = null;
  for (const item of list.items.filter((each) => !isInStock(each))) {
    if (item.section !== section) lines.push('', SECTION_WORDS[item.section].toUpperCase());
    section = item.section;
    const need = needText(item);
    lines.push(`[ ] ${item.name}: ${buyText(item)}${need === '' ? '' : ` (${need})`}`);
    for (const open of item.open) lines.push(`      amount open: ${open}`);
    for (const reason of item.notCounted) lines.push(`      not counted: ${reason}`);
  }
  if (list.unmatched.length > 0) {
    lines.push('', 'NO FOOD CHOSEN YET');
    for (const { segment, line } of list.unmatched) lines.push(`[ ] ${line} (${segment})`);
  }
  const inStock = list.items.filter(isInStock);
  if (inStock.length > 0) {
    lines.push('', 'ALREADY IN THE KITCHEN');
    for (const item of inStock) lines.push(`    ${item.name}: ${needText(item)}`);
  }
  if (list.cost) {
    const { minor, currency, atLeast } = list.cost;
    lines.push('', `Cost: ${atLeast ? 'at least ' : ''}${priceText(minor, currency)}`);
  }
  return `${lines.join('\n')}\n`;
}
