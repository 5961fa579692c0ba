import type { Quantity } from './quantity';
import type { Mention } from './scope-mentions';
import type { Text } from './text';

/** Gives a number the part that it was found to be said of, or of the dish, where the text says none. */
export function settle(text: Text, quantity: Quantity, mention: Mention | undefined): void {
  const { said } = quantity;
  if (!said || !['nutrient', 'amount', 'price'].includes(said.kind)) return;
  if (
    said.scope !== undefined &&
    !(said.scope === 'ingredient' && mention && winsOver(mention, quantity))
  )
    return;
  const { food, scope: _, ...rest } = said;
  const foodKept = food === undefined || said.scope === 'ingredient' ? {} : { food };
  const { partOf } = quantity;
  if (partOf !== undefined) quantity.fraction = true;
  const half =
    partOf === 1 / 2 ||
    (quantity.fraction && text.marks.at('times', quantity.from)?.role.of === 'that');
  const behind = mention && mention.mark.from >= quantity.end;
  if (partOf !== undefined && partOf !== 1 / 2 && said.kind === 'nutrient' && !behind) {
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
  const { context } = text;
  const known =
    context.form === 'title' ||
    context.dish !== undefined ||
    (context.dishes?.length ?? 0) > 0 ||
    said.dish !== undefined;
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

/** 'each' and 'per' right behind the number win over a food said before. */
function winsOver({ scope, mark }: Mention, { end }: Quantity): boolean {
  return (
    mark.from >= end &&
    mark.from - end <= 1 &&
    (scope === 'each' || scope === 'slice' || mark.role.link === 'counted')
  );
}
