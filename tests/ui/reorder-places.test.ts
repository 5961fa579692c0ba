import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orderOf, stepped } from '#lib/store/reorder-rows';
import { dropY, movedTo, placeUnder } from '../../app/_ui/reorder/order';

const ids = fc.uniqueArray(fc.string({ minLength: 1, maxLength: 3 }), { minLength: 1 });
const sorted = (list: readonly string[]) => [...list].sort();

describe('one member at another place', () => {
  test('stands there, and the others keep their order', () => {
    fc.assert(
      fc.property(ids, fc.nat(), fc.nat(), (list, which, place) => {
        const id = list[which % list.length] ?? '';
        const at = place % list.length;
        const moved = movedTo(list, id, at);
        expect(moved[at]).toBe(id);
        expect(moved.filter((each) => each !== id)).toEqual(list.filter((each) => each !== id));
      }),
    );
  });

  test('beyond an end is at the end; what is not in the list changes nothing', () => {
    expect(movedTo(['a', 'b', 'c'], 'a', 9)).toEqual(['b', 'c', 'a']);
    expect(movedTo(['a', 'b', 'c'], 'c', -1)).toEqual(['c', 'a', 'b']);
    expect(movedTo(['a'], 'x', 0)).toEqual(['a']);
  });
});

describe('a drop under a pointer', () => {
  // The second one is taller: its form may stand open.
  const extents = [
    { id: 'a', top: 0, bottom: 10 },
    { id: 'b', top: 10, bottom: 50 },
    { id: 'c', top: 50, bottom: 60 },
  ];

  test.each([
    ['a', 2, 0],
    ['a', 29, 0],
    ['a', 31, 1],
    ['a', 99, 2],
    ['c', 4, 0],
    ['c', 6, 1],
    ['b', 56, 2],
  ])('%s at %i px lands at place %i', (id, y, place) => {
    expect(placeUnder(extents, id, y)).toBe(place);
  });

  test('is drawn at the top of what it lands before, and at the end below the last', () => {
    expect(dropY(extents, 'a', 1)).toBe(50);
    expect(dropY(extents, 'a', 2)).toBe(60);
    expect(dropY(extents, 'c', 0)).toBe(0);
  });
});

describe('an order that was wanted elsewhere', () => {
  test('loses no row that is there and brings in none that is not', () => {
    fc.assert(
      fc.property(ids, ids, (present, wanted) => {
        const order = orderOf(present, wanted);
        expect(sorted(order)).toEqual(sorted(present));
        const asked = wanted.filter((id) => present.includes(id));
        expect(order.filter((id) => wanted.includes(id))).toEqual(asked);
      }),
    );
  });

  test('keeps a row that came meanwhile behind the one that it follows', () => {
    expect(orderOf(['a', 'new', 'b'], ['b', 'gone', 'a'])).toEqual(['b', 'a', 'new']);
    expect(orderOf(['new', 'a', 'b'], ['b', 'a'])).toEqual(['new', 'b', 'a']);
  });

  test('a step exchanges two neighbours, and there is none beyond an end', () => {
    expect(stepped(['a', 'b', 'c'], 'b', 'up')).toEqual(['b', 'a', 'c']);
    expect(stepped(['a', 'b', 'c'], 'b', 'down')).toEqual(['a', 'c', 'b']);
    const order = ['a', 'b'];
    expect(stepped(order, 'a', 'up')).toBe(order);
    expect(stepped(order, 'x', 'down')).toBe(order);
  });
});
