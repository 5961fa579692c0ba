import type { NutritionInformation } from 'schema-dts';
import type { Dish } from '#lib/episode/context';
import type { Portion } from '#lib/episode/recipe-schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { NumberScope, PublishedNumbers } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import type { LeftOfData } from '#lib/publish/structured/left-of-data';
import { printGrams } from '#lib/units/print';

/**
 * Properties of NutritionInformation and the nutrients that they are, with the word behind the number. schema.org 30.0:
 * an Energy is written `<Number> <Energy unit of measure>`, a Mass `<Number> <Mass unit of measure>`; sodium and
 * cholesterol count in milligrams, all others in grams. No other nutrient has a property.
 */
const PROPERTIES = [
  ['calories', 'energyKcal', 'calories'],
  ['fatContent', 'fat', 'g'],
  ['saturatedFatContent', 'saturated', 'g'],
  ['transFatContent', 'transFat', 'g'],
  ['carbohydrateContent', 'carbohydrate', 'g'],
  ['fiberContent', 'fibre', 'g'],
  ['sugarContent', 'sugars', 'g'],
  ['proteinContent', 'protein', 'g'],
  ['sodiumContent', 'sodium', 'mg'],
  ['cholesterolContent', 'cholesterol', 'mg'],
] as const satisfies readonly (readonly [keyof NutritionInformation, Nutrient, string])[];

/** Energy in kJ is the energy that `calories` has already. */
const TOLD_ALREADY: ReadonlySet<Nutrient> = new Set<Nutrient>(['energyKj']);

/** The nutrition of a dish as data, and what of its panel is not in it. */
export interface NutritionData {
  readonly nutrition: NutritionInformation | null;
  readonly left: readonly LeftOfData[];
}

/**
 * Nutrition of one portion: the first of the equal ones, else the first there is, else the whole dish. A number that is
 * open or 'at least', or that was said against its ingredients, has no place where no mark can stand beside it: it is
 * left out and named.
 * @param numbers what is published, with unconfirmed foods open
 * @example nutritionData(dish, figures, numbers).nutrition // { '@type': 'NutritionInformation', calories: '240 calories', … }
 */
export function nutritionData(
  dish: Dish,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
): NutritionData {
  const portion = portionOfData(dish);
  const scope: NumberScope = portion
    ? { kind: 'portion', portionId: portion.id }
    : { kind: 'whole', segmentId: dish.id };
  const of = { segmentId: dish.id, dish: dish.title };
  const left: LeftOfData[] = [];
  const written: [string, string][] = [];
  for (const nutrient of figures.nutrients.filter((each) => !TOLD_ALREADY.has(each))) {
    const property = PROPERTIES.find(([, each]) => each === nutrient);
    const { label, number, status, range, said, clashes } = numbers(nutrient, scope);
    const leave = (why: string) => left.push({ ...of, what: label, why });
    if (!property) leave('the vocabulary has no property for it');
    else if (status !== 'known' || number === null) leave(range);
    else if (said?.fixed && (said.outside || clashes))
      leave(`what was said in the video is not what the ingredients come to: ${range}`);
    else written.push([property[0], `${number} ${property[2]}`]);
  }
  const others = dish.recipe.portions.filter(({ id }) => id !== portion?.id);
  if (others.length > 0)
    left.push({ ...of, what: named(others), why: 'nutrition is given for one portion only' });
  if (written.length === 0) return { nutrition: null, left };
  const servingSize = servingOf(dish, figures, portion);
  const nutrition: NutritionInformation = {
    '@type': 'NutritionInformation',
    servingSize,
    ...Object.fromEntries(written),
  };
  return { nutrition, left };
}

const named = (portions: readonly Portion[]): string =>
  `the ${portions.length === 1 ? 'portion' : 'portions'} ${portions.map(({ name }) => `“${name}”`).join(', ')}`;

/** The portion that nutrition is given for; undefined for the whole dish. */
export function portionOfData({ recipe }: Dish): Portion | undefined {
  return recipe.portions.find(({ kind }) => kind === 'count') ?? recipe.portions[0];
}

/** `'160 g (1 of 4 portions)'`: by mass where the finished weight is known, as the vocabulary asks. */
function servingOf(dish: Dish, figures: EpisodeFigures, portion: Portion | undefined): string {
  const finished = figures.dishes.find(({ segmentId }) => segmentId === dish.id)?.finishedMg;
  const grams = finished ? (share: number) => `${printGrams(finished.value * share)} g` : null;
  const withGrams = (share: number, words: string) =>
    grams === null ? words : `${grams(share)} (${words})`;
  if (!portion) return withGrams(1, 'the whole dish');
  if (portion.kind === 'mass') return `${printGrams(portion.massMg)} g (${portion.name})`;
  if (portion.kind === 'byEye')
    return withGrams(portion.share.num / portion.share.den, `${portion.name}, by eye`);
  return withGrams(
    1 / portion.of,
    portion.of === 1 ? 'the whole dish' : `1 of ${portion.of} portions`,
  );
}
