import type { Section } from '#lib/foods/food';
import type { ShelfUnits, StockAnswer } from '#lib/episode/stock-schema';
import { needsBuying } from '#lib/shopping/list-cost';
import type { Cost, PackCount, ShoppingItem, ShoppingList } from '#lib/shopping/list-types';
import { shelfAmount } from '#lib/shopping/shelf-amount';
import { printCount, printGrams, printTo } from '#lib/units/print';
import { priceText } from '#lib/units/print-money';

export { gramsUp } from '#lib/shopping/shelf-amount';
export { priceText } from '#lib/units/print-money';

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
export function buyText(item: ShoppingItem, units: ShelfUnits = 'metric'): string {
  if (item.packs.length > 0) {
    const packs = item.packs.map((pack) => packText(pack, units)).join(' + ');
    return item.buyMg !== null && item.needMl !== null ? `${packs} and ${ml(item.needMl)}` : packs;
  }
  if (item.buyMg === null && item.needMl === null) {
    return item.answer?.is === 'have' ? 'in stock' : 'amount open';
  }
  if (item.buyMg === 0 && item.needMl === null) return 'in stock';
  return amounts(item.buyMg === 0 ? null : item.buyMg, item.needMl, units);
}

/** One kind of pack: `'2 × Fjordlea skyr 450 g'`, `'350 g Bananas, loose'`. */
export function packText(pack: PackCount, units: ShelfUnits = 'metric'): string {
  if (pack.looseMg !== null) return `${shelfAmount(pack.looseMg, units)} ${pack.name}`;
  return `${printCount(pack.count)} × ${pack.name}`;
}

/** Whether nothing of a food has to be bought: all of its need is known and in stock, or the person has it. */
export function isInStock(item: ShoppingItem): boolean {
  return item.answer?.is === 'have' || !needsBuying(item);
}

/** Where the amount comes from: `need 794 g, in stock 400 g`. */
export function needText(item: ShoppingItem, units: ShelfUnits = 'metric'): string {
  const need = amounts(item.needMg, item.needMl, units);
  const said = answerText(item);
  const stock = item.stockMg > 0 ? `in stock ${inUnits(item.stockMg, units)}` : said;
  return [need && `need ${need}`, stock].filter(Boolean).join(', ');
}

/** What the person said of a food at home: `'not enough, you said on 2026-12-05: a handful'`. */
export function answerText({ answer }: Pick<ShoppingItem, 'answer'>): string {
  if (!answer) return '';
  const remark = answer.remark === '' ? '' : `: ${answer.remark}`;
  return `${ANSWER_WORDS[answer.is]}, you said on ${answer.on}${remark}`;
}

export const ANSWER_WORDS: Readonly<Record<StockAnswer, string>> = {
  have: 'have it',
  notEnough: 'not enough',
  none: 'don’t have it',
};

function inUnits(mg: number, units: ShelfUnits): string {
  return units === 'us' ? shelfAmount(mg, units) : `${printGrams(mg)} g`;
}

function amounts(mg: number | null, volumeMl: number | null, units: ShelfUnits): string {
  return [
    ...(mg === null ? [] : [shelfAmount(mg, units)]),
    ...(volumeMl === null ? [] : [ml(volumeMl)]),
  ].join(' + ');
}

function ml(volumeMl: number): string {
  return `${printTo(volumeMl, 1)} ml`;
}

/**
 * A sum with what is to be said of it: `'USD 63.40 (62.90 to 63.90, as the oldest price is of 2026-11-02)'`, `'at least
 * USD 12.00'`.
 */
export function costText({ minor, currency, low, high, atLeast, oldest }: Cost): string {
  const sum = `${atLeast ? 'at least ' : ''}${priceText(atLeast ? low : minor, currency)}`;
  if (low === high) return sum;
  const range = atLeast ? '' : `${priceText(low, currency)} to ${priceText(high, currency)}, `;
  return `${sum} (${range}the oldest price is of ${oldest})`;
}

/** The list as plain text: by section, a box to tick before each, line feeds only. */
export function shoppingText(list: ShoppingList): string {
  const { shelfUnits } = list;
  const lines = [`SHOPPING: ${list.episode}`];
  const last = list.toDate === list.forDate ? '' : ` to ${list.toDate ?? ''}`;
  if (list.forDate) lines.push(`For filming on ${list.forDate}${last}`);
  let section: Section | null = null;
  for (const item of list.items.filter((each) => !isInStock(each))) {
    if (item.section !== section) lines.push('', SECTION_WORDS[item.section].toUpperCase());
    section = item.section;
    const need = needText(item, shelfUnits);
    lines.push(`[ ] ${item.name}: ${buyText(item, shelfUnits)}${need === '' ? '' : ` (${need})`}`);
    for (const note of item.notes) lines.push(`      ${note}`);
    for (const open of item.open) lines.push(`      amount open: ${open}`);
    for (const reason of item.notCounted) lines.push(`      not counted: ${reason}`);
    if (item.why) lines.push(`      ${item.why}`);
    for (const asked of item.asks) lines.push(`      ${asked}`);
  }
  if (list.unmatched.length > 0) {
    lines.push('', 'NO FOOD CHOSEN YET');
    for (const { segment, line } of list.unmatched) lines.push(`[ ] ${line} (${segment})`);
  }
  const inStock = list.items.filter(isInStock);
  if (inStock.length > 0) {
    lines.push('', 'ALREADY IN THE KITCHEN');
    for (const item of inStock) lines.push(`    ${item.name}: ${needText(item, shelfUnits)}`);
  }
  const costs = [...(list.cost ? [list.cost] : []), ...list.otherCosts];
  if (costs.length > 0) lines.push('', ...costs.map((cost) => `Cost: ${costText(cost)}`));
  return `${lines.join('\n')}\n`;
}
