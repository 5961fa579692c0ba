import { describe, expect, it } from 'vitest';
import type { Food } from '#lib/foods/food';
import { yieldLimits, yieldQuestion } from '#lib/foods/yield-question';
import { loadSr28, readSeedJson } from '#seed/load-sr28';
import { addedYieldsSchema } from '#lib/foods/reference-additions';
import { aFood } from '../support/build';

const food = (section: Food['section'], state: Food['version']['state'] = 'raw') =>
  aFood('f', {}, { section }, { state });

describe('what is asked about a cooked weight', () => {
  // The limits: common practice, no source.
  it.each([
    ['meatAndFish', 'raw', 40, 110],
    ['produce', 'raw', 40, 130],
    ['frozen', 'asIs', 40, 130],
    ['dryGoods', 'raw', 120, 600],
    ['dryGoods', 'cooked', 120, 600],
    ['produce', 'dry', 120, 600],
    ['spicesAndBaking', 'dry', 120, 600],
    ['other', 'raw', 40, 600],
  ] as const)('of %s, %s, is what lies outside %d to %d %%', (section, state, low, high) => {
    const of = food(section, state);
    expect(yieldLimits(of)).toMatchObject({ low, high });
    expect(yieldQuestion(of, 100_000, low * 1000)).toBeNull();
    expect(yieldQuestion(of, 100_000, high * 1000)).toBeNull();
    expect(yieldQuestion(of, 100_000, low * 1000 - 1000)).toMatch(/Is that right\?$/);
    expect(yieldQuestion(of, 100_000, high * 1000 + 1000)).toMatch(/Is that right\?$/);
  });

  it('says both numbers, whose they are, and where two weights look swapped', () => {
    const words = yieldQuestion(food('meatAndFish'), 360_000, 500_000);
    expect(words).toContain('139 % of raw');
    expect(words).toContain('40 to 110 % (common practice, no source)');
    expect(words).toContain('the right way round');
    expect(yieldQuestion(food('meatAndFish'), 500_000, 36_000)).toContain('7.2 % of raw');
    expect(yieldQuestion(food('meatAndFish'), 500_000, 36_000)).not.toContain('way round');
  });

  it('is nothing about a published yield: all of those in SR28’s Weight file that are used keep to it', () => {
    const { yields } = addedYieldsSchema.parse(readSeedJson('yields.json'));
    const byNumber = new Map(loadSr28().map((each) => [each.version.sourceNo, each]));
    expect(yields.length).toBeGreaterThan(10);
    for (const { sourceNo, rawSourceNos, rawGrams, cookedGrams } of yields) {
      for (const number of [sourceNo, ...rawSourceNos]) {
        const published = byNumber.get(number);
        if (!published) throw new Error(`no food ${number}`);
        expect(
          yieldQuestion(published, Number(rawGrams) * 1000, Number(cookedGrams) * 1000),
          published.name,
        ).toBeNull();
      }
    }
  });

  it('is nothing about rice, pasta and beans as they come out of the pot', () => {
    // Grams cooked from 100 g dry, from memory of packets: rice 250–300, pasta 220, beans 240.
    const rice = food('dryGoods', 'raw');
    for (const cooked of [220_000, 240_000, 300_000]) {
      expect(yieldQuestion(rice, 100_000, cooked)).toBeNull();
    }
  });
});
