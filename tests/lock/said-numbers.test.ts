import { describe, expect, it } from 'vitest';
import type { SayLine, SayNumber } from '#lib/figures/say-line';
import { saidChange } from '#lib/lock/said-numbers';

const energy = (
  amount: number,
  hedge: SayNumber['hedge'] = 'exact',
  value: number | null = amount,
) => ({ nutrient: 'energyKcal', amount, hedge, value }) as const;
const protein = (amount: number, value: number | null = amount) =>
  ({ nutrient: 'protein', amount, hedge: 'exact', value }) as const;
const line = (...numbers: readonly SayNumber[]): SayLine => {
  return { ready: true, text: '', numbers, halved: null, remark: null };
};

// The widths of what was said: MODEL.md D.1, the project's own.
describe('what has changed since a line was said', () => {
  it('is nothing while its figures are what they were, whatever they are rounded to', () => {
    expect(
      saidChange([energy(640, 'about', 641.2)], line(energy(650, 'about', 641.2)), 'US'),
    ).toBeNull();
    expect(
      saidChange([energy(758, 'exact', 758.4)], line(energy(759, 'exact', 758.4)), 'US'),
    ).toBeNull();
    expect(
      saidChange([energy(600, 'atLeast', null)], line(energy(600, 'atLeast', null)), 'US'),
    ).toBeNull();
  });

  it.each([
    // A number said as it stands covers half a unit, one of 100 or more that ends in 0 five.
    [energy(643), 643.5, 'covered'],
    [energy(643), 643.51, 'off'],
    [energy(640), 645, 'covered'],
    [energy(640), 645.1, 'off'],
    [energy(90), 90.6, 'off'],
    // 'About' covers 5 %, and at least 5 kcal.
    [energy(640, 'about', 641), 672, 'covered'],
    [energy(640, 'about', 641), 672.1, 'off'],
    [energy(40, 'about', 41), 45, 'covered'],
    [energy(40, 'about', 41), 45.1, 'off'],
    [energy(600, 'atLeast', 610), 900, 'covered'],
    [energy(600, 'atLeast', 610), 599, 'off'],
    [energy(50, 'atMost', 40), 49, 'covered'],
    [energy(50, 'atMost', 40), 51, 'off'],
  ])('%j, now %d: %s', (said, value, kind) => {
    expect(saidChange([said], line(energy(value, 'exact', value)), 'US')?.kind).toBe(kind);
  });

  it('says what was said and what it is now, of what no longer holds alone', () => {
    const said = [energy(640, 'exact', 640.2), protein(26, 26.1)];
    const now = line(energy(655, 'exact', 655.3), protein(26, 26.3));
    expect(saidChange(said, now, 'US')).toEqual({
      kind: 'off',
      words: 'You said 640 calories, it is now 655.',
    });
    expect(saidChange(said, line(energy(640, 'exact', 640.2), protein(31, 31)), 'EU')?.words).toBe(
      'You said 26 grams of protein, it is now 31.',
    );
    // A whole number that reads as what was said is told by its tenth.
    expect(saidChange([protein(26)], line(protein(26, 26.3)), 'EU')).toEqual({
      kind: 'covered',
      words: 'You said 26 grams of protein, it is now 26.3 g, which that still covers.',
    });
  });

  it('is that it cannot be said any more where a number is open now, or without an upper bound', () => {
    const open: SayLine = { ready: false, why: 'salt has no grams' };
    expect(saidChange([energy(640)], open, 'US')).toEqual({
      kind: 'off',
      words: 'You said 640 calories; now it can’t be said: salt has no grams.',
    });
    expect(saidChange([energy(640)], line(energy(640, 'atLeast', null)), 'US')).toEqual({
      kind: 'off',
      words: 'You said 640 calories, it is now at least 640.',
    });
  });
});
