import { dishesOf } from '#lib/episode/context';
import type { Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { provisionalWords } from '#lib/figures/provisional-words';
import type { Nutrient } from '#lib/foods/nutrients';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { applySwap } from '#lib/swap/apply-swap';
import { dayDifferences, type Differences } from '#lib/swap/difference';
import { allergenChanges, type AllergenChanges } from '#lib/swap/swap-allergens';
import { costDifference, type CostDifference } from '#lib/swap/swap-cost';
import { unconfirmedParts } from '#lib/swap/unconfirmed-parts';

/** Swaps of several dishes that are saved under one name. */
export interface DaySet {
  /** As the first of them writes it. */
  readonly name: string;
  readonly variants: readonly Variant[];
}

/** What such swaps do together. */
export interface DaySwap {
  readonly name: string;
  /** Of what is eaten in the day. */
  readonly differences: Differences;
  /** Of all the dishes, no portion's. */
  readonly cost: CostDifference;
  /** What comes in with any of them; what one dish loses another may still have, so that nothing is lost. */
  readonly allergens: AllergenChanges;
  /** Why the numbers must not go out, as in a swap of one dish; empty where they may. */
  readonly unconfirmed: string;
}

/**
 * The names under which swaps of more than one dish are saved, whatever their capitals: a bigger day is the bigger
 * porridge and the bigger skillet.
 */
export function daySets(variants: readonly Variant[]): readonly DaySet[] {
  const sets = new Map<string, Variant[]>();
  for (const variant of variants) {
    const key = variant.name.trim().toLowerCase();
    sets.set(key, [...(sets.get(key) ?? []), variant]);
  }
  return [...sets.values()].flatMap((all) => {
    const dishes = new Set(all.map(({ segmentId }) => segmentId));
    return dishes.size < 2 ? [] : [{ name: all[0]?.name ?? '', variants: all }];
  });
}

/**
 * What swaps of several dishes do to the day, all of them at once.
 * @returns problems where one of them names what the file does not have
 * @example daySwap(file, biggerDay).differences.energyKcal // { value: 310, likelyLow: …, … }
 */
export function daySwap(
  file: EpisodeFile,
  { name, variants }: DaySet,
  nutrients?: readonly Nutrient[],
): Result<DaySwap> {
  let after = file;
  const problems: Problem[] = [];
  for (const variant of variants) {
    const applied = applySwap(after, variant);
    if (applied.ok) after = applied.value;
    else problems.push(...applied.problems);
  }
  if (problems.length > 0) return failed(...problems);
  const ids = dishesOf(file.episode.segments)
    .map(({ id }) => id)
    .filter((id) => variants.some(({ segmentId }) => segmentId === id));
  return ok({
    name,
    differences: dayDifferences(file, after, nutrients),
    cost: inAll(ids.map((id) => costDifference(file, after, id))),
    allergens: inAny(ids.map((id) => allergenChanges(file, after, id))),
    unconfirmed: provisionalWords(ids.flatMap((id) => unconfirmedParts(file, after, id))),
  });
}

/** The costs of dishes summed; not known where one is not, or where they are in several currencies. */
function inAll(costs: readonly CostDifference[]): CostDifference {
  const known = costs.flatMap((cost) => (cost.known ? [cost] : []));
  const why = costs.flatMap((cost) => (cost.known ? [] : [cost.why]));
  const [first] = known;
  if (!first || why.length > 0) return { known: false, why: [...new Set(why)].join('; ') };
  const currencies = [...new Set(known.map(({ currency }) => currency))];
  if (currencies.length > 1) return { known: false, why: `prices in ${currencies.join(' and ')}` };
  const minor = known.reduce((sum, each) => sum + each.minor, 0);
  return { known: true, minor, currency: first.currency, eachMinor: null };
}

function inAny(all: readonly AllergenChanges[]): AllergenChanges {
  const each = (of: 'gained' | 'lessSure') => {
    const changes = all.flatMap((one) => one[of]);
    const key = ({ words, standing }: (typeof changes)[number]) => `${standing} ${words}`;
    return [...new Set(changes.map(key))].flatMap((same) => {
      const own = changes.filter((change) => key(change) === same);
      const foods = [...new Set(own.flatMap((change) => change.foods))];
      return own.slice(0, 1).map((change) => ({ ...change, foods }));
    });
  };
  return {
    gained: each('gained'),
    lessSure: each('lessSure'),
    lost: [],
    unsaid: [...new Set(all.flatMap(({ unsaid }) => unsaid))],
  };
}
