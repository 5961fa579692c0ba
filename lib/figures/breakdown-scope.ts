import { amountContext, dishesOf, type Dish } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { Portion } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import { printGrams } from '#lib/units/print';

/** An amount that has figures, and what it is called. */
export interface NamedScope {
  readonly scope: NumberScope;
  /** The dish it is of; null for all of them. */
  readonly segmentId: string | null;
  /** The dish's title, or what all dishes together are called. */
  readonly title: string;
  /** What of it: "the whole dish", "one of 4", "100 g, finished". */
  readonly part: string;
}

/**
 * A scope as one word of an address.
 * @example scopeText({ kind: 'whole', segmentId: 's1' }) // 'whole:s1'
 */
export function scopeText(scope: NumberScope): string {
  if (scope.kind === 'day') return 'day';
  return `${scope.kind}:${scope.kind === 'portion' ? scope.portionId : scope.segmentId}`;
}

/** Every amount of an episode that has figures: each dish's parts in viewing order, then all dishes. */
export function namedScopes(file: EpisodeFile): readonly NamedScope[] {
  const { segments, anythingElse } = file.episode;
  const context = amountContext(file);
  const day: NamedScope = {
    scope: { kind: 'day' },
    segmentId: null,
    title: anythingElse?.kind === 'nothing' ? 'The day' : 'The dishes shown',
    part: 'as far as eaten',
  };
  const ofDish = (dish: Dish) =>
    dishScopes(dish, finishedWeight(dish.recipe, context) !== null).map(
      ([scope, part]): NamedScope => ({ scope, segmentId: dish.id, title: dish.title, part }),
    );
  return [...dishesOf(segments).flatMap(ofDish), day];
}

/** The amount that an address names; null where the episode has no such one. */
export function scopeFrom(file: EpisodeFile, text: string): NamedScope | null {
  return namedScopes(file).find(({ scope }) => scopeText(scope) === text) ?? null;
}

function dishScopes(dish: Dish, weighed: boolean): [NumberScope, string][] {
  const { id: segmentId, eaten, ate, recipe } = dish;
  const scopes: [NumberScope, string][] = [[{ kind: 'whole', segmentId }, 'the whole dish']];
  for (const portion of recipe.portions) {
    scopes.push([{ kind: 'portion', portionId: portion.id }, portionWords(portion)]);
  }
  const exactlyAll = ate.kind === 'share' && eaten.num === eaten.den;
  if (!exactlyAll && eaten.num > 0) {
    scopes.push([{ kind: 'eaten', segmentId }, `${eatenWords(dish)}, as eaten`]);
  }
  if (weighed) scopes.push([{ kind: 'per100g', segmentId }, '100 g, finished']);
  return scopes;
}

/** `'1 of 4'`, `'1/3, by eye'`, `'350 g'`. */
function eatenWords({ ate, eaten: { num, den } }: Dish): string {
  if (ate.kind === 'mass') return `${printGrams(ate.valueMg)} g`;
  return ate.kind === 'byEye' ? `${num}/${den}, by eye` : `${num} of ${den}`;
}

function portionWords(portion: Portion): string {
  if (portion.kind === 'count') return portion.name || `one of ${portion.of}`;
  if (portion.kind === 'mass')
    return portion.name || `a portion of ${printGrams(portion.massMg)} g`;
  return `${portion.name || 'a portion'}, by eye`;
}
