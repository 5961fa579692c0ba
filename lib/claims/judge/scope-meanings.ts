import { ENGLISH } from '#lib/claims/english/english';
import type { Portion } from '#lib/episode/recipe-schema';
import { ingredientMeanings, oneOfIngredient } from './ingredient-meanings';
import type { JudgeContext, JudgedDish } from './judge-context';
import { toldPortions } from '#lib/claims/judge-beyond/told-portions';
import { togetherMeanings } from './together-meanings';
import { aMeaning, ofMakings, whole, type About, type Meaning } from './meaning';
import type { NutrientStatement } from './said-number';

/**
 * All amounts that a statement may be of; a text where there is no way to know, or nothing to hold it against.
 * One meaning is certain; several are judged only where they say alike.
 * @example meaningsOf(halfOfSkillet, about, context) // one: half of the skillet
 */
export function meaningsOf(
  statement: NutrientStatement,
  about: About,
  context: JudgeContext,
): readonly Meaning[] | string {
  const own = kept.get(about) ?? new Map<string, readonly Meaning[] | string>();
  kept.set(about, own);
  const key = `${statement.scope} ${statement.food ?? ''} ${statement.against ?? ''}`;
  const known = own.get(key) ?? allMeanings(statement, about, context);
  own.set(key, known);
  return known;
}

/** What the same words in the same place may be of is looked up once. */
const kept = new WeakMap<About, Map<string, readonly Meaning[] | string>>();

function allMeanings(
  statement: NutrientStatement,
  about: About,
  context: JudgeContext,
): readonly Meaning[] | string {
  if (context.dishes.length === 0) return 'no dish with ingredients is set up yet';
  const { scope, food } = statement;
  if (about.settled) {
    // What is named stays what it is said of; the person said of which dish, and of how much of it.
    return scope === 'ingredient'
      ? settledIngredient(food ?? '', about.settled, about.dishes, context)
      : settledMeanings(about.settled, about.dishes, context);
  }
  if (about.together) return togetherMeanings(about.dishes, about.together, context);
  if (food !== undefined && scope === 'each') return oneOfIngredient(food, about.dishes, context);
  if (food !== undefined && scope !== 'ingredient') {
    return `is it said of the ${food} alone, or of the dish?`;
  }
  const each = (of: (dish: JudgedDish) => readonly Meaning[], without: string) => {
    const found = about.dishes.flatMap(of);
    return found.length > 0 ? found : without;
  };
  switch (scope) {
    case 'dish': {
      const named = namedPortion(about);
      if (named) return [named];
      const day = about.day || about.dishes.length > 1 ? [dayMeaning(context)] : [];
      return [...about.dishes.flatMap(anyPart), ...day];
    }
    case 'whole':
      // 'All of it' in a title of several dishes is the day.
      return [...about.dishes.flatMap(wholes), ...(about.day ? [dayMeaning(context)] : [])];
    case 'half':
      return each(halves, 'which dish?');
    case 'portion':
    case 'each':
    case 'slice': {
      const named = namedPortion(about);
      if (named) return [named];
      const [one] = about.dishes.length === 1 ? about.dishes : [];
      if (one && scope === 'portion' && one.dish.recipe.portions.length === 0) {
        return uncutMeanings(one, context);
      }
      return each((dish) => portionMeanings(dish, scope), withoutPortions(about.dishes));
    }
    case 'per100g':
      return each((dish) => [per100gMeaning(dish)], 'which dish?');
    case 'day':
      return [dayMeaning(context)];
    case 'soFar':
      return soFarMeanings(about.dishes, context);
    case 'ingredient':
      return ingredientMeanings(food ?? '', about.dishes, context);
    case 'compared':
      return statement.against === 'more' || statement.against === 'less'
        ? 'it is a difference to something that is not worked out here'
        : 'it is set beside something that is not in this episode';
    case 'unknown':
      return 'of what, or of how much of it?';
  }
}

function settledMeanings(
  { scope, portionId }: NonNullable<About['settled']>,
  dishes: About['dishes'],
  context: JudgeContext,
): readonly Meaning[] | string {
  if (scope === 'day') return [dayMeaning(context)];
  const [dish] = dishes;
  if (!dish) return 'the dish that it was said to be about is no longer there';
  switch (scope) {
    case 'whole':
      return [wholeMeaning(dish)];
    case 'half':
      return [halfMeaning(dish)];
    case 'per100g':
      return [per100gMeaning(dish)];
    case 'soFar':
      return [soFarMeaning(dish, context)];
    case 'portion': {
      const found = dish.dish.recipe.portions.find(({ id }) => id === portionId);
      return found
        ? [portionMeaning(dish, found)]
        : 'the portion that it was said to be about is no longer there';
    }
  }
}

/** An ingredient of the dish that the person said, or of an exact share of it. */
function settledIngredient(
  food: string,
  { scope, portionId }: NonNullable<About['settled']>,
  dishes: About['dishes'],
  context: JudgeContext,
): readonly Meaning[] | string {
  if (scope === 'whole') return ingredientMeanings(food, dishes, context);
  const portion = dishes
    .flatMap(({ dish }) => dish.recipe.portions)
    .find(({ id }) => scope === 'portion' && id === portionId);
  const of = scope === 'half' ? 2 : portion?.kind === 'count' ? portion.of : null;
  if (of === null) return `is it said of the ${food} alone, or of the dish?`;
  return ingredientMeanings(food, dishes, context, 1 / of);
}

function wholeMeaning({ dish, figures }: JudgedDish): Meaning {
  return aMeaning(`${dish.title}, the whole dish`, figures.whole, whole(dish.id));
}

/** 'This has 640 calories': all of it, or one of its portions, or what is eaten of it. */
function anyPart(of: JudgedDish): Meaning[] {
  const { dish } = of;
  const portions = dish.recipe.portions.filter((each) => each.kind !== 'count' || each.of > 1);
  const shares = portions.flatMap((each) => (each.kind === 'count' ? [1 / each.of] : []));
  const eaten = dish.eaten.num / dish.eaten.den;
  const another = eaten > 0 && !(dish.ate.kind === 'share' && [1, ...shares].includes(eaten));
  return [
    ...wholes(of),
    ...portions.map((portion) => portionMeaning(of, portion)),
    ...(another ? [eatenMeaning(of)] : []),
  ];
}

function eatenMeaning({ dish, figures }: JudgedDish): Meaning {
  const scope = { kind: 'eaten', segmentId: dish.id } as const;
  return aMeaning(`${dish.title}, as eaten`, figures.eaten, scope);
}

function namedPortion({ dishes, portionId }: About): Meaning | null {
  const [dish, ...others] = dishes;
  if (!dish || others.length > 0 || portionId === null) return null;
  const portion = dish.dish.recipe.portions.find(({ id }) => id === portionId);
  return portion ? portionMeaning(dish, portion) : null;
}

function portionMeaning({ dish, figures }: JudgedDish, portion: Portion): Meaning {
  const own = figures.portions.find(({ portionId }) => portionId === portion.id);
  const scope = { kind: 'portion', portionId: portion.id } as const;
  return aMeaning(`${dish.title}, ${portionName(portion)}`, own?.figures, scope);
}

function portionName(portion: Portion): string {
  if (portion.name !== '') return portion.name;
  return portion.kind === 'count' ? `one of ${portion.of}` : 'a portion';
}

function portionMeanings(of: JudgedDish, scope: 'portion' | 'each' | 'slice'): Meaning[] {
  const all = of.dish.recipe.portions;
  const sliced = all.filter(({ name }) => ENGLISH.patterns.slices.test(name));
  const counted = all.filter(({ kind }) => kind === 'count');
  const fits = scope === 'slice' ? sliced : scope === 'each' ? counted : [];
  return (fits.length > 0 ? fits : all).map((portion) => portionMeaning(of, portion));
}

function withoutPortions(dishes: About['dishes']): string {
  const [only] = dishes;
  return dishes.length === 1 && only
    ? `no portion of ${only.dish.title} is set up`
    : 'which dish, and no portion of any is set up';
}

/** How many equal portions a dish may have where nobody says it. Common practice, no source. */
const FEW = [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 15, 16, 18, 20, 24];

/**
 * A portion of a dish that has none: all of it where one person eats it on a day that is told whole, or its title says
 * that it is for one; else all of it or one of a few.
 */
function uncutMeanings(of: JudgedDish, context: JudgeContext): Meaning[] {
  const { dish } = of;
  const told = toldPortions(dish.title);
  const once = dish.batches.num === dish.batches.den;
  const eaten = dish.ate.kind === 'share' && dish.eaten.num === dish.eaten.den;
  const one = told === 1 || (told === null && eaten && context.figures.dayIsWhole);
  if (!once) return wholes(of);
  const parts = one ? [] : told === null ? FEW : [told];
  const cut = parts.map((count) => partMeaning(of, count));
  return told !== null && !one ? cut : [wholeMeaning(of), ...cut];
}

function partMeaning({ dish, figures }: JudgedDish, count: number): Meaning {
  const called = `${dish.title}, one of ${count}`;
  return aMeaning(called, figures.whole, whole(dish.id), { share: 1 / count, published: null });
}

function halfMeaning({ dish, figures }: JudgedDish): Meaning {
  const two = dish.recipe.portions.find((each) => each.kind === 'count' && each.of === 2);
  const published = two ? ({ kind: 'portion', portionId: two.id } as const) : null;
  return aMeaning(`${dish.title}, half of it`, figures.whole, whole(dish.id), {
    share: 1 / 2,
    published,
  });
}

/** All of a dish: where it is made several times, one making or all of them. */
function wholes(of: JudgedDish): Meaning[] {
  return ofMakings(wholeMeaning(of), of.dish);
}

function halves(of: JudgedDish): Meaning[] {
  return ofMakings(halfMeaning(of), of.dish);
}

function per100gMeaning({ dish, figures }: JudgedDish): Meaning {
  const scope = { kind: 'per100g', segmentId: dish.id } as const;
  const cause = figures.per100g ? null : `${dish.title} has no finished weight yet`;
  return aMeaning(`${dish.title}, 100 g of it, finished`, figures.per100g, scope, {
    cause,
    published: figures.per100g ? scope : null,
  });
}

function dayMeaning({ figures }: JudgeContext): Meaning {
  return aMeaning(figures.dayIsWhole ? 'the day' : 'the dishes shown', figures.day, {
    kind: 'day',
  });
}

/** Said before or after this dish was eaten. */
function soFarMeanings(dishes: About['dishes'], context: JudgeContext): Meaning[] {
  return dishes.flatMap((dish) => {
    const before = context.dishes[context.dishes.indexOf(dish) - 1];
    return [...(before ? [soFarMeaning(before, context)] : []), soFarMeaning(dish, context)];
  });
}

function soFarMeaning({ dish }: JudgedDish, context: JudgeContext): Meaning {
  const figures = context.soFar(dish.id).day;
  return aMeaning(
    `the day up to and with ${dish.title}`,
    figures,
    { kind: 'day' },
    { published: null },
  );
}
