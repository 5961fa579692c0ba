import { lastBefore, markBefore } from './context';
import type { Quantity, Said } from './quantity';
import type { Text } from './text';

/** What a mass without food or nutrient says of the finished dish, where it was weighed. */
export function finishedOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  if (quantity.unit?.of !== 'mass' || quantity.unit.unit === 'mg' || quantity.unit.unit === 'µg')
    return null;
  const { begin } = quantity;
  if (lastBefore(text, begin, 'self', 4)) return null;
  const weighed = lastBefore(text, quantity.begin, 'weigh', 10);
  const subject = subjectFood(text, quantity);
  if (subject)
    return { kind: 'amount', unit: quantity.unit.unit, scope: subject.scope, food: subject.food };
  const portion = text.marks.at('thing', quantity.unitEnd)?.role.as === 'portion';
  if (portion) return { kind: 'amount', unit: quantity.unit.unit, scope: 'portion' };
  if (isPartWeighed(text, quantity)) return { kind: 'amount', unit: quantity.unit.unit };
  const after =
    before?.said?.kind === 'amount' &&
    before.said.food === undefined &&
    quantity.begin - before.end < 10;
  return weighed || after ? { kind: 'amount', unit: quantity.unit.unit } : null;
}

/** 'each fillet is 180 grams': the piece is the food. */
function subjectFood(
  text: Text,
  quantity: Quantity,
): { readonly scope: 'each'; readonly food: string } | null {
  const copula = markBefore(text, quantity, 'copula', 1);
  const scope = copula && text.marks.before('scope', copula.from);
  if (scope?.role.scope !== 'each') return null;
  const food = text.food(scope.to - 1);
  return food?.to === scope.to ? { scope: 'each', food: food.name } : null;
}

/** From so many grams on a part is weighed; below, a nutrient may be meant. */
const HEAVY = 100;

/** 'each patty is a quarter pound', 'a portion is 320 grams'. */
function isPartWeighed(text: Text, quantity: Quantity): boolean {
  const copula = markBefore(text, quantity, 'copula', 1);
  const scope = copula && text.marks.before('scope', copula.from)?.role.scope;
  if (scope !== 'each' && scope !== 'portion' && scope !== 'slice') return false;
  return quantity.unit?.unit !== 'g' || quantity.low >= HEAVY;
}
