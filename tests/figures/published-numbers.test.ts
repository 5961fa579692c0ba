import { describe, expect, it } from 'vitest';
import { bindText } from '#lib/figures/bind-text';
import { parseBindings } from '#lib/episode/binding';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const exactish = aFood('stock', {
  energyKcal: '140.0000',
  protein: '14.0000',
  fat: '0',
  carbohydrate: '0',
});
const portions = [{ id: 'half', kind: 'count' as const, name: 'One of two', of: 2 }];
// Two dishes of 1.4 kcal and 1.4 g-tenths each: 2.8 is printed 3 = 1 + 2.
const file = aFile(
  [
    aDish('a', aRecipe('ra', [grams('la', 'stock', 1)], { portions })),
    aDish('b', aRecipe('rb', [grams('lb', 'stock', 1)])),
  ],
  [exactish],
  { resolutionMg: 1 },
);
const figures = episodeFigures(file);
const numbers = publishedNumbers(file, figures);

describe('published numbers', () => {
  it('add up to the day, as written', () => {
    const a = numbers('energyKcal', { kind: 'whole', segmentId: 'a' });
    const b = numbers('energyKcal', { kind: 'whole', segmentId: 'b' });
    const day = numbers('energyKcal', { kind: 'day' });
    expect([a.text, b.text, day.text]).toEqual(['1', '2', '3']);
    expect([a.onlyByRounding, b.onlyByRounding]).toEqual([false, true]);
  });

  it('are rounded to 5 or 10 kcal on request, still adding up, with ranges in whole calories', () => {
    const large = aFile(
      [
        aDish('a', aRecipe('ra', [grams('la', 'stock', 474)])),
        aDish('b', aRecipe('rb', [grams('lb', 'stock', 374)])),
        aDish('c', aRecipe('rc', [grams('lc', 'stock', 231)])),
      ],
      [exactish],
    );
    const own = episodeFigures(large);
    // 663.6, 523.6 and 323.4 kcal: 1,510.6 in all.
    const printed = (energyStep: 1 | 5 | 10) => {
      const of = publishedNumbers(large, own, { energyStep });
      return [
        of('energyKcal', { kind: 'day' }).text,
        ...['a', 'b', 'c'].map((id) => of('energyKcal', { kind: 'whole', segmentId: id }).text),
      ];
    };
    expect(printed(1)).toEqual(['1511', '664', '524', '323']);
    // 320 ± 2.5 would miss the bound 322.7 to 324.1.
    expect(printed(5)).toEqual(['1515', '665', '525', '325']);
    expect(printed(10)).toEqual(['1510', '660', '530', '320']);
    const of = publishedNumbers(large, own, { energyStep: 10 });
    expect(of('energyKcal', { kind: 'day' }).range).toBe(
      publishedNumbers(large, own)('energyKcal', { kind: 'day' }).range,
    );
    expect(of('protein', { kind: 'day' }).text).toBe('151');
  });

  it('stand as they were spoken, and the others give way', () => {
    const spoken = [
      { nutrient: 'energyKcal', scope: { kind: 'whole', segmentId: 'a' }, amount: 2 },
    ] as const;
    const of = publishedNumbers(file, figures, { spoken });
    expect(of('energyKcal', { kind: 'whole', segmentId: 'a' }).text).toBe('2');
    expect(of('energyKcal', { kind: 'whole', segmentId: 'b' }).text).toBe('1');
    expect(of('energyKcal', { kind: 'day' })).toMatchObject({ text: '3', clashes: false });
  });

  it('say which spoken number the others cannot be made to add up with', () => {
    const scope = { kind: 'whole', segmentId: 'a' } as const;
    const spoken = [{ nutrient: 'energyKcal', scope, amount: 7 }] as const;
    const of = publishedNumbers(file, figures, { spoken });
    expect(of('energyKcal', scope)).toMatchObject({ text: '7', clashes: true });
    expect(of('energyKcal', { kind: 'whole', segmentId: 'b' }).clashes).toBe(false);
    const half = { kind: 'portion', portionId: 'half' } as const;
    const portion = [{ nutrient: 'energyKcal', scope: half, amount: 0.7 }] as const;
    expect(publishedNumbers(file, figures, { spoken: portion })('energyKcal', half).text).toBe(
      '0.7',
    );
  });

  it('leave equal portions out of the sum', () => {
    expect(numbers('energyKcal', { kind: 'portion', portionId: 'half' }).text).toBe('1');
  });

  it('print one amount once: one of two is what is eaten of it', () => {
    const half = {
      ...file,
      episode: {
        ...file.episode,
        segments: file.episode.segments.map((each) => ({ ...each, eaten: { num: 1, den: 2 } })),
      },
    };
    const of = publishedNumbers(half, episodeFigures(half));
    const eaten = of('energyKcal', { kind: 'eaten', segmentId: 'a' });
    expect(of('energyKcal', { kind: 'portion', portionId: 'half' })).toEqual(eaten);
  });

  it('tie unequal portions of the whole weight to their dish', () => {
    const masses = [33, 33, 34].map((g, index) => ({
      id: `p${index}`,
      kind: 'mass' as const,
      name: `${g} g`,
      massMg: g * 1000,
    }));
    const recipe = aRecipe('r', [grams('l', 'stock', 100)], {
      portions: masses,
      weighings: [aReading('w', 'finished', 100)],
    });
    for (const eaten of [
      { num: 1, den: 1 },
      { num: 1, den: 3 },
    ]) {
      const cut = aFile([aDish('d', recipe, { eaten })], [exactish], { resolutionMg: 1 });
      const of = publishedNumbers(cut, episodeFigures(cut));
      const parts = masses.map(({ id }) =>
        Number(of('protein', { kind: 'portion', portionId: id }).number),
      );
      expect(parts.reduce((sum, part) => sum + part, 0)).toBe(
        Number(of('protein', { kind: 'whole', segmentId: 'd' }).number),
      );
    }
  });

  it('give an open scope no number', () => {
    const open = aFile([aDish('a', aRecipe('ra', [aLine('x', null)]))], []);
    const number = publishedNumbers(open, episodeFigures(open))('protein', { kind: 'day' });
    expect(number).toMatchObject({ number: null, status: 'open' });
  });
});

describe('bound numbers in a talking point', () => {
  it('say what the description says', () => {
    const [dish] = file.episode.segments;
    if (!dish) throw new Error('the file has a dish');
    const bound = bindText(
      '[calories, whole] here, [ENERGY , each] each, [energy, day] all day',
      dish,
      figures,
      numbers,
    );
    expect(bound).toMatchObject({ text: '1 kcal here, 1 kcal each, 3 kcal all day', gaps: [] });
    expect(bound.parts.map((part) => part.text).join('')).toBe(bound.text);
    expect(bound.parts.flatMap((part) => part.of?.scope.kind ?? [])).toEqual([
      'whole',
      'portion',
      'day',
    ]);
  });

  it('keep what names nothing visible, and say so', () => {
    const [dish] = file.episode.segments;
    if (!dish) throw new Error('the file has a dish');
    const bound = bindText(
      '[joy, whole] and [protein, tomorrow] and [salt, whole]',
      dish,
      figures,
      numbers,
    );
    expect(bound.gaps).toHaveLength(3);
    expect(bound.text).toContain('[joy, whole]');
  });

  it('split without losing a letter', () => {
    const text = 'a [energy, day] b [] c [x] [energy,day]';
    const parts = parseBindings(text);
    expect(parts.map((part) => part.kind)).toEqual([
      'words',
      'number',
      'words',
      'unknown',
      'words',
      'unknown',
      'words',
      'number',
    ]);
  });
});
