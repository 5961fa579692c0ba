import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { targetSchema } from '#lib/episode/schema';
import type { Figure } from '#lib/figures/figure';
import { aboutTolerance, howFar, judgeLimit } from '#lib/figures/judge-limit';
import { aboutReach, verdictWords } from '#lib/figures/limit-words';

function figure(value: number, likely: number, more: Partial<Figure> = {}): Figure {
  return {
    nutrient: 'protein',
    value,
    low: value - 2 * likely,
    high: value + 2 * likely,
    likelyLow: value - likely,
    likelyHigh: value + likely,
    missing: [],
    provisional: [],
    sources: [],
    ...more,
  };
}
const atLeast = (value: number) => figure(value, 1, { high: null, likelyHigh: null });
const atMost = (value: number) => figure(value, 1, { low: null, likelyLow: null });
const open = figure(60, 1, { low: null, high: null, likelyLow: null, likelyHigh: null });

// The verdicts are the project's own definition; no source.
describe('a figure against a limit', () => {
  it.each([
    [figure(70, 3), 'atLeast', 67, 'met'],
    [figure(70, 3), 'atLeast', 68, 'cannotTell'],
    [figure(70, 3), 'atLeast', 72, 'cannotTell'],
    [figure(70, 3), 'atLeast', 74, 'missed'],
    [figure(70, 3), 'atMost', 73, 'met'],
    [figure(70, 3), 'atMost', 66, 'missed'],
    // About 70 g is 66.5 to 73.5.
    [figure(70, 3), 'about', 70, 'met'],
    [figure(72, 3), 'about', 70, 'cannotTell'],
    [figure(75, 3), 'about', 70, 'cannotTell'],
    [figure(77, 3), 'about', 70, 'missed'],
    [figure(63, 3), 'about', 70, 'missed'],
    [atLeast(70), 'atLeast', 69, 'met'],
    [atLeast(70), 'atLeast', 80, 'unknown'],
    [atLeast(70), 'atMost', 60, 'missed'],
    [atLeast(70), 'atMost', 80, 'unknown'],
    [atLeast(70), 'about', 70, 'unknown'],
    [atLeast(75), 'about', 70, 'missed'],
    [atMost(70), 'atMost', 71, 'met'],
    [atMost(70), 'atLeast', 72, 'missed'],
    [atMost(70), 'about', 70, 'unknown'],
    [atMost(60), 'about', 70, 'missed'],
    [open, 'about', 70, 'unknown'],
    [open, 'atLeast', 0, 'unknown'],
  ] as const)('case %#: %o %s %d is %s', (of, relation, amount, verdict) => {
    expect(judgeLimit(of, relation, amount)).toBe(verdict);
  });

  it('allows about 5 %, and at least 5 kcal, as many kJ, or 1 g', () => {
    expect([
      aboutTolerance('energyKcal', 640),
      aboutTolerance('energyKcal', 60),
      aboutTolerance('energyKj', 100),
      aboutTolerance('protein', 12),
      aboutTolerance('protein', 100),
      aboutTolerance('sodium', 400),
    ]).toEqual([32, 5, 20.92, 1, 5, 20]);
  });

  it('about is met exactly where at most its top and at least its foot are', () => {
    const number = fc.double({ min: 0, max: 200, noNaN: true });
    const likely = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(number, likely, number, (value, half, amount) => {
        const of = figure(value, half);
        const tolerance = aboutTolerance('protein', amount);
        const both = [
          judgeLimit(of, 'atLeast', amount - tolerance),
          judgeLimit(of, 'atMost', amount + tolerance),
        ];
        expect(judgeLimit(of, 'about', amount) === 'met').toBe(
          both.every((each) => each === 'met'),
        );
        expect(judgeLimit(of, 'about', amount) === 'missed').toBe(both.includes('missed'));
      }),
    );
  });
});

describe('a limit in words', () => {
  it('says from where to where about reaches', () => {
    expect([
      aboutReach('energyKcal', 640),
      aboutReach('protein', 70),
      aboutReach('netCarbohydrate', 8),
      aboutReach('protein', 0.5),
    ]).toEqual(['608 to 672 kcal', '67 to 74 g', '7.0 to 9.0 g', '0.0 to 1.5 g']);
  });

  it('calls open what is open, and incomplete what is only a part', () => {
    expect(verdictWords('unknown', open)).toBe('can’t say, the number is open');
    expect(verdictWords('unknown', undefined)).toBe('can’t say, the number is open');
    expect(verdictWords('unknown', atLeast(58))).toBe('can’t say, a part of it is missing');
    expect(verdictWords('missed', atLeast(82))).toBe('missed');
  });

  it('holds at its very end, whatever noise a sum brings', () => {
    const exact = figure(0.1 + 0.2, 0);
    expect(judgeLimit(exact, 'atMost', 0.3)).toBe('met');
    expect(judgeLimit(exact, 'atLeast', 0.3)).toBe('met');
  });
});

describe('how far', () => {
  it.each([
    [figure(58, 3), 'atLeast', 70, '12 g short, 9 to 15 likely'],
    [figure(82, 3), 'atLeast', 70, '12 g above, 9 to 15 likely'],
    [figure(69, 3), 'atLeast', 70, '1.0 g short, likely from 4.0 g short to 2.0 g above'],
    [figure(82, 0.01), 'atMost', 70, '12 g over'],
    [figure(58, 3), 'about', 70, '12 g below, 9 to 15 likely'],
    [atLeast(58), 'atLeast', 70, 'at most 13 g short'],
    [atLeast(82), 'atMost', 70, 'at least 11 g over'],
    [atMost(58), 'atLeast', 70, 'at least 11 g short'],
    [atMost(82), 'atMost', 70, 'at most 13 g over'],
    [open, 'atLeast', 70, null],
  ] as const)('case %#: %o %s %d', (of, relation, amount, words) => {
    expect(howFar(of, relation, amount)).toBe(words);
  });
});

it('a target of an older file has no portion', () => {
  const older = { id: 't', nutrient: 'protein', relation: 'atLeast', amount: 70, segmentId: null };
  expect(targetSchema.parse(older).portionId).toBeNull();
});
