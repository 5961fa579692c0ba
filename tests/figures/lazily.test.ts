import { describe, expect, it } from 'vitest';
import { lazily } from '#lib/figures/lazily';

describe('lazily', () => {
  it('works a property out when it is first read, and once, null as well', () => {
    const asked: string[] = [];
    const dish = lazily(
      { title: 'Stew' },
      {
        whole: () => asked.push('whole'),
        per100g: () => {
          asked.push('per100g');
          return null;
        },
      },
    );
    expect(asked).toEqual([]);
    expect([dish.whole, dish.whole, dish.per100g, dish.per100g]).toEqual([1, 1, null, null]);
    expect(asked).toEqual(['whole', 'per100g']);
  });

  it('gives properties that are listed, copied and written like all others', () => {
    const make = (grams: number) => lazily({ title: 'Stew' }, { grams: () => grams });
    expect(Object.keys(make(1))).toEqual(['title', 'grams']);
    expect({ ...make(1) }).toEqual({ title: 'Stew', grams: 1 });
    expect(JSON.stringify(make(1))).toBe('{"title":"Stew","grams":1}');
    expect(make(1)).toEqual(make(1));
    expect(make(1)).not.toEqual(make(2));
  });

  it('shares the accessor of a name between all objects', () => {
    const getter = (of: object) => Object.getOwnPropertyDescriptor(of, 'grams')?.get;
    const [first, second] = [1, 2].map((grams) => lazily({}, { grams: () => grams }));
    expect(getter(first ?? {})).toBeDefined();
    expect(getter(first ?? {})).toBe(getter(second ?? {}));
  });
});
