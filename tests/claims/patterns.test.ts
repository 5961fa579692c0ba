import { describe, expect, it } from 'vitest';
import { ENGLISH } from '#lib/claims/english/english';

const { patterns } = ENGLISH;

describe('the turns of speech of a language', () => {
  it.each([
    ['severalDishes', 'Everything I eat in a day', 'One tray of flapjacks'],
    ['fan', 'Bake at 180, convection', 'Bake at 180, top and bottom'],
    ['noFan', 'without the fan', 'with the fan on'],
    ['noFan', 'fan switched off', 'fan of 180'],
    ['slices', 'one of eight slices', 'a barley bowl'],
    ['endOfNumber', ' of it and', ' of it in a deep bowl'],
    ['takenByNumber', ' 115 calories in ', ' a deep bowl has '],
  ] as const)('%s: “%s”, and not “%s”', (name, yes, no) => {
    expect([yes, no].map((text) => patterns[name].test(text))).toEqual([true, false]);
  });

  it('keep no place from one text to the next', () => {
    expect(Object.values(patterns).filter(({ global, sticky }) => global || sticky)).toEqual([]);
  });
});
