import type { OnScale } from '#lib/shoot/scale-entries';

/** How a reading is made: what the scale holds it against, and what comes off. */
export type HowWeighed = Pick<OnScale, 'way' | 'containerMg'>;

/**
 * How the next reading is made after one was kept: as it was chosen for that one. The way never changes by itself,
 * since a number that is held against another one is wrong without looking so.
 * @example nextHow({ way: 'direct', containerMg: 0 }) // by itself again, never onto what is there
 */
export const nextHow = ({ way, containerMg }: HowWeighed): HowWeighed => ({ way, containerMg });

/** Another way: a container that comes off belongs to what is weighed by itself. */
export function anotherWay(way: OnScale['way'], before: HowWeighed): HowWeighed {
  return { way, containerMg: way === before.way ? before.containerMg : 0 };
}

/**
 * The way of another thing on the scale: the one that is chosen, where it can be weighed so. Only ingredients go on
 * top of each other.
 */
export function wayFor(of: OnScale['of'], way: OnScale['way']): OnScale['way'] {
  return way === 'total' && of !== 'raw' ? 'direct' : way;
}
