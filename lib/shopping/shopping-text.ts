import type { Section } from '#lib/foods/food';
import type { ShoppingItem, ShoppingList } from '#lib/shopping/shopping-list';
import { printCount, printGrams, printTo } from '#lib/units/print';

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
 * How much to buy, in words: packs where their size is known, else grams or millilitres.
 * `buyText(item)` → `'2 × Fjordlea skyr 450 g'`, `'394 g'`, `'in stock'`, `'amount open'`.
 */
export function buyText(item: ShoppingItem): string {
  if (item.packs) return `${printCount(item.packs.count)} × ${item.packs.name}`;
  if (item.buyMg !== null) return item.buyMg === 0 ? 'in stock' : gramsToBuy(item.buyMg);
  if (item.needMl !== null) return `${printTo(item.needMl, 1)} ml`;
  return 'amount open';
}

/** Grams to buy are rounded up, so that the list never falls short by rounding. */
function gramsToBuy(mg: number): string {
  return mg < 10_000 ? `${printGrams(mg)} g` : `${printCount(Math.ceil(mg / 1000))} g`;
}

/** Where the amount comes from: `need 794 g, in stock 400 g`. */
export function needText(item: ShoppingItem): string {
  if (item.needMg === null) return item.needMl === null ? '' : `need ${printTo(item.needMl, 1)} ml`;
  const need = `need ${printGrams(item.needMg)} g`;
  return item.stockMg > 0 ? `${need}, in stock ${printGrams(item.stockMg)} g` : need;
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
  for (const item of list.items.filter((each) => each.buyMg !== 0)) {
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
  const inStock = list.items.filter((item) => item.buyMg === 0);
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
