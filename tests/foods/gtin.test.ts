import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDigit, gtinFault, readGtin } from '#lib/foods/gtin';

describe('the check digit of a GTIN', () => {
  // The worked example of GS1's own page "How to calculate a check digit manually", the calculation of the GS1
  // General Specifications, section 7.9.1: 6×1 + 2×3 + 9×1 + 1×3 + 0 + 4×3 + 1×1 + 5×3 + 0 + 0 + 2×1 + 1×3 = 57.
  test('is that of the worked example of the standard', () => {
    expect(checkDigit('629104150021')).toBe('3');
  });

  // [number, its length] Numbers that the GS1 General Specifications print as examples (from memory: their
  // figures of EAN-8, UPC-A, EAN-13 and ITF-14 symbols), and the worked example above.
  const PRINTED: [string, number][] = [
    ['40170725', 8],
    ['614141000036', 12],
    ['614141999996', 12],
    ['6291041500213', 13],
    ['9501101530003', 13],
    ['10614141000415', 14],
    ['09501101530003', 14],
  ];
  test.each(PRINTED)('%s of %d digits is right', (typed, length) => {
    expect(typed).toHaveLength(length);
    expect(readGtin(typed)).toEqual({ kind: 'right', gtin14: typed.padStart(14, '0') });
    expect(gtinFault(typed)).toBeNull();
  });

  test('any one digit mistyped is found', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PRINTED),
        fc.nat(13),
        fc.integer({ min: 1, max: 9 }),
        ([typed], place, off) => {
          const at = place % typed.length;
          const other = String((Number(typed[at]) + off) % 10);
          const wrong = typed.slice(0, at) + other + typed.slice(at + 1);
          expect(readGtin(wrong).kind).toBe('wrongCheckDigit');
        },
      ),
    );
  });

  test('zeros in front change nothing: the same product in every length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_999 }), (number) => {
        const before = String(number).padStart(7, '0');
        const whole = before + checkDigit(before);
        const read = [
          whole,
          whole.padStart(12, '0'),
          whole.padStart(13, '0'),
          whole.padStart(14, '0'),
        ];
        expect(new Set(read.map((each) => JSON.stringify(readGtin(each)))).size).toBe(1);
      }),
    );
  });

  test('a wrong one is kept as typed, with the digit that would be right', () => {
    expect(readGtin('6291041500214')).toEqual({
      kind: 'wrongCheckDigit',
      typed: '6291041500214',
      expected: '3',
    });
    expect(gtinFault('6291041500214')).toContain('by its other digits it would be 3');
  });

  test.each([
    ['629104150021', 'wrongCheckDigit'],
    ['62910415002', 'wrongLength'],
    ['123456789012345', 'wrongLength'],
    ['', 'notDigits'],
    ['62910415oo213', 'notDigits'],
    ['6291041500213\n', 'right'],
    ['6 291041-500213', 'right'],
    ['٦٢٩١٠٤١٥٠٠٢١٣', 'notDigits'],
  ])('%j is %s', (typed, kind) => {
    expect(readGtin(typed).kind).toBe(kind);
  });
});
