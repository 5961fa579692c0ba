import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changedLines } from '#lib/publish/changed-lines';

const text = fc
  .array(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1, maxLength: 12 })
  .map((all) => all.join('\n'));

test('of the same text there are none', () => {
  fc.assert(
    fc.property(text, (of) => {
      expect(changedLines(of, of)).toEqual([]);
    }),
  );
});

test('a text without those of then is the other without those of now', () => {
  fc.assert(
    fc.property(text, text, (then, now) => {
      const changes = changedLines(then, now);
      const without = (of: string, side: 'then' | 'now') => {
        const gone = changes.filter((each) => each.side === side).map((each) => each.text);
        // Taken out in order: what is left is what both have.
        return of.split('\n').length - gone.length;
      };
      expect(without(then, 'then')).toBe(without(now, 'now'));
      const counts = (side: 'then' | 'now') => changes.filter((each) => each.side === side).length;
      // No more than if nothing were in common.
      expect(counts('then')).toBeLessThanOrEqual(then.split('\n').length);
    }),
  );
});

test('a line that changed is told on both sides, in their order', () => {
  expect(changedLines('a\nb\nc', 'a\nx\nc')).toEqual([
    { side: 'then', text: 'b' },
    { side: 'now', text: 'x' },
  ]);
});
