import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choosePacks, costOf, type PackOption, type PackWish } from '#lib/shopping/choose-packs';

/** Every count of every option up to what is enough alone: no cleverness, and no code of the choice but `costOf`. */
function exhaustive(options: readonly PackOption[], { need, laterUse }: PackWish) {
  const rates = options.map(({ minor, priceFor }) => [minor ?? 0, priceFor] as const);
  const [minor, per] = rates.reduce((a, b) => (b[0] * a[1] < a[0] * b[1] ? b : a));
  let best: number[] | null = null;
  const walk = (at: number, times: readonly number[]) => {
    const option = options[at];
    if (option) {
      const most = Math.min(Math.ceil(need / option.holds), option.most ?? Infinity);
      for (let k = 0; k <= most; k++) walk(at + 1, [...times, k]);
      return;
    }
    const each = options.map((of, i) => [of, times[i] ?? 0] as const);
    const total = each.reduce((sum, [of, k]) => sum + of.holds * k, 0);
    if (total < need) return;
    const kept = Math.min(total - need, laterUse);
    const cost = each.reduce((sum, [of, k]) => sum + costOf(of, k), 0);
    const packs = each.reduce((sum, [of, k]) => sum + (of.packs || (k > 0 ? 1 / k : 0)) * k, 0);
    const rank = [cost - Math.floor((kept * minor) / per), total - need - kept, packs];
    const better = best && rank.findIndex((value, i) => value !== best?.[i]);
    if (!best || (better !== null && better >= 0 && (rank[better] ?? 0) < (best[better] ?? 0)))
      best = rank;
  };
  walk(0, []);
  return best as number[] | null;
}

const pack = (id: string, holds: number, minor: number | null, more: Partial<PackOption> = {}) => ({
  ...{ id, holds, packs: 1, minor, priceFor: holds, most: null },
  ...more,
});

const options = (priced: boolean) =>
  fc
    .array(
      fc.record({
        holds: fc.integer({ min: 1, max: 12 }),
        minor: fc.integer({ min: 0, max: 9 }),
        most: fc.option(fc.integer({ min: 1, max: 3 })),
        bundle: fc.integer({ min: 1, max: 3 }),
        priceFor: fc.option(fc.integer({ min: 1, max: 10 })),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((all) =>
      all.map(({ holds, minor, most, bundle, priceFor }, at) => ({
        id: `o${at}`,
        holds: holds * bundle,
        packs: priceFor === null ? bundle : 0,
        minor: priced ? minor : null,
        priceFor: priceFor ?? holds * bundle,
        most,
      })),
    );

describe('the choice of packs', () => {
  it.each([true, false])('equals trying everything, with prices: %s', (priced) => {
    fc.assert(
      fc.property(
        options(priced),
        fc.record({
          need: fc.integer({ min: 1, max: 24 }),
          laterUse: fc.integer({ min: 0, max: 20 }),
        }),
        (all, wish) => {
          const choice = choosePacks(all, wish);
          const best = exhaustive(all, wish);
          const found = choice && [
            (choice.minor ?? 0) - choice.credit,
            choice.left - choice.keeps,
            choice.packs,
          ];
          expect(found).toEqual(best);
          if (!choice) return;
          const total = all.reduce((sum, of, at) => sum + of.holds * (choice.times[at] ?? 0), 0);
          expect(choice).toMatchObject({ total, left: total - wish.need, proven: true });
          expect(total).toBeGreaterThanOrEqual(wish.need);
          expect(choosePacks([...all].reverse(), wish)?.times.toReversed()).toEqual(choice.times);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('mixes sizes where that is cheapest, and takes offers no more often than they hold', () => {
    const small = pack('small', 125_000, 120);
    const large = pack('large', 500_000, 350);
    expect(choosePacks([small, large], { need: 600_000, laterUse: 0 })).toMatchObject({
      times: [1, 1],
      minor: 470,
      left: 25_000,
    });
    const three = pack('three', 375_000, 250, { packs: 3, most: 1 });
    expect(choosePacks([small, three], { need: 700_000, laterUse: 0 })).toMatchObject({
      times: [3, 1],
      minor: 610,
      packs: 6,
    });
  });

  it('buys the larger pack only where its rest keeps until a use that needs it', () => {
    const packs = [pack('half', 500_000, 200), pack('kilo', 1_000_000, 300)];
    expect(choosePacks(packs, { need: 500_000, laterUse: 0 })).toMatchObject({ times: [1, 0] });
    expect(choosePacks(packs, { need: 500_000, laterUse: 400_000 })).toMatchObject({
      times: [0, 1],
      credit: 120,
      keeps: 400_000,
    });
  });

  it('weighs loose goods in steps, and cannot buy what there is not enough of', () => {
    const loose = pack('loose', 50_000, 399, { priceFor: 1_000_000, packs: 0 });
    expect(choosePacks([loose], { need: 320_000, laterUse: 0 })).toMatchObject({
      times: [7],
      total: 350_000,
      minor: 140,
    });
    expect(choosePacks([{ ...loose, most: 3 }], { need: 320_000, laterUse: 0 })).toBeNull();
    expect(choosePacks([], { need: 1, laterUse: 0 })).toBeNull();
  });
});
