import type { EpisodeFile } from '#lib/episode/schema';
import { figureParts } from '#lib/figures/breakdown-parts';
import type { Parts } from '#lib/figures/parts';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Food } from '#lib/foods/food';
import { cellInterval } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { boundsOf, variancePieces } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';

/** Which side the law limits. */
export type AllowanceSide = 'atMost' | 'atLeast';

/**
 * What a US label may lawfully be off, as a part of what it declares: 21 CFR 101.9(g)(5), at most 120 % of
 * calories, sugars, fats, cholesterol and sodium; (g)(4)(ii), at least 80 % of naturally occurring protein,
 * total carbohydrate, fibre, other fats, vitamins and minerals (from memory). Of what was added to a fortified food
 * (g)(4)(i) asks 100 %; a label does not say which it is, so the wider limit stands. The other side is
 * 'reasonable' by (g)(6), without a number.
 */
const LAWFUL: Partial<Readonly<Record<Nutrient, readonly [AllowanceSide, number]>>> = {
  energyKcal: ['atMost', 1.2],
  fat: ['atMost', 1.2],
  saturated: ['atMost', 1.2],
  transFat: ['atMost', 1.2],
  cholesterol: ['atMost', 1.2],
  sodium: ['atMost', 1.2],
  sugars: ['atMost', 1.2],
  addedSugars: ['atMost', 1.2],
  protein: ['atLeast', 0.8],
  carbohydrate: ['atLeast', 0.8],
  fibre: ['atLeast', 0.8],
  monounsaturated: ['atLeast', 0.8],
  polyunsaturated: ['atLeast', 0.8],
  potassium: ['atLeast', 0.8],
  calcium: ['atLeast', 0.8],
  iron: ['atLeast', 0.8],
  magnesium: ['atLeast', 0.8],
  phosphorus: ['atLeast', 0.8],
  zinc: ['atLeast', 0.8],
  copper: ['atLeast', 0.8],
  manganese: ['atLeast', 0.8],
  selenium: ['atLeast', 0.8],
  vitaminC: ['atLeast', 0.8],
  thiamin: ['atLeast', 0.8],
  riboflavin: ['atLeast', 0.8],
  niacin: ['atLeast', 0.8],
  pantothenicAcid: ['atLeast', 0.8],
  vitaminB6: ['atLeast', 0.8],
  folate: ['atLeast', 0.8],
  folateDfe: ['atLeast', 0.8],
  choline: ['atLeast', 0.8],
  vitaminB12: ['atLeast', 0.8],
  vitaminARae: ['atLeast', 0.8],
  vitaminE: ['atLeast', 0.8],
  vitaminDMicrograms: ['atLeast', 0.8],
  vitaminK: ['atLeast', 0.8],
};

export interface Allowance {
  /** The one side that the law limits; null where labels of both kinds are in it, or one that it does not limit. */
  readonly side: AllowanceSide | null;
  /** How far the truth could lie on that side; null where something is missing there. */
  readonly bound: number | null;
  /** Foods whose labels it rests on, by name, each once. */
  readonly labels: readonly string[];
  /** Foods with labels of another rule, which this law says nothing of: counted as printed. */
  readonly otherLabels: readonly string[];
}

/**
 * The third view of a figure: how far the truth could still lie with every US label in it at the end of what
 * 21 CFR 101.9(g) allows, and all else at its hard bound. One-sided; never mixed into the other two bounds.
 * @returns null where no US label is in the figure, or the episode does not have the scope
 * @example one serving declared 200 kcal: `{ side: 'atMost', bound: 240, … }`
 */
export function allowance(
  file: EpisodeFile,
  scope: NumberScope,
  nutrient: Nutrient,
): Allowance | null {
  const parts = figureParts(file, scope, nutrient)?.total;
  if (!parts) return null;
  const rising = new Map(
    variancePieces(parts.terms, parts.sources).flatMap(({ ids: [id, other], slope }) =>
      id !== undefined && other === undefined ? [[id, slope] as const] : [],
    ),
  );
  const labels: { readonly food: Food; readonly nutrient: Nutrient; readonly id: string }[] = [];
  for (const food of file.foods.filter(({ kind }) => kind === 'label')) {
    const prefix = `food:${food.version.id}:`;
    for (const id of rising.keys()) {
      if (id.startsWith(prefix)) {
        labels.push({ food, id, nutrient: id.slice(prefix.length) as Nutrient });
      }
    }
  }
  const covered = labels.filter(({ food }) => food.version.rule === 'us');
  if (covered.length === 0) return null;
  const names = (some: typeof labels) => [...new Set(some.map(({ food }) => food.name))];
  const sides = covered.map((label) => sideOf(label.nutrient, rising.get(label.id) ?? 0));
  const [first = null] = sides;
  const side = sides.every((each) => each === first) ? first : null;
  const stretched = new Map(parts.sources);
  for (const label of covered) {
    const lawful = lawfulInterval(label.food, label.nutrient);
    if (lawful) stretched.set(label.id, lawful);
  }
  return {
    side,
    bound: side && boundAt({ ...parts, sources: stretched }, side),
    labels: names(covered),
    otherLabels: names(labels.filter(({ food }) => food.version.rule !== 'us')),
  };
}

/** What a declared value may lawfully stand for, as far as the law limits it; never less than its rounding. */
function lawfulInterval(food: Food, nutrient: Nutrient): Interval | null {
  const interval = cellInterval(food.version, nutrient);
  const lawful = LAWFUL[nutrient];
  if (!interval || !lawful) return interval;
  const end = interval.value * lawful[1];
  return { ...interval, low: Math.min(interval.low, end), high: Math.max(interval.high, end) };
}

/** Which side of the sum a label's law limits: the other one where its value is taken away. */
function sideOf(nutrient: Nutrient, slope: number): AllowanceSide | null {
  const side = LAWFUL[nutrient]?.[0] ?? null;
  if (side === null || slope >= 0) return side;
  return side === 'atMost' ? 'atLeast' : 'atMost';
}

function boundAt(parts: Parts, side: AllowanceSide): number | null {
  const lacks = side === 'atMost' ? parts.above : parts.below;
  if (parts.open.length + lacks.length > 0) return null;
  const { low, high } = boundsOf(parts.terms, parts.sources);
  return Math.max(0, side === 'atMost' ? high : low);
}
