import type { EpisodeFile, Recipe, RecipeLine, Weighing } from '#lib/episode/schema';
import type { Food, FoodMeasure } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { trueRange } from './true-range';

/**
 * One kitchen as it may really have been behind what an episode file states: each uncertain thing is drawn once,
 * uniformly between its ends, and everything that rests on it sees the same truth. Plain arithmetic in grams,
 * written a second time: nothing of how figures are bounded is used here.
 */
export interface TrueKitchen {
  /** Of the whole dish, in the nutrient's unit. */
  readonly whole: (segmentId: string, nutrient: Nutrient) => number;
  readonly per100g: (segmentId: string, nutrient: Nutrient) => number;
  readonly portion: (segmentId: string, portionId: string, nutrient: Nutrient) => number;
  readonly day: (nutrient: Nutrient) => number;
}

/** Spreads by eye (common practice, no source) where the kitchen states none, in thousandths. */
const BY_EYE = { spoon: 100, cup: 100, piece: 150, slice: 100, handful: 350 } as const;
const KJ = { protein: 17, fat: 37, carbohydrate: 17, fibre: 8 } as const;

export function trueKitchen(file: EpisodeFile, random: () => number): TrueKitchen {
  const drawn = new Map<string, number>();
  const draw = (what: string, low: number, high: number): number => {
    const known = drawn.get(what);
    if (known !== undefined) return known;
    const truth = low + random() * (high - low);
    drawn.set(what, truth);
    return truth;
  };
  const worked = new Map<string, number>();
  /** Work that several figures share, done once. */
  const once = (what: string, work: () => number): number => {
    const known = worked.get(what);
    if (known !== undefined) return known;
    const result = work();
    worked.set(what, result);
    return result;
  };
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const planned = file.kitchen.scales[0]?.resolutionMg ?? 1000;

  function net({ id, grossMg, tareMg, scaleId, method }: Weighing): number {
    const scale = file.kitchen.scales.find((each) => each.id === scaleId);
    const resolution = scale?.resolutionMg ?? planned;
    const half = method === 'direct' ? resolution / 2 : resolution;
    const shown = grossMg - tareMg;
    const off = (scale?.accuracyPpm ?? 0) / 1e6;
    const read = draw(`reading ${id}`, Math.max(0, shown - half), shown + half) / 1000;
    return off === 0 ? read : read * draw(`scale ${scaleId}`, 1 - off, 1 + off);
  }

  function measureGrams(food: Food, measure: FoodMeasure, kind: keyof typeof BY_EYE): number {
    const own = file.kitchen.spreads.find((each) => each.kind === kind)?.permille;
    const share = (own ?? BY_EYE[kind]) / 1000;
    const g = measure.massMg / 1000;
    const half = g * share + 0.5 / 10 ** measure.digits;
    const of = draw(`measure ${food.id} ${measure.id}`, Math.max(0, g - half), g + half);
    return (of * measure.qtyDen) / measure.qtyNum;
  }

  function servingGrams(food: Food): number {
    const { serving, rule, id } = food.version;
    if (!serving?.massMg) throw new Error(`${food.name} has no serving by weight`);
    const g = serving.massMg / 1000;
    // 21 CFR 101.9(b)(7) from 5 g up: to whole grams. Elsewhere half a unit of the last place.
    const half = 0.5 / 10 ** (rule === 'us' ? 0 : serving.decimals);
    return draw(`serving ${id}`, g - half, g + half);
  }

  function count(line: RecipeLine): number {
    const { low, high } = line.quantity ?? { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
    return draw(`count ${line.id}`, low.num / low.den, high.num / high.den);
  }

  /** Grams as weighed or written. */
  function stated(line: RecipeLine, food: Food, recipe: Recipe): number {
    const readings = recipe.weighings.filter(
      ({ kind, shares }) => kind === 'raw' && shares.some(({ lineId }) => lineId === line.id),
    );
    if (readings.length > 0) {
      return readings.reduce((sum, reading) => {
        const share = reading.shares.find(({ lineId }) => lineId === line.id)?.share;
        return sum + (net(reading) * (share?.num ?? 0)) / (share?.den ?? 1);
      }, 0);
    }
    if (line.planned) {
      const { lowMg, valueMg, highMg } = line.planned;
      const [low, high] =
        lowMg === highMg
          ? [Math.max(0, valueMg - planned / 2), valueMg + planned / 2]
          : [lowMg, highMg];
      return draw(`grams ${line.id}`, low / 1000, high / 1000);
    }
    if (line.unit === 'serving') return count(line) * servingGrams(food);
    const measure = food.measures.find(({ name }) => name === (line.measureName ?? line.unit));
    if (!measure) throw new Error(`${line.text} has no measure`);
    const kind = line.unit === 'piece' ? 'piece' : line.unit === 'cup' ? 'cup' : 'spoon';
    return count(line) * measureGrams(food, measure, kind);
  }

  function yieldOf(food: Food): number {
    const method = food.yields[0]?.method;
    const seen = food.yields
      .filter((each) => each.method === method)
      .map(({ rawMg, cookedMg }) => cookedMg / rawMg);
    const [only = NaN] = seen;
    // A single one stands for ± 5 points (common practice, no source).
    return seen.length === 1
      ? draw(`yield ${food.id}`, only - 0.05, only + 0.05)
      : draw(`yield ${food.id}`, Math.min(...seen), Math.max(...seen));
  }

  const cooked = (state: string) => state === 'cooked' || state === 'drained';

  /** Grams that are eaten, in the state of the food's composition. */
  function eaten(line: RecipeLine, food: Food, recipe: Recipe): number {
    let g = stated(line, food, recipe);
    const byEye = line.unit !== null && !line.planned && line.unit !== 'g';
    const { refuse, state, id } = food.version;
    if (line.asBought && refuse && refuse.percent > 0 && !byEye) {
      g *= 1 - draw(`refuse ${id}`, refuse.percent - 0.5, refuse.percent + 0.5) / 100;
    }
    if (line.state !== 'asIs' && state !== 'asIs' && cooked(line.state) !== cooked(state)) {
      g = cooked(state) ? g * yieldOf(food) : g / yieldOf(food);
    }
    if (line.leftBehind.kind === 'mass') {
      const { lowMg, highMg } = line.leftBehind;
      g -= draw(`left ${line.id}`, lowMg / 1000, highMg / 1000);
    }
    return g;
  }

  /** What the food's source states it for: 100 g, or a serving. */
  function timesBasis(line: RecipeLine, food: Food, recipe: Recipe): number {
    if (food.version.basis === 'per100g') return eaten(line, food, recipe) / 100;
    if (line.unit === 'serving' && !line.planned) return count(line);
    return eaten(line, food, recipe) / servingGrams(food);
  }

  function perBasis(food: Food, nutrient: Nutrient): number {
    const { values, rule, id } = food.version;
    const cell = values[nutrient] ?? { kind: 'missing' };
    const [low, high] = trueRange(rule, nutrient, cell);
    return draw(`food ${id} ${nutrient}`, low, high);
  }

  function ofFood(food: Food, nutrient: Nutrient): number {
    if (nutrient === 'carbohydrate') {
      const wanted = file.episode.region === 'US' ? 'total' : 'available';
      return carbohydrate(food, wanted);
    }
    if (nutrient === 'energyKj' && !food.version.values.energyKj) {
      return (
        KJ.protein * perBasis(food, 'protein') +
        KJ.fat * perBasis(food, 'fat') +
        KJ.carbohydrate * carbohydrate(food, 'available') +
        KJ.fibre * perBasis(food, 'fibre')
      );
    }
    return perBasis(food, nutrient);
  }

  function carbohydrate(food: Food, wanted: 'total' | 'available'): number {
    const said = perBasis(food, 'carbohydrate');
    if (food.version.carbBasis === wanted) return said;
    const fibre = perBasis(food, 'fibre');
    return wanted === 'total' ? said + fibre : said - fibre;
  }

  function ofRecipe(recipe: Recipe, nutrient: Nutrient): number {
    return once(`total ${recipe.id} ${nutrient}`, () =>
      recipe.lines.reduce((sum, line) => {
        const food = foods.get(line.foodId ?? '');
        if (!food) throw new Error(`${line.text} has no food`);
        const amount = once(`line ${recipe.id} ${line.id}`, () => timesBasis(line, food, recipe));
        return sum + amount * ofFood(food, nutrient);
      }, 0),
    );
  }

  function recipeOf(segmentId: string): Recipe {
    const recipe = file.episode.segments.find(({ id }) => id === segmentId)?.recipe;
    if (!recipe) throw new Error(`${segmentId} is a dish`);
    return recipe;
  }

  function finished(recipe: Recipe): number {
    const [last] = recipe.weighings.filter(({ kind }) => kind === 'finished').slice(-1);
    if (!last) throw new Error(`${recipe.title} was not weighed`);
    return net(last);
  }

  return {
    whole: (segmentId, nutrient) => ofRecipe(recipeOf(segmentId), nutrient),
    per100g: (segmentId, nutrient) => {
      const recipe = recipeOf(segmentId);
      return (ofRecipe(recipe, nutrient) * 100) / finished(recipe);
    },
    portion: (segmentId, portionId, nutrient) => {
      const recipe = recipeOf(segmentId);
      const portion = recipe.portions.find(({ id }) => id === portionId);
      const all = ofRecipe(recipe, nutrient);
      if (portion?.kind === 'count') return all / portion.of;
      if (portion?.kind !== 'mass') throw new Error(`${portionId} is a portion`);
      return (all * portion.massMg) / 1000 / finished(recipe);
    },
    day: (nutrient) =>
      file.episode.segments
        .flatMap(({ recipe, eaten: { num, den } }) =>
          recipe ? [(ofRecipe(recipe, nutrient) * num) / den] : [],
        )
        .reduce((sum, each) => sum + each, 0),
  };
}
