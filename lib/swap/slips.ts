import type { AmountContext } from '#lib/episode/context';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Food, FoodState, FoodVersion } from '#lib/foods/food';
import { saysOther, variantWords } from '#lib/foods/food-variants';
import { cellInterval } from '#lib/foods/label-rounding';
import type { SumInput, SumScope } from '#lib/swap/dish-sum';
import { shareWords } from '#lib/swap/dish-sum';

/** Ways to come to another number, in the order in which they are told where several give the same number. */
export const SLIP_KINDS = [
  'otherVariant',
  'otherPortions',
  'fatLeftOut',
  'cookedForRaw',
  'otherPart',
  'packForServing',
  'otherLabel',
  'referenceFood',
  'lessFibre',
  'kilojoules',
  'drained',
  'forgotten',
  'doubled',
  'half',
  'twice',
] as const;
export type SlipKind = (typeof SLIP_KINDS)[number];

/** One thing done otherwise than in the breakdown, and what is then added up. */
export interface Slip {
  /** Kind and ingredient, as it is kept with a reply: `fatLeftOut:line-3`. */
  readonly code: string;
  readonly kind: SlipKind;
  readonly lineId: string | null;
  /** What was done, as part of a sentence: 'without the oil'. */
  readonly words: string;
  readonly input: SumInput;
  /** The ingredient's own words say what this does: then the breakdown is what is to be looked at. */
  readonly asWritten?: boolean;
}

export interface SlipOptions {
  /** Other readings of a food's label, by food. */
  readonly versions?: ReadonlyMap<string, readonly FoodVersion[]>;
  /** The same food leaner or fatter, by food. */
  readonly variants?: ReadonlyMap<string, readonly Food[]>;
}

/** Every single slip that can be made with a dish's number. */
export function slipsOf(input: SumInput, options: SlipOptions = {}): readonly Slip[] {
  const all = [
    ...input.recipe.lines.flatMap((line) => [
      ...lineSlips(line, input, options),
      ...variantSlips(line, input, options),
    ]),
    ...partSlips(input),
    ...portionSlips(input),
    ...numberSlips(input),
  ];
  return all.sort((a, b) => SLIP_KINDS.indexOf(a.kind) - SLIP_KINDS.indexOf(b.kind));
}

type LineSlip = readonly [kind: SlipKind, words: string, change: Partial<SumInput>];

/** An ingredient as people call it: the words that name its food, without amount and cut. */
function nameOf(line: RecipeLine, food: Food | null): string {
  return readIngredient(line.text)[0]?.food || food?.name || line.text;
}

function lineSlips(line: RecipeLine, input: SumInput, options: SlipOptions): Slip[] {
  const food = input.context.foods.get(line.foodId ?? '') ?? null;
  const name = nameOf(line, food);
  const counted = (times: number) => ({ times: new Map([...input.times, [line.id, times]]) });
  const fat = food !== null && isFatOrSauce(food);
  const found: LineSlip[] = [
    [fat ? 'fatLeftOut' : 'forgotten', `without the ${name}`, counted(0)],
    ['doubled', `with the ${name} counted twice`, counted(2)],
    ...(food ? foodSlips(line, food, { input, options }) : []),
  ];
  return found.map(([kind, words, change]) => ({
    ...{ code: `${kind}:${line.id}`.slice(0, 60), kind, lineId: line.id, words },
    input: { ...input, ...change },
  }));
}

interface Surroundings {
  readonly input: SumInput;
  readonly options: SlipOptions;
}

function foodSlips(line: RecipeLine, food: Food, { input, options }: Surroundings): LineSlip[] {
  const name = nameOf(line, food);
  const withLine = (more: Partial<RecipeLine>) => ({
    recipe: {
      ...input.recipe,
      lines: input.recipe.lines.map((each) => (each.id === line.id ? { ...each, ...more } : each)),
    },
  });
  const witness = input.context.foods.get(food.witnessId ?? '');
  const state = otherState(line, food);
  const versions = (options.versions?.get(food.id) ?? []).filter(
    ({ id }) => id !== food.version.id,
  );
  return [
    ...(state === null
      ? []
      : [
          [
            'cookedForRaw',
            `with the weight of the ${name} taken as ${state === 'cooked' ? 'its cooked' : 'its raw'} weight`,
            withLine({ state }),
          ] as const,
        ]),
    ...packSlips(line, food, input, withLine),
    ...versions.map(
      (version) =>
        [
          'otherLabel',
          `with another label of the ${name}${version.dateRead ? ` (read on ${version.dateRead})` : ''}`,
          { context: withFood(input.context, { ...food, version }) },
        ] as const,
    ),
    ...(witness
      ? [
          [
            'referenceFood',
            `with “${witness.name}” from a table in place of the label of the ${name}`,
            withLine({ foodId: witness.id, orFoodId: null }),
          ] as const,
        ]
      : []),
  ];
}

function packSlips(
  line: RecipeLine,
  food: Food,
  input: SumInput,
  withLine: (more: Partial<RecipeLine>) => Partial<SumInput>,
): LineSlip[] {
  const name = nameOf(line, food);
  const pack = input.context.packs.get(food.id)?.[0];
  const found: LineSlip[] = [];
  const { serving } = food.version;
  if (line.unit === 'pack' && serving) {
    found.push([
      'packForServing',
      `with one serving of the ${name} for the pack`,
      withLine({ unit: 'serving', planned: null }),
    ]);
  }
  if (line.unit === 'serving' && (pack ?? serving?.perPack)) {
    const words = `with a whole pack of the ${name} for a serving`;
    const change = pack
      ? withLine({ unit: 'pack', planned: null })
      : { times: new Map([...input.times, [line.id, serving?.perPack ?? 1]]) };
    found.push(['packForServing', words, change]);
  }
  if (pack?.netMg && pack.drainedMg) {
    const drained = food.version.state === 'drained' || line.state === 'drained';
    const times = drained ? pack.netMg / pack.drainedMg : pack.drainedMg / pack.netMg;
    const words = drained
      ? `with the ${name} weighed with its liquid instead of drained`
      : `with the ${name} weighed drained instead of with its liquid`;
    found.push(['drained', words, { times: new Map([...input.times, [line.id, times]]) }]);
  }
  return found;
}

/** The other of raw and cooked; null where a food is neither. */
function otherState(line: RecipeLine, food: Food): FoodState | null {
  const state = line.state === 'asIs' ? food.version.state : line.state;
  if (state === 'asIs') return null;
  return state === 'raw' || state === 'dry' ? 'cooked' : 'raw';
}

/** Half of it fat, or among oils and sauces (common practice, no source). */
function isFatOrSauce(food: Food): boolean {
  if (food.section === 'oilsAndSauces') return true;
  const fat = cellInterval(food.version, 'fat');
  const { basis, serving } = food.version;
  const grams = basis === 'serving' ? (serving?.massMg ?? 0) / 1000 : 100;
  return fat !== null && grams > 0 && fat.value >= grams / 2;
}

/** The same food leaner or fatter: nobody's slip, for viewers cook with their own. */
function variantSlips(line: RecipeLine, input: SumInput, { variants }: SlipOptions): Slip[] {
  const food = input.context.foods.get(line.foodId ?? '');
  if (!food) return [];
  const called = (each: Food) => variantWords(each) || each.name;
  const lines = (foodId: string) =>
    input.recipe.lines.map((each) =>
      each.id === line.id ? { ...each, foodId, orFoodId: null } : each,
    );
  return (variants?.get(food.id) ?? []).map((other): Slip => ({
    code: `otherVariant:${line.id}:${other.version.sourceNo}`.slice(0, 60),
    ...{ kind: 'otherVariant', lineId: line.id },
    words: `with the ${nameOf(line, food)} as “${called(other)}”, where the breakdown has “${called(food)}”,`,
    input: {
      ...input,
      context: withFood(input.context, other),
      recipe: { ...input.recipe, lines: lines(other.id) },
    },
    asWritten: saysOther(line.text, food, other),
  }));
}

/** A dish is cut into no more portions than these by whoever cuts it otherwise (common practice, no source). */
const MOST_PORTIONS = 12;

/** One of another number of equal portions: a viewer's own tray is cut as they like it. */
function portionSlips({ dish, scope, ...input }: SumInput): Slip[] {
  const portion =
    scope.kind === 'portion'
      ? dish.recipe.portions.find(({ id }) => id === scope.portionId)
      : undefined;
  if (portion?.kind !== 'count') return [];
  const { of } = portion;
  const counts = Array.from({ length: MOST_PORTIONS - 1 }, (_, at) => at + 2);
  return counts
    .filter((count) => count !== of)
    .map((count) => ({
      ...{ code: `otherPortions:${count}`, kind: 'otherPortions', lineId: null },
      words: `as one of ${count} portions instead of ${of}`,
      input: { ...input, dish, scope, again: (input.again * of) / count },
    }));
}

function withFood(context: AmountContext, food: Food): AmountContext {
  return { ...context, foods: new Map([...context.foods, [food.id, food]]) };
}

function partSlips(input: SumInput): Slip[] {
  const scopes: SumScope[] = [
    { kind: 'whole' },
    ...input.dish.recipe.portions.map(({ id }) => ({ kind: 'portion' as const, portionId: id })),
    { kind: 'day' },
  ];
  const key = (scope: SumScope) => (scope.kind === 'portion' ? scope.portionId : scope.kind);
  return scopes
    .filter((scope) => key(scope) !== key(input.scope))
    .map((scope) => ({
      ...{ code: `otherPart:${key(scope)}`.slice(0, 60), kind: 'otherPart', lineId: null },
      words: `as the number ${shareWords(input.dish, scope)}`,
      input: { ...input, scope },
    }));
}

function numberSlips(input: SumInput): Slip[] {
  const { nutrient, region } = input;
  const calories = region === 'US' ? 'calories' : 'kilocalories';
  const of = (kind: SlipKind, words: string, change: Partial<SumInput>): Slip => ({
    ...{ code: kind, kind, lineId: null, words },
    input: { ...input, ...change },
  });
  return [
    of('half', 'with half of it', { again: input.again / 2 }),
    of('twice', 'with twice as much of it', { again: input.again * 2 }),
    ...(nutrient === 'energyKcal'
      ? [of('kilojoules', `as kilojoules (kJ) instead of ${calories}`, { nutrient: 'energyKj' })]
      : []),
    ...(nutrient === 'energyKj'
      ? [
          of('kilojoules', `as ${calories} (kcal) instead of kilojoules`, {
            nutrient: 'energyKcal',
          }),
        ]
      : []),
    ...(nutrient === 'carbohydrate'
      ? [
          region === 'US'
            ? of('lessFibre', 'as carbs less fibre', { nutrient: 'netCarbohydrate' })
            : of('lessFibre', 'as carbs with fibre counted in', { region: 'US' }),
        ]
      : []),
    ...(nutrient === 'netCarbohydrate'
      ? [
          of('lessFibre', 'as carbs with fibre counted in', {
            nutrient: 'carbohydrate',
            region: 'US',
          }),
        ]
      : []),
  ];
}
