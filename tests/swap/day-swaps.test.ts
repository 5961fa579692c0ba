import { describe, expect, it } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { EpisodeFile } from '#lib/episode/schema';
import { cardsOfSwaps } from '#lib/publish/cards/saved-changes';
import { swapTexts } from '#lib/publish/swap-texts';
import { applySwap } from '#lib/swap/apply-swap';
import { daySets, daySwap } from '#lib/swap/day-swaps';
import { swapDifference } from '#lib/swap/swap-difference';
import { swapTable } from '#lib/swap/swap-words';
import { aDish, aFile, aRecipe, grams } from '../support/build';
import { FOODS, kitchen, LINES, variant } from './kitchen';

const MILK = { id: 'a', allergen: 'milk', standing: 'declared', reason: 'label' } as const;
const inBowl = variant([{ kind: 'amount', lineId: 'oats', massMg: 100_000 }], 'Bigger day');
const inSide = {
  ...variant([{ kind: 'amount', lineId: 'side oats', massMg: 75_000 }], 'bigger day '),
  ...{ id: 'v-side', segmentId: 'side' },
};
const other = { ...variant([{ kind: 'leaveOut', lineId: 'oats' }], 'No oats'), id: 'v-other' };

/** Two dishes that are eaten whole. */
const twoDishes = aFile(
  ['one', 'two'].map((id) => aDish(id, aRecipe(`r-${id}`, [grams(`${id} oats`, 'oats', 50)]))),
  FOODS,
);
const more = (id: string, massMg: number) => ({
  ...variant([{ kind: 'amount', lineId: `${id} oats`, massMg }], 'Bigger day'),
  ...{ id: `v-${id}`, segmentId: id },
});
const both = [more('one', 70_000), more('two', 80_000)];

const withSwaps = (file: EpisodeFile, variants: typeof both) => ({
  ...file,
  publish: { replies: [], pieces: [], variants },
});

function together(file: EpisodeFile, variants: typeof both) {
  const [set] = daySets(variants);
  if (!set) throw new Error('no set');
  const swap = daySwap(file, set);
  if (!swap.ok) throw new Error('not applied');
  return swap.value;
}

describe('swaps of several dishes under one name', () => {
  it('are a set whatever their capitals; those of one dish are none', () => {
    const sets = daySets([inBowl, other, inSide]);
    expect(sets.map(({ name, variants }) => [name, variants.map(({ id }) => id)])).toEqual([
      ['Bigger day', ['v', 'v-side']],
    ]);
    expect(daySets([inBowl, { ...inBowl, id: 'v2' }, other])).toEqual([]);
  });

  it('come in the day to what each comes to in it', () => {
    const file = kitchen(LINES);
    const { differences } = together(file, [inBowl, inSide]);
    const each = [inBowl, inSide].map((one) => {
      const swap = swapDifference(file, one);
      if (!swap.ok) throw new Error('not applied');
      return swap.value.day;
    });
    for (const nutrient of ['energyKcal', 'protein', 'sodium'] as const) {
      const sum = each.reduce((all, day) => all + (day[nutrient]?.value ?? NaN), 0);
      expect(differences[nutrient]?.value).toBeCloseTo(sum, 9);
    }
  });

  it('are what the day has after them less what it had', () => {
    // 20 and 30 g of oats more, at 379 kcal and 13.2 g of protein in 100 g.
    const { differences } = together(twoDishes, both);
    expect(differences.energyKcal?.value).toBeCloseTo(0.5 * 379, 9);
    expect(differences.protein?.value).toBeCloseTo(0.5 * 13.2, 9);
    const after = both.reduce((file, one) => {
      const applied = applySwap(file, one);
      if (!applied.ok) throw new Error('not applied');
      return applied.value;
    }, twoDishes);
    const kcal = (file: EpisodeFile) => episodeFigures(file).day.energyKcal?.value;
    // By hand: 100 g and 150 g of oats.
    expect(kcal(twoDishes)).toBeCloseTo(379, 9);
    expect(kcal(after)).toBeCloseTo(1.5 * 379, 9);
  });

  it('have a row, a line and a card of their own, behind those of each dish', () => {
    const { rows, text } = swapTable(twoDishes, both);
    const titles = dishesOf(twoDishes.episode.segments).map(({ title }) => title);
    expect(rows.map(({ variantId, of }) => [variantId, of])).toEqual([
      ['v-one', 'for the whole dish'],
      ['v-two', 'for the whole dish'],
      [null, 'in the day'],
    ]);
    expect(rows.at(-1)?.dish).toBe(titles.join(' and '));
    const said = /Bigger day \(one and two, in the day\): about 190 calories more; .*$/;
    expect(text.split('\n').at(-1)).toMatch(said);
    expect(swapTexts(withSwaps(twoDishes, both)).at(-1)).toMatch(
      /^With “Bigger day” it is about 190 calories more.* in the day/,
    );
    const kickers = cardsOfSwaps(rows, 'draft').map(({ kicker }) => kicker);
    expect(kickers).toContain('one and two, in the day');
  });

  it('have no numbers while one of them rests on what nobody has confirmed, and say what is gone', () => {
    const lines = LINES.map((line) => ({ ...line, match: 'provisional' as const }));
    const [waits, gone] = [
      swapTable(kitchen(lines), [inBowl, inSide]),
      swapTable(kitchen(LINES.filter(({ id }) => id !== 'oats')), [inBowl, inSide]),
    ].map(({ rows }) => rows.at(-1));
    expect(waits?.cells).toMatchObject([
      { label: 'numbers', text: expect.stringMatching(/^no numbers yet: .*oats/) as string },
    ]);
    expect(gone?.problem).not.toBeNull();
    expect(gone?.cells).toEqual([]);
  });

  it('bring what any of them brings, and lose nothing: another dish may still have it', () => {
    const file = {
      ...twoDishes,
      foods: twoDishes.foods.map((food) => ({
        ...food,
        allergens: food.id === 'oats' ? [MILK] : [],
      })),
    };
    const less = both.map((one) => ({
      ...one,
      steps: [{ kind: 'leaveOut' as const, lineId: `${one.segmentId} oats` }],
    }));
    expect(together(file, less).allergens).toMatchObject({ gained: [], lost: [] });
    const rich = { kind: 'food', lineId: 'one oats', foodId: 'bare', massMg: null } as const;
    const [first, second] = both;
    if (!first || !second) throw new Error('two were made');
    const into = together(file, [{ ...first, steps: [rich] }, second]);
    expect(into.allergens.unsaid).toEqual(['A spread of the house']);
  });
});
