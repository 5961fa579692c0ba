import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { bindText } from '#lib/figures/bind-text';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { allergenList } from '#lib/publish/allergen-list';
import { description } from '#lib/publish/description';
import { lockHolds, takeLock } from '#lib/lock/numbers-lock';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const light = aFood('light', {
  energyKcal: '100',
  protein: '10.0',
  fat: '2.0',
  carbohydrate: '8.0',
});
const rich = aFood(
  'rich',
  { energyKcal: '160', protein: '9.0', fat: '10.0', carbohydrate: '8.0' },
  { allergens: [{ id: 'a', allergen: 'milk', standing: 'declared', reason: 'label' }] },
);
const blank = aFood('blank', { energyKcal: '120', fat: '4.0', carbohydrate: '8.0' });

const fileOf = (...lines: Parameters<typeof aRecipe>[1]) =>
  aFile([aDish('dish', aRecipe('r', lines), { title: 'Bowl' })], [light, rich, blank]);
const wholeOf = (file: ReturnType<typeof fileOf>) => episodeFigures(file).dishes[0]?.whole ?? {};

describe('an ingredient that is one of two foods', () => {
  const either = fileOf(grams('200 g curd', 'light', 200, { orFoodId: 'rich' }));

  it('lies anywhere between both, with the middle as its value', () => {
    const { energyKcal, protein } = wholeOf(either);
    // 199.5 g at 99.5 kcal and 200.5 g at 160.5 kcal a hundred grams are its ends.
    expect(energyKcal?.low).toBeCloseTo(1.995 * 99.5, 6);
    expect(energyKcal?.high).toBeCloseTo(2.005 * 160.5, 6);
    expect(energyKcal?.value).toBeCloseTo(260, 9);
    expect(protein?.value).toBeCloseTo(19, 9);
    expect(energyKcal?.likelyLow ?? NaN).toBeGreaterThanOrEqual(energyKcal?.low ?? NaN);
  });

  it('contains the figure of each of the two alone, whatever they are', () => {
    const percent = fc.integer({ min: 0, max: 90 });
    fc.assert(
      fc.property(percent, percent, fc.integer({ min: 1, max: 900 }), (a, b, g) => {
        const foods = [aFood('a', { protein: `${a}.0` }), aFood('b', { protein: `${b}.0` })];
        const figure = (foodId: string, orFoodId: string | null) =>
          episodeFigures(
            aFile([aDish('d', aRecipe('r', [grams('x', foodId, g, { orFoodId })]))], foods),
            ['protein'],
          ).dishes[0]?.whole.protein;
        const both = figure('a', 'b');
        for (const one of [figure('a', null), figure('b', null)]) {
          expect(both?.low ?? NaN).toBeLessThanOrEqual(one?.low ?? NaN);
          expect(both?.high ?? NaN).toBeGreaterThanOrEqual(one?.high ?? NaN);
        }
        expect(figure('b', 'a')).toEqual(both);
      }),
    );
  });

  it('lacks what either lacks', () => {
    const { protein } = wholeOf(fileOf(grams('200 g curd', 'light', 200, { orFoodId: 'blank' })));
    expect(protein?.high).toBeNull();
    expect(protein?.missing.map(({ reason }) => reason)).toEqual(['noValue']);
  });

  it('brings the allergens of both', () => {
    expect(allergenList(either).contains.map(({ allergen }) => allergen)).toEqual(['milk']);
  });

  it('breaks a lock when the second food is named, and only then', () => {
    const plain = fileOf(grams('200 g curd', 'light', 200));
    expect(lockHolds(takeLock(plain), plain)).toBe(true);
    expect(lockHolds(takeLock(plain), either)).toBe(false);
  });

  it('must name a food of the file', () => {
    const broken = fileOf(grams('200 g curd', 'light', 200, { orFoodId: 'nowhere' }));
    const parsed = parseEpisodeFile(JSON.stringify(broken));
    expect(parsed.ok ? [] : parsed.problems.map(({ path }) => path)).toEqual([
      'episode.segments[0].recipe.lines[0].orFoodId',
    ]);
  });
});

describe('an ingredient whose food nobody has confirmed', () => {
  const file = fileOf(
    grams('200 g curd', 'light', 200, { match: 'provisional' }),
    grams('50 g cream', 'rich', 50),
  );

  it('counts to the figure on the page, which says who waits', () => {
    const { energyKcal } = wholeOf(file);
    expect(energyKcal?.value).toBeCloseTo(280, 9);
    expect(energyKcal?.high).not.toBeNull();
    expect(energyKcal?.provisional).toEqual([
      { why: 'match', lineId: '200 g curd', text: '200 g curd', foodName: 'light' },
    ]);
  });

  it('is left out of whatever is copied or said, with the reason', () => {
    const { text, open } = description(file);
    expect(text).toContain('The whole dish: calories open');
    expect(text).not.toContain('280');
    expect(text).toContain('not confirmed yet: 200 g curd');
    expect(open.map(({ reason }) => reason)).toContain('not confirmed yet: 200 g curd');
    const figures = episodeFigures(file);
    const [dish] = file.episode.segments;
    if (!dish) throw new Error('no dish');
    const said = bindText('[energy, whole]', dish, figures, publishedNumbers(file, figures));
    expect(said.text).toBe('[calories is open]');
    expect(said.gaps[0]).toContain('not confirmed yet');
  });

  it('holds nothing back once it is confirmed, and holds back only its own dish', () => {
    const confirmed = fileOf(grams('200 g curd', 'light', 200), grams('50 g cream', 'rich', 50));
    expect(description(confirmed).text).toContain('280 kcal');
    const two = aFile(
      [
        aDish('waits', aRecipe('r1', [grams('a', 'light', 100, { match: 'provisional' })])),
        aDish('ready', aRecipe('r2', [grams('b', 'rich', 100)])),
      ],
      [light, rich],
    );
    expect(description(two).text).toContain('The whole dish: 160 kcal');
  });

  it('waits for its food, not for nothing: without a food it is open as before', () => {
    const { energyKcal } = wholeOf(fileOf(aLine('salt', null, { match: 'provisional' })));
    expect(energyKcal?.provisional).toEqual([]);
    expect(energyKcal?.missing.map(({ reason }) => reason)).toEqual(['noFood']);
  });
});
