import type { EditFacts } from '#lib/claims/edit-facts';
import type { Judged } from '#lib/claims/judged';

/**
 * Whether a price was said that a price in the pantry would decide: of a dish, or of the day, that has none yet. The
 * price of one food is held against no price, and of words about no dish nobody knows which.
 * @example lacksPrice({ statement: { kind: 'price', scope: 'portion', … }, place: { segmentId: 'a', … } }, NO_FACTS) // true
 */
export function lacksPrice(
  { statement, place }: Pick<Judged, 'statement' | 'place'>,
  { dishes, dayCost }: EditFacts,
): boolean {
  if (statement.kind !== 'price' || statement.scope === 'ingredient') return false;
  if (statement.scope === 'day') return dayCost === null;
  if (place.segmentId === null) return false;
  const facts = dishes.find(({ segmentId }) => segmentId === place.segmentId);
  return (facts?.cost ?? null) === null;
}
