import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DROPPABLE, whatToDrop, type Droppable } from '#lib/publish/description/what-to-drop';

/** A text of parts with lengths of their own, and a blank line between any two that are there. */
const lengthOf = (sizes: Readonly<Record<string, number>>) => (gone: readonly Droppable[]) => {
  const left = Object.entries(sizes).filter(([part]) => !gone.includes(part as Droppable));
  return left.reduce((sum, [, size]) => sum + size, 0) + 2 * Math.max(0, left.length - 1);
};

const sizes = fc.record(
  {
    base: fc.integer({ min: 1, max: 3000 }),
    ...Object.fromEntries(DROPPABLE.map((part) => [part, fc.integer({ min: 1, max: 1500 })])),
  },
  { requiredKeys: ['base'] },
) as fc.Arbitrary<Readonly<Record<string, number>>>;

test('nothing is named where the text fits', () => {
  expect(whatToDrop(lengthOf({ base: 100 }), 100)).toEqual([]);
});

test('what each saves is what the text is shorter by without it, and those that are needed make it fit', () => {
  fc.assert(
    fc.property(sizes, fc.integer({ min: 100, max: 8000 }), (of, limit) => {
      const length = lengthOf(of);
      const drops = whatToDrop(length, limit);
      fc.pre(length([]) > limit);
      for (const { part, saves } of drops) expect(length([part])).toBe(length([]) - saves);
      expect(drops.map(({ part }) => part)).toEqual(DROPPABLE.filter((part) => part in of));
      const needed = drops.filter((drop) => drop.needed);
      const without = length(needed.map(({ part }) => part));
      expect(needed.at(-1)?.left ?? length([])).toBe(without);
      // Either it fits without them, or everything that may go is among them.
      if (without > limit) expect(needed).toHaveLength(drops.length);
      // None of them is asked for in vain.
      const oneLess = needed.slice(0, -1).map(({ part }) => part);
      if (needed.length > 0) expect(length(oneLess)).toBeGreaterThan(limit);
    }),
  );
});
