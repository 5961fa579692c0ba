import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ALPHABET, CODE_LENGTH, codeShown, readCode } from '#lib/door/code-text';
import {
  expiresAtMs,
  makePairingCode,
  standing,
  TRIES,
  tryPairingCode,
  type PairingCode,
} from '#lib/door/pairing-code';

const NOW = Date.UTC(2026, 10, 25, 12);
const code: PairingCode = { code: 'ACDEFGHJ', madeAtMs: NOW, wrongTries: 0, used: false };

/** Bytes from a list, over and over. */
const bytesOf = (list: readonly number[]) => {
  let at = 0;
  return (count: number) => Uint8Array.from({ length: count }, () => list[at++ % list.length] ?? 0);
};

describe('a code', () => {
  test('has eight characters of an alphabet without look-alikes', () => {
    expect(new Set(ALPHABET).size).toBe(ALPHABET.length);
    for (const pair of ['0O', '1I', '1L', '2Z', '5S', '8B', 'UV']) {
      expect([...pair].every((each) => ALPHABET.includes(each))).toBe(false);
    }
    fc.assert(
      fc.property(fc.array(fc.nat(255), { minLength: 32, maxLength: 64 }), (list) => {
        fc.pre(list.some((byte) => byte < 240));
        const made = makePairingCode(bytesOf(list), NOW);
        expect(made.code).toHaveLength(CODE_LENGTH);
        expect([...made.code].every((each) => ALPHABET.includes(each))).toBe(true);
      }),
    );
  });

  test('favours no character: of all bytes each makes the same number', () => {
    const counts = new Map<string, number>();
    const all = Array.from({ length: 256 }, (_, byte) => byte);
    const random = bytesOf(all);
    // 240 of 256 bytes make a character, and eight codes of them are 30 rounds of the alphabet's ten.
    for (let n = 0; n < 240 / CODE_LENGTH; n += 1) {
      for (const each of makePairingCode(random, NOW).code) {
        counts.set(each, (counts.get(each) ?? 0) + 1);
      }
    }
    expect([...counts.values()]).toEqual(Array.from({ length: ALPHABET.length }, () => 10));
  });

  test.each(['acdefghj', 'ACDE FGHJ', ' acde-fghj ', 'ACDE–FGHJ'])(
    '%s is read as typed',
    (typed) => {
      expect(readCode(typed)).toBe(code.code);
      expect(tryPairingCode(code, typed, NOW).answer).toEqual({ kind: 'right' });
    },
  );

  test('as shown reads back the same', () => {
    expect(codeShown(code.code)).toBe('ACDE FGHJ');
    expect(readCode(codeShown(code.code))).toBe(code.code);
  });
});

describe('a code lets in', () => {
  test('one device, once', () => {
    const first = tryPairingCode(code, 'ACDEFGHJ', NOW + 1000);
    expect(first.answer).toEqual({ kind: 'right' });
    const second = tryPairingCode(first.code, 'ACDEFGHJ', NOW + 2000);
    expect(second.answer).toEqual({ kind: 'closed', why: 'used' });
  });

  test.each([
    ['the moment it is made', 0, 'open'],
    ['a millisecond before ten minutes', 599_999, 'open'],
    ['at ten minutes', 600_000, 'expired'],
    ['before it was made: the clock was set back', -1, 'expired'],
  ] as const)('%s: %i ms: %s', (_, after, stands) => {
    expect(standing(code, NOW + after)).toBe(stands);
    const { answer } = tryPairingCode(code, 'ACDEFGHJ', NOW + after);
    expect(answer.kind).toBe(stands === 'open' ? 'right' : 'closed');
    expect(expiresAtMs(code)).toBe(NOW + 600_000);
  });

  test('nobody after five wrong tries, not even with the right code', () => {
    let now: PairingCode | null = code;
    const answers = ['', 'ACDEFGHK', 'ACDEFGH', 'ACDEFGHJJ', 'x'].map((typed) => {
      const tried = tryPairingCode(now, typed, NOW);
      now = tried.code;
      return tried.answer;
    });
    expect(answers).toEqual([
      ...[4, 3, 2, 1].map((left) => ({ kind: 'wrong', left })),
      { kind: 'closed', why: 'void' },
    ]);
    expect(answers).toHaveLength(TRIES);
    expect(tryPairingCode(now, 'ACDEFGHJ', NOW).answer).toEqual({ kind: 'closed', why: 'void' });
  });

  test('the fifth try, if it is right', () => {
    const last = { ...code, wrongTries: 4 };
    expect(tryPairingCode(last, 'ACDEFGHJ', NOW).answer).toEqual({ kind: 'right' });
  });

  test('nobody where there is none', () => {
    expect(tryPairingCode(null, '', NOW)).toEqual({
      code: null,
      answer: { kind: 'closed', why: 'none' },
    });
  });
});
