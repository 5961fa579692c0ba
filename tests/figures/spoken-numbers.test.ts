import { describe, expect, it } from 'vitest';
import type { SaidLine } from '#lib/episode/said-line';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { isOutside, saidSpan, spokenNumbers } from '#lib/figures/spoken-numbers';
import { description } from '#lib/publish/description';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const AT = '2026-11-14T23:30:00Z';
const energy = (amount: number, hedge: 'exact' | 'about' = 'exact') =>
  ({ nutrient: 'energyKcal', amount, hedge, value: amount }) as const;
const line = (scope: SaidLine['scope'], ...numbers: SaidLine['numbers']): SaidLine => {
  return { id: 'l', at: AT, scope, text: 'said', numbers };
};

describe('what was said, as the tally takes it', () => {
  const said = [
    line({ kind: 'whole', segmentId: 'a' }, energy(641)),
    line({ kind: 'half', segmentId: 'a' }, energy(321)),
    line({ kind: 'portion', segmentId: 'a', portionId: 'p' }, energy(160, 'about')),
    line({ kind: 'soFar', segmentId: 'b' }, energy(900)),
    line({ kind: 'day' }, energy(1290)),
  ];
  const told = (upTo: string | null = null) =>
    spokenNumbers(said, upTo).map(({ scope, amount, hedge }) => [scope.kind, amount, hedge]);

  it('is all but half of a dish, each with how closely it was said', () => {
    expect(told()).toEqual([
      ['whole', 641, 'exact'],
      ['portion', 160, 'about'],
      ['day', 1290, 'exact'],
    ]);
  });

  it('takes the day so far for the day where only its dishes are tallied', () => {
    expect(told('b').at(-1)).toEqual(['day', 900, 'exact']);
    expect(told('c')).toHaveLength(2);
  });
});

// The widths of what was said: MODEL.md D.1, the project's own.
describe('a number that was said', () => {
  it('covers half a unit, five where it is a round hundred or more, and 5 % with about', () => {
    expect(saidSpan(energy(643))).toEqual({ low: 642.5, high: 643.5 });
    expect(saidSpan(energy(640))).toEqual({ low: 635, high: 645 });
    expect(saidSpan(energy(640, 'about'))).toEqual({ low: 608, high: 672 });
  });

  it('is outside only where it covers nothing that the sources allow', () => {
    const spoken = { nutrient: 'energyKcal', scope: { kind: 'day' }, amount: 643 } as const;
    expect(isOutside(spoken, { low: 643.5, high: 650 })).toBe(false);
    expect(isOutside(spoken, { low: 643.6, high: 650 })).toBe(true);
    expect(isOutside(spoken, { low: 0, high: 642.4 })).toBe(true);
    expect(isOutside(spoken, { low: 700, high: null })).toBe(true);
    expect(isOutside(spoken, { low: null, high: null })).toBe(false);
  });
});

describe('the numbers of a file', () => {
  // 100 kcal in 100 g as printed and grams ± half of 1 g, so grams and kilocalories are one number.
  const food = aFood('f', {
    energyKcal: '100.00',
    protein: '10.00',
    fat: '1.00',
    carbohydrate: '2.00',
  });
  const of = (soup: number, ...said: SaidLine[]) =>
    aFile(
      [
        aDish('soup', aRecipe('r1', [grams('leek', 'f', soup)])),
        aDish('bread', aRecipe('r2', [grams('flour', 'f', 300)])),
      ],
      [food],
      { said },
    );
  const soup = { kind: 'whole', segmentId: 'soup' } as const;
  const day = { kind: 'day' } as const;
  const numbersOf = (file: ReturnType<typeof of>) => publishedNumbers(file, episodeFigures(file));

  it('keep to what its lines said, and say when that was', () => {
    const numbers = numbersOf(of(250.4, line(soup, energy(251))));
    expect(numbers('energyKcal', soup)).toMatchObject({
      text: '251',
      // 23:30 UTC is tomorrow in the kitchen's zone.
      said: { words: 'said on 15 Nov: 251 kcal', fixed: true, outside: false },
    });
    expect(numbers('energyKcal', day)).toMatchObject({ text: '551', said: null });
    expect(numbersOf(of(250.4))('energyKcal', soup)).toMatchObject({ text: '250', said: null });
  });

  it('are not fixed by what was said as about, but say it', () => {
    const numbers = numbersOf(of(252, line(soup, energy(250, 'about'))));
    expect(numbers('energyKcal', soup)).toMatchObject({
      text: '252',
      said: { words: 'said on 15 Nov: about 250 kcal', fixed: false, outside: false },
    });
  });

  it('say of one that its sources no longer allow that it is outside, also in what is copied', () => {
    const file = of(280, line(soup, energy(251)));
    expect(numbersOf(file)('energyKcal', soup)).toMatchObject({
      text: '251',
      onlyByRounding: false,
      said: { outside: true },
    });
    expect(confirmedOnly(numbersOf(file))('energyKcal', soup).said?.outside).toBe(true);
    const { text } = description(file);
    expect(text).toContain('251† kcal');
    expect(text).toContain('All that was made, calories, kcal: soup 251† + bread 300');
    expect(text).toContain(
      '† soup: 251 kcal is what was said in the video; by the ingredients it is likely 279–281 kcal.',
    );
    expect(description(of(250.4, line(soup, energy(251)))).text).not.toContain('†');
  });

  it('say which of several that were said cannot add up', () => {
    const file = of(250, line(soup, energy(250)), { ...line(day, energy(549)), id: 'd' });
    const text = description(file).text;
    expect(
      numbersOf(file)('energyKcal', day).clashes || numbersOf(file)('energyKcal', soup).clashes,
    ).toBe(true);
    expect(text).toContain('does not add up with the other numbers that were said');
  });
});
