import type { Allergen, Food } from '#lib/foods/food';

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

/** Declared or confirmed; on the label as a trace; proposed by rule and not answered yet. */
export type AllergenStanding = 'contains' | 'mayContain' | 'proposed';
const STRONGEST: readonly AllergenStanding[] = ['contains', 'mayContain', 'proposed'];

/**
 * How a food stands to an allergen of the region's list; wheat is one of the cereals containing gluten. Null where
 * nothing is said, which is not the same as being free of it.
 */
export function allergenStanding(food: Food, allergen: Allergen): AllergenStanding | null {
  const facts: readonly Allergen[] =
    allergen === 'glutenCereals' ? ['glutenCereals', 'wheat'] : [allergen];
  const standings = facts.map((each) => standingOf(food, each));
  return STRONGEST.find((standing) => standings.includes(standing)) ?? null;
}

/** The person's word and the label's declaration win over a proposal; a denial ends it. */
function standingOf(food: Food, allergen: Allergen): AllergenStanding | null {
  const standings = food.allergens
    .filter((fact) => fact.allergen === allergen)
    .map((fact) => fact.standing);
  if (standings.includes('declared') || standings.includes('confirmed')) return 'contains';
  if (standings.includes('mayContain')) return 'mayContain';
  if (standings.includes('denied')) return null;
  return standings.includes('proposed') ? 'proposed' : null;
}
