import type { Allergen, Food } from '#lib/foods/food';
import { recipesOf, usedFoodIds } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';

/**
 * US major food allergens: FALCPA 2004 (Pub. L. 108-282) and FASTER Act 2021 (Pub. L. 117-11).
 * EU: Regulation (EU) 1169/2011, Annex II; its "cereals containing gluten" include wheat.
 */
export const REGION_ALLERGENS: Readonly<Record<'US' | 'EU', readonly Allergen[]>> = {
  US: ['milk', 'egg', 'fish', 'crustaceans', 'treeNuts', 'peanuts', 'wheat', 'soy', 'sesame'],
  EU: [
    'glutenCereals',
    'crustaceans',
    'egg',
    'fish',
    'peanuts',
    'soy',
    'milk',
    'treeNuts',
    'celery',
    'mustard',
    'sesame',
    'sulphites',
    'lupin',
    'molluscs',
  ],
};

export const ALLERGEN_WORDS: Readonly<Record<Allergen, string>> = {
  milk: 'milk',
  egg: 'egg',
  fish: 'fish',
  crustaceans: 'crustacean shellfish',
  treeNuts: 'tree nuts',
  peanuts: 'peanuts',
  wheat: 'wheat',
  glutenCereals: 'cereals containing gluten',
  soy: 'soy',
  sesame: 'sesame',
  celery: 'celery',
  mustard: 'mustard',
  sulphites: 'sulphites',
  lupin: 'lupin',
  molluscs: 'molluscs',
};

export interface AllergenEntry {
  readonly allergen: Allergen;
  readonly words: string;
  /** Names of the foods that bring it. */
  readonly foods: readonly string[];
}

export interface AllergenList {
  /** Declared on a label or confirmed by the person: what may be published. */
  readonly contains: readonly AllergenEntry[];
  readonly mayContain: readonly AllergenEntry[];
  /** Proposed by rule and not yet confirmed or denied: never published. */
  readonly proposed: readonly AllergenEntry[];
}

/** The allergens of all foods in an episode's dishes, in the order of the region's list. */
export function allergenList(file: EpisodeFile): AllergenList {
  const { region } = file.episode;
  const used = usedFoodIds(recipesOf(file));
  const foods = file.foods.filter((food) => used.has(food.id));
  const entries = (matches: (food: Food, allergen: Allergen) => boolean): AllergenEntry[] =>
    REGION_ALLERGENS[region].flatMap((allergen) => {
      const names = foods.filter((food) => matches(food, allergen)).map((food) => food.name);
      return names.length > 0 ? [{ allergen, words: ALLERGEN_WORDS[allergen], foods: names }] : [];
    });
  const contains = entries((food, allergen) => stands(food, allergen) === 'contains');
  const certain = new Set(contains.map((entry) => entry.allergen));
  return {
    contains,
    mayContain: entries((food, allergen) => stands(food, allergen) === 'mayContain').filter(
      (entry) => !certain.has(entry.allergen),
    ),
    proposed: entries((food, allergen) => stands(food, allergen) === 'proposed'),
  };
}

type Standing = 'contains' | 'mayContain' | 'proposed';
const STRONGEST: readonly Standing[] = ['contains', 'mayContain', 'proposed'];

/** How a food stands to an allergen of the region's list; wheat is one of the cereals containing gluten. */
function stands(food: Food, allergen: Allergen): Standing | null {
  const facts: readonly Allergen[] =
    allergen === 'glutenCereals' ? ['glutenCereals', 'wheat'] : [allergen];
  const standings = facts.map((each) => standingOf(food, each));
  return STRONGEST.find((standing) => standings.includes(standing)) ?? null;
}

/** The person's word and the label's declaration win over a proposal; a denial ends it. */
function standingOf(food: Food, allergen: Allergen): Standing | null {
  const standings = food.allergens
    .filter((fact) => fact.allergen === allergen)
    .map((fact) => fact.standing);
  if (standings.includes('declared') || standings.includes('confirmed')) return 'contains';
  if (standings.includes('mayContain')) return 'mayContain';
  if (standings.includes('denied')) return null;
  return standings.includes('proposed') ? 'proposed' : null;
}
