import { describe, expect, it } from 'vitest';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { applySwap } from '#lib/swap/apply-swap';
import { practicalRules } from '#lib/swap/practical-steps';
import { recipeFit, type RecipeFitWish } from '#lib/swap/recipe-fit';
import { aLine, grams } from '../support/build';
import { kitchen, LINES } from './kitchen';

const target = (
  nutrient: Target['nutrient'],
  relation: Target['relation'],
  amount: number,
  more: Partial<Target> = {},
): Target => ({
  ...{ id: `${nutrient}-${relation}`, nutrient, relation, amount },
  ...{ segmentId: 'bowl', portionId: 'third' },
  ...more,
});
const lines = [grams('curd', 'lean', 200), grams('oats', 'oats', 80), grams('oil', 'oil', 12)];
const bowl = (): EpisodeFile => {
  const file = kitchen(lines);
  file.episode.segments[0]?.recipe?.weighings.splice(0);
  return file;
};
async function fit(file: EpisodeFile, wish: Partial<RecipeFitWish>) {
  const found = await recipeFit(file, { segmentId: 'bowl', ...wish });
  if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join(' '));
  return found.value;
}

describe('a recipe fitted to targets', () => {
  // 200 g at 9.8 and 80 g at 13.2 g of protein per 100 g: 30.16 g, a third 10.05. For 13 g a portion 8.84 g more: 90.2 g
  // of curd is 0.45 of it, 67 g of oats 0.84 of them.
  const protein = target('protein', 'atLeast', 13);

  it('meets them in practical steps with the least change, and says what it comes to', async () => {
    const found = await fit(bowl(), { targets: [protein] });
    if (found.status !== 'fits') throw new Error(found.status);
    expect(found.lines).toEqual([{ lineId: 'curd', text: 'curd', fromMg: 200_000, toMg: 295_000 }]);
    expect(found.change).toBeCloseTo(0.475, 9);
    expect(found.targets[0]?.after?.value).toBeCloseTo((2.95 * 9.8 + 0.8 * 13.2) / 3, 9);
    const applied = applySwap(bowl(), { id: 'v', segmentId: 'bowl', steps: [...found.steps] });
    expect(applied).toMatchObject({ ok: true, value: found.after });
  });

  it('leaves what may not change as it is', async () => {
    const rules = practicalRules(bowl(), 'bowl').map((rule) =>
      rule.lineId === 'curd' ? { lineId: 'curd', kind: 'fixed' as const, why: 'a pot' } : rule,
    );
    const found = await fit(bowl(), { targets: [protein], rules });
    if (found.status !== 'fits') throw new Error(found.status);
    expect(found.lines.map(({ lineId, toMg }) => [lineId, toMg])).toEqual([['oats', 150_000]]);
  });

  it('met whatever the range is stricter: its verdict is met, and no less change would do', async () => {
    // 295 g: 13.157 g. At all lows: 294.5 g of 9.75 and 79.5 g of 13.15 g per 100 g, a third 13.056 g.
    const tight = target('protein', 'atLeast', 13.1);
    const loose = await fit(bowl(), { targets: [tight] });
    const strict = await fit(bowl(), { targets: [tight], certainty: 'range' });
    if (loose.status !== 'fits' || strict.status !== 'fits') throw new Error('no fit');
    expect(loose.lines[0]?.toMg).toBe(295_000);
    expect(loose.targets[0]?.verdict).toBe('cannotTell');
    expect(strict.lines[0]?.toMg).toBe(300_000);
    expect(strict.targets[0]?.verdict).toBe('met');
    expect(strict.targets[0]?.after?.low).toBeGreaterThanOrEqual(13.1);
    expect(strict.change).toBeGreaterThan(loose.change);
  });

  it('names the targets that clash and comes near them', async () => {
    const few = target('energyKcal', 'atMost', 100);
    const fat = target('fat', 'atMost', 20);
    const found = await fit(bowl(), { targets: [fat, protein, few] });
    if (found.status !== 'clash') throw new Error(found.status);
    expect(found.smallest).toBe(true);
    expect(found.clashing.map(({ id }) => id)).toEqual([protein.id, few.id]);
    expect(found.nearest?.targets.some(({ verdict }) => verdict !== 'met')).toBe(true);
  });

  it('counts the day with the other dishes, and goes in whole pieces', async () => {
    const file = bowl();
    const slice = {
      id: 'm',
      name: 'slice',
      qtyNum: 1,
      qtyDen: 1,
      massMg: 40_000,
      digits: 0,
      source: 'pack',
    };
    const [first] = file.foods;
    if (!first) throw new Error('no food');
    const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
    file.episode.segments[0]?.recipe?.lines.splice(
      0,
      3,
      aLine('bread', 'lean', { unit: 'piece', quantity: two, measureName: 'slice' }),
    );
    const foods = [{ ...first, measures: [slice] }, ...file.foods.slice(1)];
    // 80 g and 55 g of oats: 7.84 + 7.26 = 15.1 g of protein; a slice is 3.92 g.
    const day = target('protein', 'atLeast', 18, { segmentId: null, portionId: null });
    const found = await fit({ ...file, foods }, { targets: [day] });
    if (found.status !== 'fits') throw new Error(found.status);
    expect(found.lines.map(({ toMg }) => toMg)).toEqual([120_000]);
    expect(found.targets[0]?.after?.value).toBeCloseTo(1.2 * 9.8 + 0.55 * 13.2, 9);
  });

  it('goes in half spoons where it is spooned, and stays spooned', async () => {
    const spoon = { id: 's', name: 'tbsp', qtyNum: 1, qtyDen: 1, massMg: 13_500, digits: 1 };
    const one = { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
    const oil = aLine('oil', 'oil', { unit: 'tbsp', quantity: one });
    const file = kitchen([grams('curd', 'lean', 200), grams('oats', 'oats', 80), oil]);
    file.episode.segments[0]?.recipe?.weighings.splice(0);
    const foods = file.foods.map((food) =>
      food.id === 'oil' ? { ...food, measures: [{ ...spoon, source: 'a table' }] } : food,
    );
    const rules = practicalRules({ ...file, foods }, 'bowl');
    expect(rules[2]).toMatchObject({ stepMg: 6_750, stepWords: 'half a tablespoon' });
    // 13.5 g of oil; 200 g at 0.4 and 80 g at 6.5 g of fat: 19.5 g in all, a third 6.5 g. For 9 g 7.5 g more: two halves.
    const found = await fit(
      { ...file, foods },
      { targets: [target('fat', 'atLeast', 9)], rules: rules.slice(2) },
    );
    if (found.status !== 'fits') throw new Error(found.status);
    const after = found.after.episode.segments[0]?.recipe?.lines[2];
    expect(after).toMatchObject({ planned: null, quantity: { low: { num: 2, den: 1 } } });
  });

  it('of which nobody can say whether they are met says so', async () => {
    const open = kitchen(LINES);
    const asked = await recipeFit(open, {
      segmentId: 'bowl',
      targets: [target('sodium', 'atMost', 500)],
    });
    expect(asked.ok ? '' : asked.problems[0]?.message).toContain(
      'no food chosen for salt to taste',
    );
    const lost = target('protein', 'atLeast', 10, { portionId: 'eaten' });
    const gone = await recipeFit(open, { segmentId: 'bowl', targets: [lost] });
    expect(gone.ok ? '' : gone.problems[0]?.message).toBe(
      'The portion of the target for protein is gone.',
    );
    expect(await recipeFit(open, { segmentId: 'gone' })).toMatchObject({ ok: false });
    expect(await recipeFit(open, { segmentId: 'bowl', targets: [] })).toMatchObject({ ok: false });
  });
});
