import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Food } from '#lib/foods/food';
import { aboutTolerance } from '#lib/figures/judge-limit';
import type { Difference } from '#lib/swap/difference';
import { sayDifference } from '#lib/swap/say-difference';
import { swapDifference } from '#lib/swap/swap-difference';
import { swapSentence, swapTable } from '#lib/swap/swap-words';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Pack } from '#lib/episode/stock-schema';
import { cardsOfSwaps } from '#lib/publish/cards/saved-changes';
import { swapTexts } from '#lib/publish/swap-texts';
import { grams } from '../support/build';
import { kitchen, LINES, variant } from './kitchen';

const toRich = { kind: 'food', lineId: 'curd', foodId: 'rich', massMg: null } as const;
const told = (file: EpisodeFile, steps: Parameters<typeof variant>[0], name?: string) => {
  const swap = swapDifference(file, variant(steps, name));
  if (!swap.ok) throw new Error('not applied');
  return swap.value;
};
const difference = (
  nutrient: Difference['nutrient'],
  likelyLow: number | null,
  likelyHigh: number | null,
): Difference => ({
  ...{ nutrient, value: ((likelyLow ?? likelyHigh ?? 0) + (likelyHigh ?? likelyLow ?? 0)) / 2 },
  ...{ low: likelyLow, high: likelyHigh, likelyLow, likelyHigh, missing: [] },
});

describe('a difference in whole numbers', () => {
  it('is worded by what of it holds', () => {
    const say = (...of: Parameters<typeof difference>) =>
      sayDifference(difference(...of), 'US').text;
    expect(say('energyKcal', 38.5, 42)).toBe('about 40 calories more');
    expect(say('energyKcal', -4.1, 4.9)).toBe('within 5 calories');
    expect(say('energyKcal', 31, 58)).toBe('31 to 58 calories more');
    expect(say('energyKcal', -58, -31)).toBe('31 to 58 calories fewer');
    expect(say('energyKcal', -7.5, 12.2)).toBe('between 8 calories fewer and 13 more');
    expect(say('protein', -0.4, 0.9)).toBe('within a gram');
    expect(say('protein', 2.6, 3.4)).toBe('about 3 g more protein');
    expect(say('fat', -12.1, -8.2)).toBe('8 to 13 g less fat');
    expect(say('fat', 4.3, null)).toBe('at least 4 g more fat');
    expect(say('fat', -4.3, null)).toBe('');
  });

  it('has the word for energy of its region', () => {
    const say = (low: number, high: number) =>
      sayDifference(difference('energyKcal', low, high), 'EU').text;
    expect(say(38.5, 42)).toBe('about 40 kcal more');
    expect(say(-58, -31)).toBe('31 to 58 kcal less');
    expect(say(-4.1, 4.9)).toBe('within 5 kcal');
    const file = kitchen(LINES);
    const european = { ...file, episode: { ...file.episode, region: 'EU' as const } };
    const little = told(european, [{ kind: 'amount', lineId: 'oats', massMg: 81_000 }]);
    const texts = [
      swapSentence(european, told(european, [toRich])),
      swapSentence(european, little),
      swapTable(european, [variant([toRich])]).text,
    ];
    expect(texts.join(' ')).toMatch(/kcal more.*the energy stays within 5 kcal.*kcal more/);
    expect(texts.join(' ')).not.toContain('calories');
  });

  it('holds over all of its likely range', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('energyKcal' as const, 'protein' as const),
        fc.double({ min: -900, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        (nutrient, from, width) => {
          const to = from + width;
          const { kind, text } = sayDifference(difference(nutrient, from, to), 'US');
          const [first = NaN, second = first] = (text.match(/\d+/g) ?? ['1']).map(Number);
          const sign = /fewer|less/.test(text) ? -1 : 1;
          if (kind === 'about') {
            const within = aboutTolerance(nutrient, first) + 1e-9;
            expect(sign * from).toBeGreaterThanOrEqual(
              first - within + Math.min(0, sign * (from - to)),
            );
            for (const end of [from, to])
              expect(Math.abs(sign * end - first)).toBeLessThanOrEqual(within);
          } else if (kind === 'alike') {
            for (const end of [from, to]) expect(Math.abs(end)).toBeLessThanOrEqual(first + 1e-9);
          } else if (text.startsWith('between')) {
            expect(-first).toBeLessThanOrEqual(from);
            expect(second).toBeGreaterThanOrEqual(to);
          } else {
            const [small, large] = text.startsWith('up to') ? [0, first] : [first, second];
            for (const end of [from, to]) {
              expect(sign * end).toBeGreaterThanOrEqual(small - 1e-9);
              expect(sign * end).toBeLessThanOrEqual(large + 1e-9);
            }
          }
        },
      ),
    );
  });
});

describe('the words of a swap', () => {
  it('are one sentence that says what changes and what stays', () => {
    // A third of 203.4 g: 51 kcal and 6.8 g of fat per 100 g more, 0.9 g of protein and 0.5 g of carbohydrate less.
    const swap = told(kitchen(LINES), [toRich], 'the full-fat one');
    expect(swapSentence(kitchen(LINES), swap)).toBe(
      'With “the full-fat one” it is about 35 calories more and about 5 g more fat a portion; the protein and the carbohydrate stay within a gram. Allergens of Full-fat curd: read its label.',
    );
    expect(swapSentence(kitchen(LINES), swap, null)).toContain('for the whole dish');
  });

  it('never give a number that nobody can say', () => {
    const swap = told(
      kitchen(LINES),
      [{ kind: 'food', lineId: 'oats', foodId: 'bare', massMg: null }],
      'spread for oats',
    );
    expect(swapSentence(kitchen(LINES), swap)).toMatch(
      /of the protein, the fat and the carbohydrate I can’t say \(no value for A spread of the house\)/,
    );
  });

  it('make a table of all saved swaps, with the ones that no longer apply', () => {
    const gone = { ...variant([{ kind: 'leaveOut', lineId: 'gone' }], 'no crumbs'), id: 'w' };
    const { text, rows } = swapTable(kitchen(LINES), [variant([toRich], 'full fat'), gone]);
    expect(rows).toHaveLength(2);
    expect(text.split('\n')).toEqual([
      'full fat (bowl, a portion): about 35 calories more; protein within a gram; about 5 g more fat; carbohydrate within a gram; allergens of Full-fat curd: read its label',
      'no crumbs: An ingredient that is to be swapped is gone.',
    ]);
  });
});

describe('what else a swap changes', () => {
  const milk = (
    id: string,
    standing: 'declared' | 'mayContain' | 'proposed',
  ): Food['allergens'][0] => ({
    ...{ id, allergen: 'milk', standing, reason: 'label' },
  });
  const withAllergens = (of: Partial<Record<string, Food['allergens']>>): EpisodeFile => {
    const file = kitchen(LINES);
    return {
      ...file,
      foods: file.foods.map((food) => ({ ...food, allergens: of[food.id] ?? [] })),
    };
  };

  const toOats = { kind: 'food', lineId: 'curd', foodId: 'oats', massMg: null } as const;
  const cellsOf = (file: EpisodeFile, step: typeof toRich | typeof toOats, label: string) =>
    swapTable(file, [variant([step])])
      .rows.flatMap(({ cells }) => cells)
      .filter((cell) => cell.label === label)
      .map(({ text }) => text);

  it('is allergens gained and lost', () => {
    const file = withAllergens({ lean: [milk('a', 'declared')] });
    const out = told(file, [toOats]);
    expect(out.allergens.lost).toMatchObject([{ allergen: 'milk', standing: 'contains' }]);
    expect(cellsOf(file, toOats, 'allergens')).toEqual([
      'no milk as an ingredient (check labels for traces)',
    ]);
    const dry = withAllergens({ rich: [milk('a', 'declared')], lean: [milk('b', 'mayContain')] });
    const into = told(dry, [toRich]);
    expect(into.allergens.gained).toMatchObject([
      { standing: 'contains', foods: ['Full-fat curd'] },
    ]);
    expect(into.allergens.lost).toEqual([]);
  });

  it('is no allergen lost that the new food may have, or of which nobody has said anything', () => {
    const labelled = { lean: [milk('a', 'declared')] };
    const asked = withAllergens({ ...labelled, rich: [milk('b', 'proposed')] });
    expect(told(asked, [toRich]).allergens).toMatchObject({ gained: [], lost: [], unsaid: [] });
    expect(cellsOf(asked, toRich, 'allergens')).toEqual(['to check: milk (Full-fat curd)']);
    const trace = withAllergens({ ...labelled, rich: [milk('b', 'mayContain')] });
    expect(cellsOf(trace, toRich, 'allergens')).toEqual(['may contain milk (Full-fat curd)']);
    const beside = withAllergens({ ...labelled, bare: [milk('b', 'mayContain')] });
    expect(cellsOf(beside, toOats, 'allergens')).toEqual([
      'may contain milk (A spread of the house)',
    ]);
    const unread = withAllergens(labelled);
    expect(cellsOf(unread, toRich, 'allergens')).toEqual([
      'allergens of Full-fat curd: read its label',
    ]);
  });

  const pack = (id: string, minor: number): Pack => ({
    ...{
      id: `p-${id}`,
      foodId: id,
      name: id,
      netMg: 500_000,
      netMl: null,
      drainedMg: null,
      gtin: null,
    },
    ...{ stepMg: null, prices: [] },
    price: { minor, currency: 'EUR', seenOn: '2026-11-01' },
  });

  it('is what it costs, where prices are known', () => {
    const planned = [grams('curd', 'lean', 200), ...LINES.slice(1)];
    const file = { ...kitchen(planned), packs: [pack('lean', 250), pack('rich', 400)] };
    // A list buys the 200 g that are planned: at 0.50 and at 0.80 for 100 g.
    const { cost } = told(file, [toRich]);
    expect(cost).toMatchObject({ known: true, currency: 'EUR' });
    if (cost.known) expect(cost.minor).toBe(60);
    expect(cellsOf(file, toRich, 'cost')).toEqual(['EUR 0.20 more a portion']);
    const other = told(file, [{ kind: 'food', lineId: 'curd', foodId: 'oats', massMg: null }]);
    expect(other.cost).toMatchObject({ known: false });
  });

  it('costs the same only where it does to the last cent', () => {
    const planned = [grams('curd', 'lean', 200), ...LINES.slice(1)];
    // 200 g of 500: 1.00, and 1.01 of a pack that is 3 cents dearer, which is less than a cent for each of three.
    const cell = (minor: number) =>
      cellsOf(
        { ...kitchen(planned), packs: [pack('lean', 250), pack('rich', minor)] },
        toRich,
        'cost',
      );
    expect(cell(253)).toEqual(['EUR 0.01 more in all']);
    expect(cell(250)).toEqual(['costs the same']);
  });

  it('rests on a food that nobody has confirmed, where that is swapped, and says so', () => {
    const waiting = LINES.map((line) => ({ ...line, match: 'provisional' as const }));
    const { remarks } = told(kitchen(waiting), [toRich]);
    expect(remarks.map(({ code, lineId }) => [code, lineId])).toEqual([['unconfirmed', 'curd']]);
  });

  it('has its reason in place of numbers in all that goes out, where a food or a photographed weight waits', () => {
    const waits = (of: Partial<RecipeLine>) => {
      const lines = LINES.map((line) => (line.id === 'curd' ? { ...line, ...of } : line));
      const file = kitchen(lines);
      return {
        ...file,
        publish: { replies: [], pieces: [], variants: [variant([toRich], 'full fat')] },
      };
    };
    const photographed = { at: '2026-11-28T09:00:00Z', sha256: 'a'.repeat(64) };
    for (const [of, why] of [
      [{ match: 'provisional' }, 'not confirmed yet: curd'],
      [{ photographed }, 'photographed, not typed yet: curd'],
    ] as const) {
      const file = waits(of);
      const label = 'llergens of Full-fat curd: read its label';
      expect(swapTexts(file)).toEqual([
        `With “full fat” there are no numbers yet (${why}). A${label}.`,
      ]);
      const { rows, text } = swapTable(file, file.publish.variants);
      expect(text).toBe(`full fat (bowl): no numbers yet: ${why}; a${label}`);
      const drawn = cardsOfSwaps(rows, 'draft').map((card) => card.rows.map(({ words }) => words));
      expect(drawn).toEqual([[`no numbers yet: ${why}`, `a${label}`]]);
    }
  });

  it('is told of allergens in a sentence too: those it brings, those to check and those nobody has read', () => {
    const sentence = (rich: Food['allergens']) => {
      const file = withAllergens({ rich });
      return swapSentence(file, told(file, [toRich]));
    };
    expect(sentence([milk('a', 'declared')])).toMatch(/gram\. With milk \(Full-fat curd\)\.$/);
    expect(sentence([milk('a', 'mayContain')])).toMatch(/\. May contain milk \(Full-fat curd\)\.$/);
    expect(sentence([milk('a', 'proposed')])).toMatch(/\. To check: milk \(Full-fat curd\)\.$/);
    expect(sentence([])).toMatch(/\. Allergens of Full-fat curd: read its label\.$/);
    const both = withAllergens({ rich: [milk('a', 'declared')], lean: [milk('b', 'declared')] });
    expect(swapSentence(both, told(both, [toRich]))).toMatch(/within a gram\.$/);
  });

  it('is the oven and what was stated raw or cooked, in words', () => {
    const file = kitchen(LINES);
    const cooked = file.foods.map((food) =>
      food.id === 'lean'
        ? { ...food, version: { ...food.version, state: 'raw' as const } }
        : food.id === 'rich'
          ? { ...food, version: { ...food.version, state: 'cooked' as const } }
          : food,
    );
    const { remarks } = told({ ...file, foods: cooked }, [toRich]);
    expect(remarks.map(({ code }) => code)).toEqual(['state']);
  });
});
