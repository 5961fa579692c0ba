import type { Section } from '#lib/foods/food';
import { SECTIONS } from '#lib/foods/food-lists';

/** All sections: those named in their order, then the others. */
export function sectionsInOrder(named: readonly Section[]): readonly Section[] {
  return [...new Set([...named, ...SECTIONS])];
}

/**
 * The order of walking with one section a step earlier or later; as it was where it is the first or the last.
 * @example movedSection([], 'bakery', 'up')[0] // 'bakery'
 */
export function movedSection(
  named: readonly Section[],
  section: Section,
  to: 'up' | 'down',
): readonly Section[] {
  const order = [...sectionsInOrder(named)];
  const at = order.indexOf(section);
  const other = order[at + (to === 'up' ? -1 : 1)];
  if (other === undefined) return order;
  return order.map((each) => (each === section ? other : each === other ? section : each));
}
