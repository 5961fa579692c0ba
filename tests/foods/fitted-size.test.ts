import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fittedSize } from '#lib/foods/fitted-size';

test('a picture fits, is never made larger, and keeps its shape to a pixel', () => {
  expect(fittedSize({ width: 4000, height: 3000 }, 1600)).toEqual({ width: 1600, height: 1200 });
  expect(fittedSize({ width: 40, height: 20 }, 1600)).toEqual({ width: 40, height: 20 });
  const side = fc.integer({ min: 1, max: 12_000 });
  fc.assert(
    fc.property(side, side, fc.integer({ min: 1, max: 4000 }), (width, height, longest) => {
      const fitted = fittedSize({ width, height }, longest);
      expect(Math.max(fitted.width, fitted.height)).toBeLessThanOrEqual(longest);
      expect(fitted.width).toBeLessThanOrEqual(width);
      expect(fitted.width).toBeGreaterThanOrEqual(1);
      const by = Math.min(1, longest / Math.max(width, height));
      expect(Math.abs(fitted.height - Math.max(1, height * by))).toBeLessThanOrEqual(0.5);
    }),
  );
});
