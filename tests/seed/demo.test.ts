import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { chapterList } from '#lib/cut/chapters';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { publishedNumbers, publishedStep } from '#lib/figures/published-numbers';
import { dishesOf } from '#lib/episode/context';
import { episodeFileText, parseEpisodeFile } from '#lib/episode/file';
import { episodeFileSchema } from '#lib/episode/schema';
import { cellOf, type FoodVersion } from '#lib/foods/food';
import { likelySlips } from '#lib/foods/likely-slip';
import type { Nutrient } from '#lib/foods/nutrients';
import { planDay } from '#lib/shoot/plan-day';
import { demoFile } from '#seed/demo/demo-file';
import { UNCHECKED_LABELS } from '#seed/demo/label-foods';
import { loadSr28 } from '#seed/load-sr28';
import { checkPlan } from '../shoot/checker';

const text = readFileSync(
  fileURLToPath(new URL('../../seed/demo.episode.json', import.meta.url)),
  'utf8',
);
const parsed = parseEpisodeFile(text);
if (!parsed.ok) throw new Error(parsed.problems.map((p) => `${p.path}: ${p.message}`).join('\n'));
const file = parsed.value;
const { episode, day, foods } = file;
const { segments } = episode;
const lines = dishesOf(segments).flatMap((dish) => dish.recipe.lines);
const steps = segments.flatMap((segment) => segment.steps);
const shots = segments.flatMap((segment) => segment.shots);
const sayings = segments.flatMap((segment) =>
  segment.talkingPoints.map((point) => ({ segment, text: point.text })),
);
const references = foods.filter((food) => food.kind === 'reference');
const labels = foods.filter((food) => food.kind === 'label');
const figures = episodeFigures(file);
const dish = (segmentId: string) => {
  const found = figures.dishes.find((each) => each.segmentId === segmentId);
  if (!found) throw new Error(`the demo has no dish ${segmentId}`);
  return found;
};

describe('the demo file', () => {
  const sr28 = loadSr28();

  it('is what its description makes, byte for byte', () => {
    expect(text).toBe(episodeFileText(demoFile(sr28)));
  });

  it('fits the schema and loses nothing on the way through it', () => {
    expect(episodeFileSchema.parse(JSON.parse(text))).toEqual(JSON.parse(text));
  });

  it('carries its reference foods as the table has them, but for allergens confirmed and own weights', () => {
    const byId = new Map(sr28.map((food) => [food.id, food]));
    for (const food of references) {
      const yields = food.yields.filter(({ own }) => own === null);
      expect({ ...food, yields, allergens: [] }).toEqual({ ...byId.get(food.id), allergens: [] });
    }
  });

  it('shows a conversion by own cooked weights, and a tally that differs from rounding alone', () => {
    const turkey = figures.dishes
      .flatMap(({ lines: all }) => all)
      .find(({ lineId }) => lineId === 'line-skillet-turkey');
    // 361 of 500 g and 306 of 420 g: 72.2 and 72.9 %, so 60 g cooked were about 82.7 g raw.
    expect((turkey?.eatenMg?.value ?? 0) / 1000).toBeCloseTo(60 / ((361 / 500 + 306 / 420) / 2), 6);
    const numbers = publishedNumbers(file, figures);
    const differing = figures.nutrients.flatMap((nutrient) =>
      figures.dishes.flatMap(({ segmentId, eaten }) => {
        const { number, status } = numbers(nutrient, { kind: 'eaten', segmentId });
        const rounded = Math.round((eaten[nutrient]?.value ?? 0) / publishedStep(nutrient));
        const alone = rounded * publishedStep(nutrient);
        return status === 'known' && Number(number?.replace(',', '')) !== alone ? [nutrient] : [];
      }),
    );
    expect(differing).not.toEqual([]);
  });

  it('has a label beside it whose slip is caught', () => {
    const [chickpeas] = UNCHECKED_LABELS;
    const slips = chickpeas ? likelySlips(chickpeas.version) : [];
    expect(slips[0]?.message).toBe('protein 2.1 looks like 21');
  });

  it('is big enough to show the work', () => {
    expect(lines.length).toBeGreaterThanOrEqual(25);
    expect(steps.length).toBeGreaterThanOrEqual(22);
    expect(shots.length).toBeGreaterThanOrEqual(16);
    expect(labels.length).toBeGreaterThanOrEqual(4);
    expect(file.stock.length).toBeGreaterThanOrEqual(10);
    expect(file.packs.length).toBeGreaterThanOrEqual(10);
    expect(segments.map((segment) => segment.kind)).toEqual([
      'talk',
      'recipe',
      'recipe',
      'recipe',
      'talk',
    ]);
  });

  it('names no real brand: the table prints brands in capitals', () => {
    expect(references.filter((food) => /\b[A-Z]{3,}\b/.test(food.name))).toEqual([]);
    expect(sr28.filter((food) => /\b[A-Z]{3,}\b/.test(food.name)).length).toBeGreaterThan(500);
  });
});

describe('ids of the demo', () => {
  const given: string[] = [];
  const referred: { path: string; id: string }[] = [];
  const walk = (data: unknown, path: string): void => {
    if (data === null || typeof data !== 'object') return;
    for (const [key, value] of Object.entries(data)) {
      const at = `${path}.${key}`;
      if (typeof value !== 'string') walk(value, at);
      else if (key === 'id') given.push(value);
      else if (key.endsWith('Id')) referred.push({ path: at, id: value });
    }
  };
  walk(file, '');

  it('are given once', () => {
    expect(given.filter((id, index) => given.indexOf(id) !== index)).toEqual([]);
  });

  it('exist wherever they are referred to', () => {
    const known = new Set(given);
    expect(referred.length).toBeGreaterThan(150);
    expect(referred.filter(({ id }) => !known.has(id))).toEqual([]);
  });
});

describe('bound numbers of the demo', () => {
  // The syntax as documented for the file: nutrient, then scope. Read here without the program's own reader.
  const NUTRIENTS =
    /^(energy|protein|fat|carbohydrate|fibre|sugars|salt|sodium|saturated), (whole|each|day)$/;
  const bindings = sayings.flatMap(({ segment, text: words }) =>
    [...words.matchAll(/\[([^\]]*)\]/g)].map((match) => ({ segment, inside: match[1] ?? '' })),
  );

  it('name a known nutrient and scope', () => {
    expect(bindings.length).toBeGreaterThanOrEqual(12);
    expect(bindings.filter(({ inside }) => !NUTRIENTS.test(inside))).toEqual([]);
  });

  it('ask for a dish only where there is one', () => {
    const ofDish = bindings.filter(({ inside }) => !inside.endsWith('day'));
    expect(ofDish.every(({ segment }) => segment.recipe !== null)).toBe(true);
    expect(new Set(bindings.map(({ inside }) => inside.split(', ')[1]))).toEqual(
      new Set(['whole', 'each', 'day']),
    );
  });

  it('leave no number typed by hand beside a nutrient', () => {
    const typed = sayings.filter(({ text: words }) => /\d+ ?(g|kcal|calories|grams)\b/.test(words));
    expect(typed).toEqual([]);
  });
});

describe('what the demo does not know', () => {
  it('salt to taste opens sodium and leaves the energy known', () => {
    const { whole, lines: rows } = dish('seg-skillet');
    expect(rows.filter((row) => row.gap === 'noGrams').map((row) => row.text)).toEqual([
      'Salt to taste',
    ]);
    expect(whole.sodium && figureStatus(whole.sodium)).toBe('open');
    expect(whole.energyKcal && figureStatus(whole.energyKcal)).toBe('known');
    expect(whole.protein && figureStatus(whole.protein)).toBe('known');
  });

  it('cardamom has no sugar value, so the pots have at least so much', () => {
    const { whole } = dish('seg-skyr');
    expect(whole.sugars && figureStatus(whole.sugars)).toBe('atLeast');
    expect(whole.sugars?.missing.map((part) => part.lineId)).toEqual(['line-skyr-cardamom']);
    expect(whole.energyKcal && figureStatus(whole.energyKcal)).toBe('known');
  });

  it('allergens stand declared, confirmed, possible and proposed', () => {
    const standings = new Map<string, string[]>();
    for (const food of foods) {
      for (const fact of food.allergens) {
        const words = `${fact.allergen} of ${food.version.sourceNo || food.id}`;
        standings.set(fact.standing, [...(standings.get(fact.standing) ?? []), words]);
      }
    }
    expect(standings.get('proposed')).toEqual(
      expect.arrayContaining(['glutenCereals of 20005', 'glutenCereals of 08120', 'fish of 06971']),
    );
    expect(standings.get('confirmed')).toContain('egg of 01123');
    expect(standings.get('declared')).toContain('milk of food-skyr');
    expect(standings.get('mayContain')).toContain('sesame of food-crispbread');
  });
});

describe('ways to give an amount in the demo', () => {
  it('one reading is shared by two ingredients, each share a part of one', () => {
    const shared = dishesOf(segments)
      .flatMap((each) => each.recipe.weighings)
      .filter((weighing) => weighing.shares.length === 2);
    expect(shared.map((weighing) => weighing.id)).toEqual(['weigh-onion-carrot']);
    const sum = shared[0]?.shares.reduce((total, s) => total + s.share.num / s.share.den, 0);
    expect(sum).toBeCloseTo(1, 12);
  });

  it('spoons, cups, pieces, servings, peel and trim, and what stays in the tray are all there', () => {
    const units = new Set(lines.map((line) => line.unit));
    for (const unit of ['g', 'tsp', 'tbsp', 'cup', 'piece', 'serving', null]) {
      expect(units).toContain(unit);
    }
    const asBought = lines.filter((line) => line.asBought);
    expect(asBought.map((line) => line.id)).toEqual(['line-loaf-zucchini']);
    const left = lines.filter((line) => line.leftBehind.kind === 'mass');
    expect(left.map((line) => line.id)).toEqual(['line-loaf-oil']);
  });

  it('a running total: the oats go onto the turkey, ± half a gram at both ends, and the scale’s 0.2 %', () => {
    const readings = dishesOf(segments).flatMap(({ recipe }) => recipe.weighings);
    const following = readings.filter(({ afterId }) => afterId !== null);
    expect(following.map(({ id, afterId }) => [id, afterId])).toEqual([
      ['weigh-loaf-oats', 'weigh-turkey'],
    ]);
    const row = dish('seg-loaf').lines.find((each) => each.lineId === 'line-loaf-oats');
    expect(row?.eatenMg?.value).toBe(50_000);
    expect(row?.eatenMg?.low).toBeCloseTo(49_000 * 0.998, 3);
    expect(row?.eatenMg?.high).toBeCloseTo(51_000 * 1.002, 3);
  });

  it('a dish as an ingredient: the glaze brings what its passata and honey hold', () => {
    const row = dish('seg-loaf').lines.find((each) => each.lineId === 'line-loaf-glaze');
    // 130 g at 35 kcal in the label's 125 g, and a tablespoon of honey, 21 g at 304 kcal in 100 g (USDA SR28, 19296).
    expect(row?.figures.energyKcal?.value).toBeCloseTo((130 * 35) / 125 + 21 * 3.04, 6);
  });

  it('zucchini is eaten without its ends', () => {
    // 318 g as bought, refuse 5 % (USDA SR28, FOOD_DES 11477): 302.1 g.
    const row = dish('seg-loaf').lines.find((each) => each.lineId === 'line-loaf-zucchini');
    expect(row?.eatenMg?.value).toBeCloseTo(302_100, 3);
  });

  it('every ingredient but the salt to taste has grams', () => {
    const rows = figures.dishes.flatMap((each) => each.lines);
    expect(rows.filter((row) => row.eatenMg === null).map((row) => row.lineId)).toEqual([
      'line-skillet-salt',
    ]);
  });

  it('the loaf has a finished weight lighter than what went in', () => {
    const { finishedMg, lines: rows } = dish('seg-loaf');
    const raw = rows.reduce((sum, row) => sum + (row.eatenMg?.value ?? 0), 0);
    // 70 to 95 % (common practice, no source): a tray of meat and vegetables loses water and nothing else.
    expect((finishedMg?.value ?? 0) / raw).toBeGreaterThan(0.7);
    expect((finishedMg?.value ?? 0) / raw).toBeLessThan(0.95);
  });
});

describe('labels of the demo agree with themselves', () => {
  const printed = (version: FoodVersion, nutrient: Nutrient): number => {
    const cell = cellOf(version.values, nutrient);
    if (cell.kind !== 'eq') throw new Error(`${version.id} states no ${nutrient}`);
    return cell.mantissa / 10 ** cell.scale;
  };

  it.each(labels.filter((food) => food.version.rule === 'us'))(
    '$name: energy against 4-4-9 within the rounding of 21 CFR 101.9(c)',
    ({ version }) => {
      const of = (nutrient: Nutrient) => printed(version, nutrient);
      const energy = of('energyKcal');
      // Half steps by 21 CFR 101.9(c)(1), (2), (6), (7); fibre may count 0 by (c)(1)(i).
      const slack = (energy > 50 ? 5 : 2.5) + 2 + 2 + 9 * (of('fat') >= 5 ? 0.5 : 0.25);
      const high = 4 * of('protein') + 9 * of('fat') + 4 * of('carbohydrate');
      expect(energy).toBeLessThanOrEqual(high + slack);
      expect(energy).toBeGreaterThanOrEqual(high - 4 * of('fibre') - slack);
      expect(version.basis).toBe('serving');
    },
  );

  it('the crispbread: kJ and kcal each from their own factors of Regulation (EU) 1169/2011, Annex XIV', () => {
    const [version] = labels.map((food) => food.version).filter((each) => each.rule === 'eu');
    if (!version) throw new Error('no EU label');
    const of = (nutrient: Nutrient) => printed(version, nutrient);
    const [p, f, c, fibre] = [of('protein'), of('fat'), of('carbohydrate'), of('fibre')];
    // Half units of the printed digits: 0.05 g of protein and fat, 0.5 g of carbohydrate and fibre.
    const kj = 17 * p + 37 * f + 17 * c + 8 * fibre;
    expect(Math.abs(of('energyKj') - kj)).toBeLessThanOrEqual(0.5 + 0.05 * 54 + 0.5 * 25);
    const kcal = 4 * p + 9 * f + 4 * c + 2 * fibre;
    expect(Math.abs(of('energyKcal') - kcal)).toBeLessThanOrEqual(0.5 + 0.05 * 13 + 0.5 * 6);
    expect(version.carbBasis).toBe('available');
    expect(version.basis).toBe('per100g');
  });

  it('article numbers have their check digit (GS1 General Specifications 7.9, from memory)', () => {
    const numbers = file.packs.flatMap((pack) => pack.gtin ?? []);
    expect(numbers.length).toBeGreaterThanOrEqual(labels.length);
    for (const number of numbers) {
      const sum = [...number].reduce(
        (total, digit, i) => total + Number(digit) * (i % 2 ? 3 : 1),
        0,
      );
      expect(number).toMatch(/^952\d{10}$/);
      expect(sum % 10).toBe(0);
    }
  });
});

describe('the cut and the day of the demo', () => {
  it('chapters keep every rule of chapter lists', () => {
    const { chapters, faults } = chapterList(episode);
    expect(faults).toEqual([]);
    expect(chapters.map((chapter) => chapter.startS)).toEqual([0, 45, 195, 385, 510]);
  });

  it('segments follow one another without a gap in the cut', () => {
    segments.slice(1).forEach((segment, index) => {
      expect(segment.inFrame).toBe(segments[index]?.outFrame);
    });
  });

  it('no lot of the pantry is below nothing', () => {
    for (const lot of file.stock) {
      expect(lot.moves.reduce((sum, move) => sum + move.deltaMg, 0)).toBeGreaterThan(0);
    }
  });

  it.each([1, 2, 3, 7, 11])('can be filmed with one pair of hands (seed %i)', (seed) => {
    const plan = planDay(file, { seed });
    expect(plan.broken).toEqual([]);
    expect(plan.status).toBe('feasible');
    expect(checkPlan(file, plan)).toEqual([]);
    expect(plan.wrapMin).toBeLessThanOrEqual(18 * 60 + 30);
    expect(plan.lots).toHaveLength(2);
  });

  it('has three meals really eaten, one appointment and one pin', () => {
    const meals = steps.filter((step) => step.role === 'eat');
    expect(meals).toHaveLength(3);
    expect(day?.kind).toBe('asLived');
    expect(day?.appointments).toHaveLength(1);
    expect(day?.pins).toHaveLength(1);
  });

  it('ground turkey is baked to 74 °C inside (FoodSafety.gov: 165 °F for ground poultry)', () => {
    const core = steps.flatMap((step) => step.coreMilliC ?? []);
    expect(core).toEqual([74_000]);
    expect((74 * 9) / 5 + 32).toBeGreaterThanOrEqual(165);
  });
});
