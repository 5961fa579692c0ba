import type { Quantity } from '../numbers/quantity';
import { isDish } from '../words/dish-word';
import type { Text } from '../words/text';

/** Tokens from one amount of a list to the next. */
const GAP = 14;
/** Words before 'sugar' that are part of its name. */
const NAME = 3;

/**
 * Grams of sugar or salt in the middle of a list of foods are what goes in, and no nutrient: 'two hundred grams of flour,
 * eighty grams of sugar, ten grams of butter'. At an end of the list only where the name says which sugar it is, as
 * '30 g of chocolate, 12 g of sugar' may be what is in it.
 */
export function sayFoodsNotNutrients(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    const { said, noun, killed, unit, begin, end } = quantity;
    if (said?.kind !== 'nutrient' || killed !== null || !noun || unit?.of !== 'mass') return;
    if (said.scope !== undefined && said.scope !== 'ingredient') return;
    const name = foodAt(text, noun.from, noun.to);
    if (name === null || isDish(text, name.name)) return;
    const [before, next] = [quantities[index - 1], quantities[index + 1]];
    const behind = before !== undefined && isOfFood(before) && begin - before.end <= GAP;
    const ahead =
      next !== undefined && isOfFood(next) && next.begin - Math.max(end, noun.to) <= GAP;
    // 'rye flour, water, nine grams of salt'
    const third = quantities[index - 2];
    const salted = noun.nutrient === 'salt' && behind && third !== undefined && isOfFood(third);
    // 'I'm using fifteen grams of sugar and two kilos of tomatoes'
    const used = ahead && text.marks.before('use', begin) !== undefined;
    const listed = behind && isLine(text, before) && isLine(text, quantity);
    const middle = (behind && ahead) || ((behind || ahead) && name.own);
    if (!middle && !salted && !used && !listed) return;
    quantity.said = { kind: 'amount', unit: unit.unit, food: name.name };
    if (noun.from >= quantity.end) quantity.end = noun.to;
    quantity.noun = null;
  });
}

/** Whether an amount with its food has a line of its own, as in a list of ingredients. */
function isLine({ spoken, tokens, food }: Text, { begin, end, noun }: Quantity): boolean {
  const to = Math.max(end, noun?.to ?? 0, food(end)?.to ?? 0);
  const first = tokens[begin - 1]?.kind !== 'word' && tokens[begin - 1]?.kind !== 'number';
  return !spoken && first && (tokens[to]?.kind ?? 'line') === 'line';
}

const isOfFood = ({ said, killed }: Quantity) =>
  killed === null && said?.kind === 'amount' && said.food !== undefined;

/** The food that a noun is too; `own`: with a word before that says which: 'caster sugar'. */
function foodAt(text: Text, from: number, to: number) {
  for (let at = Math.max(0, from - NAME); at <= from; at += 1) {
    const food = text.food(at);
    if (food && food.to >= to && food.from <= from)
      return { name: food.name, own: food.from < from };
  }
  return null;
}
