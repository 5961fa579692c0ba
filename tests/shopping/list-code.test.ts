import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { listName, readListCode, writeListCode } from '#lib/shopping/list-code';

const foodIds = fc.uniqueArray(fc.string({ minLength: 1, maxLength: 12 }), {
  minLength: 1,
  maxLength: 60,
});
const ticked = foodIds.chain((ids) =>
  fc.subarray(ids).map((some) => ({ ids: [...ids].sort(), some: new Set(some) })),
);
const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

describe('the code of a list that was carried along', () => {
  test('what was ticked comes back, typed in whatever way', () => {
    fc.assert(
      fc.property(ticked, ({ ids, some }) => {
        const code = writeListCode(ids, some);
        const ways = [code, code.toLowerCase(), code.replaceAll('-', ' '), ` ${code}\n`];
        for (const way of [...ways, code.replaceAll('0', 'O').replaceAll('1', 'l')]) {
          const read = readListCode(way, ids);
          expect(read).toEqual({ ok: true, ticked: ids.filter((id) => some.has(id)) });
        }
      }),
    );
  });

  test('one wrong character, and two neighbours in the wrong order, are always found', () => {
    fc.assert(
      fc.property(ticked, fc.nat(), fc.nat(30), ({ ids, some }, place, step) => {
        const code = writeListCode(ids, some).replaceAll('-', '');
        const at = place % code.length;
        const sign = SIGNS[(SIGNS.indexOf(code.charAt(at)) + 1 + step) % 32] ?? '';
        const wrong = code.slice(0, at) + sign + code.slice(at + 1);
        expect(readListCode(wrong, ids).ok).toBe(false);
        const [a, b] = [code.charAt(at), code.charAt(at + 1)];
        const turned = code.slice(0, at) + b + a + code.slice(at + 2);
        if (a !== b && b !== '') expect(readListCode(turned, ids).ok).toBe(false);
      }),
    );
  });

  test('whatever is pasted is read or refused in words', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), foodIds, (text, ids) => {
        const read = readListCode(text, ids);
        if (!read.ok) expect(read.message).toMatch(/^\S.{20,}[.]$/s);
      }),
    );
  });

  // [typed, what is said]
  const foods = ['bread', 'milk', 'skyr'];
  const code = writeListCode(foods, new Set(['milk']));
  const CASES: [string, RegExp][] = [
    ['', /Paste the code/],
    ['  - ', /Paste the code/],
    ['UUUU-UUU', /“U” stands in no code/],
    ['ABÇD-EFG', /“Ç” stands in no code/],
    [code.slice(0, -2), /too short: it has 5 characters, and this list’s has 7/],
    [`${code}0`, /too long: it has 8/],
    ['x'.repeat(5000), /far longer/],
    [writeListCode(['bread', 'milk'], new Set()), /of another list/],
    [writeListCode(Array.from('abcdefg'), new Set()), /of another list/],
  ];
  test.each(CASES)('%s', (typed, said) => {
    const read = readListCode(typed, foods);
    expect(read.ok ? '' : read.message).toMatch(said);
  });

  // FNV-1a of "a" in 32 bits is e40c292c (RFC 9923, appendix; from memory): its 12 upper bits over its 20 lower ones.
  test('the name of a list follows from its foods by FNV-1a', () => {
    const hash = 0xe40c292c;
    const folded = (hash ^ (hash >>> 20)) & 0xfffff;
    const expected = [15, 10, 5, 0].map((by) => SIGNS.charAt((folded >>> by) & 31)).join('');
    expect(listName(['a'])).toBe(expected);
  });
});
