import type { Nutrient } from '#lib/foods/nutrients';

/** Words that a bound number can name, and the nutrient each means. */
export const BINDING_NUTRIENTS: Readonly<Record<string, Nutrient>> = {
  energy: 'energyKcal',
  calories: 'energyKcal',
  kcal: 'energyKcal',
  protein: 'protein',
  fat: 'fat',
  saturated: 'saturated',
  carbohydrate: 'carbohydrate',
  carbs: 'carbohydrate',
  'net carbs': 'netCarbohydrate',
  'net carbohydrate': 'netCarbohydrate',
  fibre: 'fibre',
  fiber: 'fibre',
  sugars: 'sugars',
  sugar: 'sugars',
  sodium: 'sodium',
  salt: 'salt',
};

/** `whole`: the dish; `each`: the first of its equal portions; `day`: the sum over the episode. */
export const BINDING_SCOPES = ['whole', 'each', 'day'] as const;
export type BindingScope = (typeof BINDING_SCOPES)[number];

/** A stretch of plain words, a bound number, or brackets that name nothing known. */
export type TextPart =
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'number'; readonly nutrient: Nutrient; readonly scope: BindingScope }
  | { readonly kind: 'unknown'; readonly text: string };

/**
 * Splits a talking point at its bound numbers, written `[nutrient, scope]`.
 * `parseBindings('Only [energy, each]!')` → words, number (energyKcal, each), words.
 */
export function parseBindings(text: string): TextPart[] {
  return text
    .split(/(\[[^[\]]*\])/)
    .filter((part) => part !== '')
    .map((part) =>
      part.startsWith('[') && part.endsWith(']') ? bound(part) : { kind: 'words', text: part },
    );
}

function bound(part: string): TextPart {
  const [name = '', scope = '', ...more] = part
    .slice(1, -1)
    .split(',')
    .map((word) => word.trim().toLowerCase());
  const nutrient = Object.hasOwn(BINDING_NUTRIENTS, name) ? BINDING_NUTRIENTS[name] : undefined;
  const known = BINDING_SCOPES.find((each) => each === scope);
  if (!nutrient || !known || more.length > 0) return { kind: 'unknown', text: part };
  return { kind: 'number', nutrient, scope: known };
}
