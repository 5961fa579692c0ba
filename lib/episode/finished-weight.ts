import type { AmountContext } from '#lib/episode/context';
import { eatenOnce } from '#lib/episode/eaten-amount';
import { readingAmount } from '#lib/episode/reading';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Cooking, Recipe, Weighing } from '#lib/episode/recipe-schema';
import type { Interval } from '#lib/units/interval';
import { quickBounds } from '#lib/units/quick-bounds';
import { collect, multiply, source, type Sources, type Term } from '#lib/units/sum-of-products';

/** What a finished dish weighs, as something to divide by. */
export interface FinishedWeight {
  /** Whether it stood on a scale, or follows from its ingredients by a change of weight that is cited. */
  readonly basis: 'weighed' | 'cited';
  /** Milligrams. */
  readonly terms: readonly Term[];
  /** Ids of the factors in `terms`, for dividing by the weight. */
  readonly ids: readonly string[];
  /** The source that is an error of this weight alone and of no ingredient. */
  readonly ownId: string;
  readonly sources: Sources;
  /** Milligrams with their bounds. */
  readonly interval: Interval;
}

/**
 * What the finished dish weighs: its latest reading, less its container; else the raw ingredients with the change
 * of weight that is cited for the recipe. Null where neither is known, or it could be nothing at all.
 * @param above recipes that this one is being worked out for: one made from itself has no weight
 */
export function finishedWeight(
  recipe: Recipe,
  context: AmountContext,
  above: readonly string[] = [],
): FinishedWeight | null {
  const readings = recipe.weighings.filter((weighing) => weighing.kind === 'finished');
  const latest = readings.reduce<Weighing | null>(
    (best, each) => (best === null || each.at > best.at ? each : best),
    null,
  );
  return latest ? weighedOnce(latest, context.kitchen) : cited(recipe, context, above);
}

const kept = new WeakMap<Weighing, { kitchen: Kitchen; weight: FinishedWeight | null }>();

/** A reading is never changed, so in the same kitchen it weighs the same. */
function weighedOnce(reading: Weighing, kitchen: Kitchen): FinishedWeight | null {
  const known = kept.get(reading);
  if (known?.kitchen === kitchen) return known.weight;
  const weight = weighedOn(reading, kitchen);
  kept.set(reading, { kitchen, weight });
  return weight;
}

function weighedOn(reading: Weighing, kitchen: Kitchen): FinishedWeight | null {
  const amount = readingAmount(reading, kitchen);
  const { low, value, high } = quickBounds(amount.terms, amount.sources);
  if (low <= 0) return null;
  const ownId = `weighing:${reading.id}`;
  return { basis: 'weighed', ...amount, ownId, interval: { low, value, high } };
}

function cited(
  recipe: Recipe,
  context: AmountContext,
  above: readonly string[],
): FinishedWeight | null {
  if (!recipe.cooking) return null;
  const raw = rawMass(recipe, context, above);
  if (!raw) return null;
  const { moisturePermille, fatPermille, spreadPermille } = recipe.cooking;
  const left = 1 + (moisturePermille + fatPermille) / 1000;
  const spread = spreadPermille / 1000;
  const ownId = `cooking:${recipe.id}`;
  const inputs = new Map([
    ...raw.sources,
    [ownId, { low: left - spread, value: left, high: left + spread }] as const,
  ]);
  const of = multiply(raw.terms, [source(ownId)]);
  const { low, value, high } = quickBounds(of, inputs);
  if (low <= 0) return null;
  const id = `finished:${recipe.id}`;
  return {
    basis: 'cited',
    terms: [source(id)],
    ids: [id],
    ownId,
    sources: new Map([...inputs, [id, { low, value, high, of }]]),
    interval: { low, value, high },
  };
}

/**
 * Whether a change of weight leaves something of a dish, as far as it may miss: else nothing can be divided by it.
 * @example leavesWeight({ moisturePermille: -960, fatPermille: 0, spreadPermille: 50 }) // false
 */
export function leavesWeight({
  moisturePermille,
  fatPermille,
  spreadPermille,
}: Omit<Cooking, 'source'>): boolean {
  return 1000 + moisturePermille + fatPermille - spreadPermille > 0;
}

/** Milligrams of something, as a sum over uncertain sources. */
export interface Mass {
  readonly terms: readonly Term[];
  readonly sources: Sources;
}

/** Milligrams of all that goes into a recipe; null where one ingredient's are not known. */
export function rawMass(
  recipe: Recipe,
  context: AmountContext,
  above: readonly string[] = [],
): Mass | null {
  const masses = rawMasses(recipe, context, above);
  return masses && sumOfMasses(masses);
}

export function sumOfMasses(masses: readonly Mass[]): Mass {
  return {
    terms: collect(masses.flatMap(({ terms }) => terms)),
    sources: new Map(masses.flatMap(({ sources }) => [...sources])),
  };
}

/** The same, ingredient by ingredient. */
export function rawMasses(
  recipe: Recipe,
  context: AmountContext,
  above: readonly string[] = [],
): readonly Mass[] | null {
  if (above.includes(recipe.id) || recipe.lines.length === 0) return null;
  const masses: Mass[] = [];
  for (const line of recipe.lines) {
    const eaten = eatenOnce(line, recipe.weighings, context);
    if (!eaten.known || eaten.leftNotWeighed) return null;
    const { massMg, batches, sources } = eaten.amount;
    if (massMg) {
      masses.push({ terms: massMg, sources });
      continue;
    }
    const nested = eaten.recipe && finishedWeight(eaten.recipe, context, [...above, recipe.id]);
    if (!nested || !batches) return null;
    masses.push({
      terms: multiply(batches, nested.terms),
      sources: new Map([...sources, ...nested.sources]),
    });
  }
  return masses;
}
