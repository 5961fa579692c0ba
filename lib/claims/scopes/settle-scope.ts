import { isDish } from '../words/dish-word';
import type { Quantity } from '../numbers/quantity';
import type { Mention } from './scope-mentions';
import type { Text } from '../words/text';

/** Gives a number the part that it was found to be said of, or of the dish, where the text says none. */
export function settle(text: Text, quantity: Quantity, mention: Mention | undefined): void {
  const { said } = quantity;
  if (!said || !['nutrient', 'amount', 'price'].includes(said.kind)) return;
  if (
    said.scope !== undefined &&
    !(said.scope === 'ingredient' && mention && winsOver(text, mention, quantity))
  )
    return;
  const { food, scope: _, ...rest } = said;
  const itself = mention !== undefined && isItself(text, mention, food);
  const foodKept = food === undefined || said.scope === 'ingredient' || itself ? {} : { food };
  const { partOf } = quantity;
  if (partOf !== undefined) quantity.fraction = true;
  const half =
    partOf === 1 / 2 ||
    (quantity.fraction && text.marks.at('times', quantity.from)?.role.of === 'that');
  const behind = mention && mention.mark.from >= quantity.end;
  // 'the whole traybake is twice that'
  const led = mention && text.marks.at('copula', mention.mark.to)?.to === quantity.begin;
  const multiplied = led && partOf !== undefined && partOf > 1 && mention.scope === 'whole';
  if (
    partOf !== undefined &&
    partOf !== 1 / 2 &&
    said.kind === 'nutrient' &&
    !behind &&
    !multiplied
  ) {
    quantity.said = { ...said, scope: 'unknown' };
    return;
  }
  if (mention && half && mention.scope !== 'half' && mention.mark.from < quantity.begin) {
    const scope = mention.scope === 'unknown' ? 'unknown' : 'half';
    quantity.said = { ...rest, ...foodKept, scope };
    return;
  }
  if (mention) {
    const against =
      mention.scope === 'compared' && said.kind === 'nutrient'
        ? { against: mention.against ?? ('itsOwn' as const) }
        : {};
    const { dish, ...own } = rest;
    const ofDay = mention.scope === 'day' || mention.scope === 'soFar';
    const named = ofDay || dish === undefined ? {} : { dish };
    quantity.said = { ...own, ...named, ...foodKept, scope: mention.scope, ...against };
    return;
  }
  const known = said.dish !== undefined || isKnown(text) || isPointedAt(text, quantity);
  const finished = said.kind === 'amount' && food === undefined;
  const scope = half
    ? 'half'
    : finished
      ? 'whole'
      : known || said.kind !== 'nutrient'
        ? 'dish'
        : 'unknown';
  quantity.said = { ...rest, ...foodKept, scope };
}

/** 'one muffin weighs 85 g': what the part itself is called, and no food that goes in. */
function isItself({ tokens, language }: Text, { mark }: Mention, food: string | undefined) {
  const last = language.singular(tokens[mark.to - 1]?.folded ?? '');
  return food !== undefined && last === food.split(' ').at(-1);
}

/** Whether it is known which dish a text is about. */
function isKnown({ context, tokens }: Text): boolean {
  const { form, dish, dishes = [] } = context;
  if (form === 'title' || dish !== undefined || dishes.length > 0) return true;
  if (form !== 'description' && form !== 'card') return false;
  // A line of words alone before all others is the name of the dish.
  const line = tokens.findIndex(({ kind }) => kind === 'line');
  return line > 0 && tokens.slice(0, line).every(({ kind }) => kind !== 'number');
}

/** Tokens from a number to the word that points at the dish: '40 percent of the calories in this'. */
const POINTED = 7;

/** Whether a word points at a dish, before a number or right behind it. */
function isPointedAt({ tokens, language, pointedFrom }: Text, { begin, end }: Quantity): boolean {
  if (pointedFrom() < begin) return true;
  for (let at = end; at < end + POINTED && tokens[at]?.kind === 'word'; at += 1)
    if (language.claims.pointing.has(tokens[at]?.folded ?? '')) return true;
  return false;
}

/**
 * 'each' and 'per' right behind the number win over a food said before, and so does another's dish that the food is
 * part of the name of: 'the vending machine flapjack is'.
 */
function winsOver(text: Text, { scope, mark }: Mention, { begin, end, said }: Quantity): boolean {
  // 'the whole tomato salad is', where that is a dish
  const [, ...name] = (said?.food ?? '').split(' ');
  if (scope === 'whole' && mark.to <= begin && isDish(text, name.join(' '))) return true;
  if (scope === 'compared') {
    for (let at = mark.from; at < mark.to; at += 1) {
      const food = text.food(at);
      if (food && food.to <= mark.to && food.name === said?.food) return true;
    }
    return false;
  }
  // 'bread twelve pence a slice' is its own; 'the cheese adds forty cents a slice' is of the dish.
  // 'the dal came out at one pound ninety for the whole pot'
  const whole = scope === 'whole' && text.marks.at('serveTitle', mark.from)?.from === end;
  if (whole && said?.kind === 'price') return true;
  if (said?.kind === 'price' && !text.marks.lastIn('adds', begin - 2, begin)) return false;
  return (
    mark.from >= end &&
    mark.from - end <= 1 &&
    (scope === 'each' || scope === 'slice' || mark.role.link === 'counted')
  );
}
