import { recipesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { breakdown, type Breakdown } from '#lib/figures/breakdown';
import { scopeFrom, type NamedScope } from '#lib/figures/breakdown-scope';
import { isNutrient } from '#lib/foods/nutrients';
import { readDishPlaces, type DishPlace } from '#lib/store/read-dishes';
import { readEpisodeFile } from '#lib/store/read-episode';

/** The parts of an address, as they came. */
export interface BreakdownAddress {
  readonly id: string;
  readonly scope: string;
  readonly nutrient: string;
}

export interface FoundBreakdown {
  readonly file: EpisodeFile;
  readonly named: NamedScope;
  readonly of: Breakdown;
  /** Where the dishes stand that others are made from, by their recipe's id. */
  readonly places?: Readonly<Record<string, DishPlace>>;
}

/** The breakdown that an address names; null where there is no such episode, amount or nutrient. */
export async function readBreakdown(address: BreakdownAddress): Promise<FoundBreakdown | null> {
  const scope = decoded(address.scope);
  const nutrient = decoded(address.nutrient);
  if (scope === null || nutrient === null || !isNutrient(nutrient)) return null;
  const file = await readEpisodeFile(address.id, new Date().toISOString());
  const named = file && scopeFrom(file, scope);
  const of = named && breakdown(file, named.scope, nutrient);
  if (!of) return null;
  const nested = recipesOf(file).flatMap(({ lines }) =>
    lines.flatMap(({ madeFrom }) => madeFrom?.recipeId ?? []),
  );
  return { file, named, of, places: await readDishPlaces(nested) };
}

/** A part of an address in plain letters; null where its escapes are not UTF-8. */
function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
}
