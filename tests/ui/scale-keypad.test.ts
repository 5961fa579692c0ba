import { expect, test } from 'vitest';
import { afterKey } from '../../app/episodes/[id]/day/live/_scale/keypad';
import { readScaleGrams } from '#lib/units/scale-grams';

const typed = (keys: string) => [...keys].reduce(afterKey, '');

test('what the keypad types is what a scale can show', () => {
  expect(typed('252.5')).toBe('252.5');
  expect(typed('.5')).toBe('0.5');
  expect(typed('2..5')).toBe('2.5');
  expect(typed('007')).toBe('7');
  expect(typed('0.05')).toBe('0.05');
  expect(typed('1234567890')).toBe('123456789');
  for (const keys of ['252.5', '.5', '2..5', '007', '1000']) {
    expect(readScaleGrams(typed(keys))).not.toBeNull();
  }
});
