import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import type { Drawing } from './true-draw';

/** What things really weigh, in grams, by plain arithmetic. */
export interface TrueAmounts {
  /** A reading less its container. */
  readonly net: (reading: Weighing, recipe: Recipe) => number;
  /** What readings of a kind that share in an ingredient come to; null where it has none. */
  readonly read: (line: RecipeLine, recipe: Recipe, kind: Weighing['kind']) => number | null;
  /** How many of its unit. */
  readonly count: (line: RecipeLine) => number;
  readonly serving: (food: Food) => number;
  /** What is eaten of an ingredient, in the state of its food's composition. */
  readonly eaten: (line: RecipeLine, food: Food, recipe: Recipe) => number;
  /** What was left behind of it. */
  readonly left: (line: RecipeLine, recipe: Recipe) => number;
}

/** Spreads by eye (common practice, no source) where the kitchen states none, in thousandths. */
const BY_EYE = { spoon: 100, cup: 100, piece: 150 } as const;

export function trueAmounts({ kitchen }: EpisodeFile, { draw }: Drawing): TrueAmounts {
  const planned = kitchen.scales[0]?.resolutionMg ?? 1000;

  function net(reading: Weighing, recipe: Recipe): number {
    const { id, grossMg, tareMg, scaleId, method, afterId } = reading;
    const scale = kitchen.scales.find((each) => each.id === scaleId);
    const resolution = (scale?.resolutionMg ?? planned) / 1000;
    const off = (scale?.accuracyPpm ?? 0) / 1e6;
    const accuracy = off === 0 ? 1 : draw(`scale ${scaleId}`, 1 - off, 1 + off);
    const before = recipe.weighings.find((each) => each.id === afterId);
    // What stood on the scale at a reading, by the reading's own error.
    const stood = ({ id: which, grossMg: gross }: Weighing) =>
      gross / 1000 + draw(`reading ${which}`, -resolution / 2, resolution / 2);
    if (before) return accuracy * (stood(reading) - stood(before));
    const half = method === 'direct' ? resolution / 2 : resolution;
    return accuracy * ((grossMg - tareMg) / 1000 + draw(`reading ${id}`, -half, half));
  }

  function read(line: RecipeLine, recipe: Recipe, kind: Weighing['kind']): number | null {
    const readings = recipe.weighings.filter(
      (each) => each.kind === kind && each.shares.some(({ lineId }) => lineId === line.id),
    );
    if (readings.length === 0) return null;
    return readings.reduce((sum, reading) => {
      const share = reading.shares.find(({ lineId }) => lineId === line.id)?.share;
      return sum + (net(reading, recipe) * (share?.num ?? 0)) / (share?.den ?? 1);
    }, 0);
  }

  function count(line: RecipeLine): number {
    const { low, high } = line.quantity ?? { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
    return draw(`count ${line.id}`, low.num / low.den, high.num / high.den);
  }

  function serving({ name, version: { serving: printed, rule, id } }: Food): number {
    if (!printed?.massMg) throw new Error(`${name} has no serving by weight`);
    const g = printed.massMg / 1000;
    // 21 CFR 101.9(b)(7) from 5 g up: to whole grams. Elsewhere half a unit of the last place.
    const half = 0.5 / 10 ** (rule === 'us' ? 0 : printed.decimals);
    return draw(`serving ${id}`, g - half, g + half);
  }

  function measured(line: RecipeLine, food: Food): number {
    const measure = food.measures.find(({ name }) => name === (line.measureName ?? line.unit));
    if (!measure) throw new Error(`${line.text} has no measure`);
    const kind = line.unit === 'piece' || line.unit === 'cup' ? line.unit : 'spoon';
    const own = kitchen.spreads.find((each) => each.kind === kind)?.permille;
    const g = measure.massMg / 1000;
    const half = (g * (own ?? BY_EYE[kind])) / 1000 + 0.5 / 10 ** measure.digits;
    const of = draw(`measure ${food.id} ${measure.id}`, Math.max(0, g - half), g + half);
    return (count(line) * of * measure.qtyDen) / measure.qtyNum;
  }

  /** Grams as weighed raw or written. */
  function stated(line: RecipeLine, food: Food, recipe: Recipe): number {
    const weighed = read(line, recipe, 'raw');
    if (weighed !== null) return weighed;
    if (line.planned) {
      const { lowMg, valueMg, highMg } = line.planned;
      const plain = lowMg === highMg;
      const [low, high] = plain ? [valueMg - planned / 2, valueMg + planned / 2] : [lowMg, highMg];
      return draw(`grams ${line.id}`, Math.max(0, low) / 1000, high / 1000);
    }
    return line.unit === 'serving' ? count(line) * serving(food) : measured(line, food);
  }

  const cooked = (state: string) => state === 'cooked' || state === 'drained';

  function eaten(line: RecipeLine, food: Food, recipe: Recipe): number {
    const { refuse, state, id } = food.version;
    const weighedCooked = read(line, recipe, 'cooked');
    if (weighedCooked !== null && cooked(state)) return weighedCooked;
    let g = stated(line, food, recipe);
    const byMeasure = line.unit !== null && !line.planned && line.unit !== 'g';
    if (line.asBought && refuse && refuse.percent > 0 && !byMeasure) {
      g *= 1 - draw(`refuse ${id}`, refuse.percent - 0.5, refuse.percent + 0.5) / 100;
    }
    if (line.state !== 'asIs' && state !== 'asIs' && cooked(line.state) !== cooked(state)) {
      g = cooked(state) ? g * cookedFromRaw(line, food) : g / cookedFromRaw(line, food);
    }
    return line.leftBehind.kind === 'none' || line.leftBehind.made === 'fat'
      ? g
      : g - left(line, recipe);
  }

  function cookedFromRaw(line: RecipeLine, food: Food): number {
    const here = food.yields.find(({ own }) => own?.lineId === line.id);
    if (here) {
      const half = here.own?.halfMg ?? 0;
      const around = (what: string, mg: number) =>
        draw(`${what} ${here.id}`, Math.max(mg / 2, mg - half), mg + half);
      return around('cooked', here.cookedMg) / around('uncooked', here.rawMg);
    }
    const named = food.yields.filter(
      ({ method }) => line.cookMethod === null || method === line.cookMethod,
    );
    const past = named.filter(({ own }) => own !== null);
    const pool = past.length > 0 ? past : named;
    const alike = pool.filter(({ method }) => method === pool[0]?.method);
    const [low, high] = cooks(alike);
    return draw(`yield ${food.id} ${alike[0]?.method}`, low, high);
  }

  function left(line: RecipeLine, recipe: Recipe): number {
    const { leftBehind } = line;
    if (leftBehind.kind === 'mass') {
      return draw(`left ${line.id}`, leftBehind.lowMg / 1000, leftBehind.highMg / 1000);
    }
    const weighed = read(line, recipe, 'left');
    if (weighed === null) throw new Error(`what is left of ${line.text} was weighed`);
    return weighed;
  }

  return { net, read, count, serving, eaten, left };
}

/**
 * Two or more cooks of one's own: their range with the errors of their readings. One, or what is published: ± 5
 * points (common practice, no source) about the mean, and never less than what was seen.
 */
function cooks(seen: Food['yields']): readonly [number, number] {
  const shares = seen.map(({ rawMg, cookedMg }) => cookedMg / rawMg);
  if (seen.length > 1 && seen.every(({ own }) => own !== null)) {
    const half = (own: Food['yields'][number]['own']) => own?.halfMg ?? 0;
    return [
      Math.min(
        ...seen.map(({ rawMg, cookedMg, own }) => (cookedMg - half(own)) / (rawMg + half(own))),
      ),
      Math.max(
        ...seen.map(({ rawMg, cookedMg, own }) => (cookedMg + half(own)) / (rawMg - half(own))),
      ),
    ];
  }
  const mean = shares.reduce((sum, each) => sum + each, 0) / shares.length;
  return [Math.min(mean - 0.05, ...shares), Math.max(mean + 0.05, ...shares)];
}
