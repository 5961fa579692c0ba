import { describe, expect, it } from 'vitest';
import { judgeClaimWord } from '#lib/claims/claim-words/judge-claim-word';
import { likelyAmounts } from '#lib/claims/claim-words/reference-amounts';
import { claimFacts } from '#lib/claims/claim-words/claim-facts';
import { dishesOf } from '#lib/episode/context';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../../support/build';
import { aPlainDish, said } from './dishes';

const LOW_FAT = said('low fat', 'low', 'fat');
const FAT_FREE = said('fat free', 'free', 'fat');

describe('what cannot be said says why', () => {
  it('in 100 g without a finished weight', () => {
    const dish = aPlainDish({ fat: '1.0' }, { region: 'EU', finished: null });
    const told = judgeClaimWord(LOW_FAT, dish);
    expect(told.verdict).toBe('unknown');
    expect(told.why).toMatch(/^can’t say: .*no finished weight/);
  });

  it('without a reference amount: which rows of 21 CFR 101.12(b) the title speaks for, and what each would come to', () => {
    const dish = aPlainDish({ fat: '3.0' }, { title: 'Cheese muffins', claims: null });
    const told = judgeClaimWord(LOW_FAT, dish);
    expect(told.verdict).toBe('unknown');
    expect(told.offers).toEqual([
      {
        what: 'bagels, toaster pastries and muffins',
        amount: '110 g',
        massMg: 110_000,
        verdict: 'off',
      },
      { what: 'cheese', amount: '30 g', massMg: 30_000, verdict: 'agrees' },
    ]);
    expect(told.why).toContain('by 110 g: off');
  });

  it('where a part of the figure is missing, and what is known decides nothing', () => {
    const dish = aPlainDish({ energyKcal: '100' }, { region: 'EU' });
    const told = judgeClaimWord(LOW_FAT, dish);
    expect(told.verdict).toBe('unknown');
    expect(told.why).toContain('no value for');
  });

  it('of what no rule defines: low carb, high energy', () => {
    for (const words of [
      said('low carb', 'low', 'carbohydrate'),
      said('high calorie', 'high', 'energyKcal'),
    ]) {
      for (const region of ['US', 'EU'] as const) {
        const told = judgeClaimWord(words, aPlainDish({}, { region, claims: { raccMg: 100_000 } }));
        expect(told.verdict).toBe('unknown');
        expect(told.why).toContain('no rule says');
      }
    }
  });

  it('of light, reduced and lower, which compare, unless something is compared', () => {
    const dish = aPlainDish({ fat: '5.00', energyKcal: '100' }, { claims: { raccMg: 100_000 } });
    const other = aPlainDish({ fat: '10.0', energyKcal: '200' }, { claims: { raccMg: 100_000 } });
    for (const words of [
      said('light', 'light'),
      said('reduced fat', 'reduced', 'fat'),
      said('lower fat', 'low', 'fat'),
    ]) {
      expect(judgeClaimWord(words, dish).verdict).toBe('unknown');
      expect(judgeClaimWord(words, dish).why).toMatch(/compare/);
    }
    // 21 CFR 101.62(b)(4): at least 25 % less.
    const fat = said('reduced fat', 'reduced', 'fat');
    expect(judgeClaimWord(fat, dish, { comparedWith: other }).verdict).toBe('agrees');
    expect(judgeClaimWord(fat, other, { comparedWith: dish }).verdict).toBe('off');
    // 21 CFR 101.56(b): a third fewer calories.
    expect(judgeClaimWord(said('light', 'light'), dish, { comparedWith: other }).verdict).toBe(
      'agrees',
    );
  });

  it('of a meal that is to be high in something, which has to name a food in it (101.54(b)(2))', () => {
    const dish = aPlainDish({ fibre: '9.0' }, { claims: { meal: true } });
    const told = judgeClaimWord(said('high fiber', 'high', 'fibre'), dish);
    expect(told.verdict).toBe('unknown');
    expect(told.why).toContain('101.54(b)(2)');
  });

  it('of a main dish that weighs less than one may (101.13(m))', () => {
    const dish = aPlainDish(
      { fat: '1.0', energyKcal: '100' },
      { claims: { meal: true }, finished: 160 },
    );
    expect(judgeClaimWord(LOW_FAT, dish).why).toContain('101.13(m)');
  });

  it('of a reading that is not sure', () => {
    const dish = aPlainDish({ fat: '1.0' }, { region: 'EU' });
    expect(judgeClaimWord({ ...LOW_FAT, unsure: true }, dish).verdict).toBe('unknown');
  });
});

describe('more than a threshold', () => {
  it('a percentage before fat free is refused in the Union (Annex), and in the US asks for low fat (101.62(b)(6))', () => {
    const before = 'It is 97 % ';
    const eu = judgeClaimWord(FAT_FREE, aPlainDish({ fat: '2.00' }, { region: 'EU' }), { before });
    expect(eu).toMatchObject({ verdict: 'off', sayInstead: 'low fat' });
    expect(eu.why).toContain('prohibited');
    const us = aPlainDish({ fat: '2.00' }, { claims: { raccMg: 100_000 } });
    expect(judgeClaimWord(FAT_FREE, us, { before }).verdict).toBe('agrees');
    expect(judgeClaimWord(FAT_FREE, us).verdict).toBe('off');
    expect(judgeClaimWord(FAT_FREE, us, { before: 'ninety-seven percent ' }).verdict).toBe(
      'agrees',
    );
  });

  it('weaker words are offered where they hold, and only there', () => {
    const eu = (protein: string) => aPlainDish({ protein, energyKcal: '100' }, { region: 'EU' });
    const high = said('high protein', 'high', 'protein');
    expect(judgeClaimWord(high, eu('4.00')).sayInstead).toBe('source of protein');
    expect(judgeClaimWord(high, eu('2.00')).sayInstead).toBeNull();
    const free = aPlainDish({ fat: '2.00' }, { region: 'EU' });
    expect(judgeClaimWord(FAT_FREE, free).sayInstead).toBe('low fat');
  });

  it('no added sugar is off where an ingredient sweetens by its name, else nobody can say (101.60(c)(2), Annex)', () => {
    const none = said('no added sugar', 'noAdded', 'sugars');
    const dish = aPlainDish({ sugars: '1.0' }, { region: 'EU' });
    expect(judgeClaimWord(none, dish).verdict).toBe('unknown');
    const sweet = { ...dish, lines: [{ text: '2 tbsp runny honey', food: 'Honey' }] };
    expect(judgeClaimWord(none, sweet)).toMatchObject({ verdict: 'off' });
    expect(judgeClaimWord(none, sweet).why).toContain('it asks for no food that sweetens in it');
    const peas = { ...dish, lines: [{ text: '100 g sugar snap peas', food: null }] };
    expect(judgeClaimWord(none, peas).verdict).toBe('unknown');
    const labelled = aPlainDish({ addedSugars: '2.0' }, { region: 'US' });
    expect(judgeClaimWord(none, labelled).verdict).toBe('off');
  });

  it('off within the hard bounds is possible, not likely (MODEL D.1)', () => {
    // A sixth each of six foods: 3.05 g in 100 g, digits allow 3.00 to 3.10, likely 3.03 to 3.07.
    const foods = ['3.0', '3.1', '3.0', '3.1', '3.0', '3.1'];
    const recipe = aRecipe(
      'r',
      foods.map((_, at) => grams(`l${String(at)}`, `f${String(at)}`, 100_000)),
      { weighings: [aReading('w', 'finished', 600_100)] },
    );
    const file = aFile(
      [aDish('d', recipe)],
      foods.map((fat, at) => aFood(`f${String(at)}`, { fat })),
      { episode: { region: 'EU' }, resolutionMg: 1 },
    );
    const [dish] = dishesOf(file.episode.segments);
    if (!dish) throw new Error('a dish was made');
    const told = judgeClaimWord(LOW_FAT, claimFacts(file, dish));
    expect(told).toMatchObject({ verdict: 'off', remark: 'possibleNotLikely' });
  });

  it('what a claim has to come with: much of something else (101.13(h))', () => {
    const cheese = aPlainDish(
      { calcium: '710', fat: '33.31', saturated: '18.867', cholesterol: '99', sodium: '653' },
      { claims: { raccMg: 30_000 }, portions: 40 },
    );
    const told = judgeClaimWord(said('high in calcium', 'high', 'calcium'), cheese);
    expect(told.verdict).toBe('off');
    const source = judgeClaimWord(said('good source of calcium', 'source', 'calcium'), cheese);
    expect(source.verdict).toBe('agrees');
    expect(source.why).toMatch(/hint at its fat .*saturated fat .*101\.13\(h\)\(1\)/);
  });

  it('a drink is judged by what holds for drinks as well, and where the two differ it asks (Annex)', () => {
    const low = said('low sugar', 'low', 'sugars');
    const smoothie = (sugars: string) =>
      aPlainDish({ sugars }, { region: 'EU', title: 'Berry smoothie' });
    expect(judgeClaimWord(low, smoothie('2.00')).verdict).toBe('agrees');
    expect(judgeClaimWord(low, smoothie('4.00')).verdict).toBe('unknown');
    expect(judgeClaimWord(low, smoothie('6.00')).verdict).toBe('off');
  });
});

describe('reference amounts', () => {
  it('go by the last word of a title that speaks for one', () => {
    const first = (title: string) => likelyAmounts(title)[0]?.what;
    expect(first('Tray-baked turkey meatloaf')).toBe('mixed dishes not measured with a cup');
    expect(first('Skyr pots with oat crumb')).toBe('mixed dishes measured with a cup');
    expect(first('Leek soup')).toBe('soups');
    expect(first('Frobnicate')).toBe('mixed dishes not measured with a cup');
  });
});
