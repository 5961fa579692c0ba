import type { Nutrient } from '#lib/foods/nutrients';
import { dishesOf, type Dish } from '#lib/episode/context';
import { portionSum } from '#lib/episode/portion-sum';
import type { EnergyStep, EpisodeFile } from '#lib/episode/schema';
import type {
  DishFigures,
  EpisodeFigures,
  Figures,
  PortionFigures,
} from '#lib/figures/episode-figures';
import { figureStatus, type Figure, type ProvisionalPart } from '#lib/figures/figure';
import {
  hedgeWord,
  isOutside,
  spokenNumbers,
  type SpokenNumber,
} from '#lib/figures/spoken-numbers';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { provisionalWords } from '#lib/figures/provisional-words';
import { tally, type TalliedNumber, type TallyNode } from '#lib/figures/tally';
import { localDate } from '#lib/units/local-date';
import { printCount, printTo, roundTo } from '#lib/units/print';
import { printDayOfMonth } from '#lib/units/print-date';

/** A number as it is written and said everywhere, with the remark that it may need. */
export interface PublishedNumber extends PrintedFigure {
  readonly onlyByRounding: boolean;
  /** True for a number that was spoken and that the others cannot be made to add up with. */
  readonly clashes: boolean;
  /** What was said of it in front of the camera, or null. */
  readonly said: SaidOfNumber | null;
  /** Ingredients in it whose food waits for the person's word. */
  readonly provisional: readonly ProvisionalPart[];
}

/** A number as it was said in front of the camera. */
export interface SaidOfNumber {
  /** "said on 14 Nov: about 640 kcal". */
  readonly words: string;
  /** Said as it stands, so that it is the number that is written too. */
  readonly fixed: boolean;
  /** No amount that the figure's sources allow is covered by what was said. */
  readonly outside: boolean;
}

export type NumberScope =
  | { readonly kind: 'day' }
  | { readonly kind: 'whole' | 'eaten' | 'per100g'; readonly segmentId: string }
  | { readonly kind: 'portion'; readonly portionId: string };

/** Looks up the one printed form of a figure; throws for a scope the episode does not have. */
export type PublishedNumbers = (nutrient: Nutrient, scope: NumberScope) => PublishedNumber;

export interface PublishedOptions {
  /** What calories are rounded to; what the episode says if left out. Ranges keep their whole calories. */
  readonly energyStep?: EnergyStep;
  /** What was said in front of the camera; what the file knows of it if left out. */
  readonly spoken?: readonly SpokenNumber[];
}

/** What published numbers are rounded to: whole kcal, kJ and grams, 10 mg of sodium, 0.1 g of salt. */
export function publishedStep(nutrient: Nutrient, energyStep: EnergyStep = 1): number {
  if (nutrient === 'energyKcal') return energyStep;
  if (nutrient === 'salt') return 0.1;
  if (nutrient === 'sodium') return 10;
  return 1;
}

/**
 * The numbers of an episode as they are published: one printed form for each scope and nutrient, so that
 * they agree wherever they appear and segments add up to the day. A nutrient that is incomplete anywhere
 * is not tallied: its numbers are rounded alone, 'at least' downwards.
 * Equal portions print one number, the dish divided, and are not tied to the sum, unless one is what is eaten.
 * What has been spoken stands as it was said, and the others give way; where they cannot, it `clashes`. `said` tells
 * it, also where it was said as 'about' and fixes nothing, and whether the figure still allows it.
 * @example publishedNumbers(file, figures, { energyStep: 10 })('energyKcal', { kind: 'day' }).text // '1290'
 */
export function publishedNumbers(
  file: EpisodeFile,
  figures: EpisodeFigures,
  {
    energyStep = file.episode.energyStep,
    spoken = spokenNumbers(file.said),
  }: PublishedOptions = {},
): PublishedNumbers {
  const dishes = dishesOf(file.episode.segments);
  const nodes = new Map(dishes.flatMap(nodesOf));
  const nodeOf = (scope: NumberScope) => {
    if (scope.kind === 'day') return DAY;
    const key = keyOf(scope);
    return nodes.get(key) ?? key;
  };
  const keyed = spoken.map((one): [string, SpokenNumber] => [
    `${one.nutrient} ${nodeOf(one.scope)}`,
    one,
  ]);
  const saidAs = new Map(keyed);
  const said = new Map<string, number>(
    keyed.flatMap(([key, { amount, hedge }]) =>
      (hedge ?? 'exact') === 'exact' ? [[key, amount] as const] : [],
    ),
  );
  const tallied = new Map<string, TalliedNumber>();
  const clashing = new Set<string>();
  for (const nutrient of figures.nutrients) {
    const fixed = (node: string) => said.get(`${nutrient} ${node}`) ?? null;
    for (const tree of treesOf(dishes, figures, nutrient, fixed)) {
      const result = tally(tree, publishedStep(nutrient, energyStep));
      for (const [id, number] of result.numbers) tallied.set(`${nutrient} ${id}`, number);
      for (const id of result.clashing) clashing.add(`${nutrient} ${id}`);
    }
  }
  return (nutrient, scope) => {
    const figure = figureFor(figures, nutrient, scope);
    const key = `${nutrient} ${nodeOf(scope)}`;
    const step = publishedStep(nutrient, energyStep);
    const { text, number, status } = printFigure(figure, step);
    const saidHere = saidOf(saidAs.get(key), figure, file.kitchen.zone);
    const misses = saidHere?.fixed === true && saidHere.outside;
    const common = {
      ...inRegion(printFigure(figure, publishedStep(nutrient)), figures.region),
      provisional: figure.provisional,
      onlyByRounding: !misses && (tallied.get(key)?.onlyByRounding ?? false),
      clashes: clashing.has(key),
      said: saidHere,
    };
    const spokenHere = status === 'known' ? said.get(key) : undefined;
    const amount = tallied.get(key)?.printed ?? spokenHere;
    if (amount === undefined) return { ...common, text, number };
    // What was said in finer digits is not rounded again.
    const shown = printTo(amount, spokenHere === undefined ? step : finestStep(amount, step));
    return { ...common, text: shown, number: shown };
  };
}

function saidOf(
  spoken: SpokenNumber | undefined,
  figure: Figure,
  zone: string,
): SaidOfNumber | null {
  if (!spoken) return null;
  const { amount, hedge, at } = spoken;
  const on = at === undefined ? '' : ` on ${printDayOfMonth(localDate(new Date(at), zone))}`;
  const { unit } = printFigure(figure);
  return {
    words: `said${on}: ${hedgeWord(hedge)}${printCount(amount)} ${unit}`,
    fixed: (hedge ?? 'exact') === 'exact',
    outside: isOutside(spoken, figure),
  };
}

/** The step of a spoken number: the published one, or tenths of it where it was said finer. */
function finestStep(amount: number, step: number): number {
  return [step, 1, 0.1].find((each) => Math.abs(roundTo(amount, each) - amount) < 1e-9) ?? 0.01;
}

/**
 * The same numbers for what is copied or said: one that rests on a food nobody has confirmed, or on a weight that
 * waits in a photo, is open, with the ingredients that wait as its reason.
 */
export function confirmedOnly(numbers: PublishedNumbers): PublishedNumbers {
  return (nutrient, scope) => {
    const number = numbers(nutrient, scope);
    if (number.provisional.length === 0) return number;
    const range = provisionalWords(number.provisional);
    return {
      ...number,
      status: 'open',
      text: 'open',
      number: null,
      range,
      onlyByRounding: false,
      clashes: false,
    };
  };
}

/** Energy is called calories in the US and energy in the EU. */
function inRegion(printed: PrintedFigure, region: EpisodeFigures['region']): PrintedFigure {
  return region === 'EU' && printed.unit === 'kcal' ? { ...printed, label: 'energy' } : printed;
}

const DAY = 'day';

function keyOf(scope: Exclude<NumberScope, { kind: 'day' }>): string {
  return scope.kind === 'portion'
    ? `portion ${scope.portionId}`
    : `${scope.kind} ${scope.segmentId}`;
}

/**
 * Which number of the tally a scope of a dish prints: the same amount is one number, whether it is called
 * the whole dish, the part eaten or one of so many.
 */
function nodesOf(dish: Dish): [scope: string, node: string][] {
  const { num, den } = dish.eaten;
  const eaten = `eaten ${dish.id}`;
  const byShare = dish.ate.kind === 'share';
  const whole = isEatenWhole(dish) ? eaten : `whole ${dish.id}`;
  return [
    [eaten, eaten],
    [`whole ${dish.id}`, whole],
    ...dish.recipe.portions.map((portion): [string, string] => {
      const scope = `portion ${portion.id}`;
      if (portion.kind !== 'count') return [scope, scope];
      if (portion.of === 1) return [scope, whole];
      return [scope, byShare && num * portion.of === den ? eaten : scope];
    }),
  ];
}

/** The day over the parts eaten, and each dish that is cut into unequal portions of all its weight. */
function treesOf(
  dishes: readonly Dish[],
  figures: EpisodeFigures,
  nutrient: Nutrient,
  fixed: (node: string) => number | null,
): readonly TallyNode[] {
  const node = (id: string, of: Figures, children: readonly TallyNode[]): TallyNode | null => {
    const figure = of[nutrient];
    if (!figure || figureStatus(figure) !== 'known') return null;
    const { value, low, high } = figure;
    return { id, value, low: low ?? 0, high: high ?? value, fixed: fixed(id), children };
  };
  const own: TallyNode[] = [];
  const eaten = figures.dishes.map((of) => {
    const dish = dishes.find((each) => each.id === of.segmentId);
    const cut = dish ? unequalPortions(dish, of) : [];
    const parts = cut.flatMap((part) => node(`portion ${part.portionId}`, part.figures, []) ?? []);
    if (dish && isEatenWhole(dish)) return node(`eaten ${of.segmentId}`, of.eaten, parts);
    const whole = parts.length > 0 ? node(`whole ${of.segmentId}`, of.whole, parts) : null;
    if (whole) own.push(whole);
    return node(`eaten ${of.segmentId}`, of.eaten, []);
  });
  const known = eaten.filter((each) => each !== null);
  const day = known.length === eaten.length ? node(DAY, figures.day, known) : null;
  return day ? [...own, day] : own;
}

/** All of the dish, exactly: a share by eye or by weight may come out as all of it and be another number. */
function isEatenWhole({ ate, eaten }: Dish): boolean {
  return ate.kind === 'share' && eaten.num === eaten.den;
}

/**
 * The portions by grams of a dish, where together they are all of its finished weight, or those by eye, where
 * together they are all of it; else none.
 */
function unequalPortions({ recipe }: Dish, figures: DishFigures): readonly PortionFigures[] {
  const { byGrams, byEye } = portionSum(recipe.portions, figures.finishedMg?.value ?? null);
  const kind = byGrams?.leftMg === 0 ? 'mass' : byEye?.left.num === 0 ? 'byEye' : null;
  const cut = recipe.portions.filter((portion) => portion.kind === kind);
  const ids = new Set(cut.map((portion) => portion.id));
  return figures.portions.filter((portion) => ids.has(portion.portionId));
}

function figureFor(figures: EpisodeFigures, nutrient: Nutrient, scope: NumberScope): Figure {
  const found = figuresFor(figures, scope)?.[nutrient];
  if (!found) throw new Error(`no figure for ${nutrient} in ${JSON.stringify(scope)}`);
  return found;
}

/** The figures of a scope; null or undefined where the episode has none of it. */
export function figuresFor(
  figures: EpisodeFigures,
  scope: NumberScope,
): Figures | null | undefined {
  if (scope.kind === 'day') return figures.day;
  if (scope.kind === 'portion') {
    return figures.dishes
      .flatMap((dish) => dish.portions)
      .find((portion) => portion.portionId === scope.portionId)?.figures;
  }
  const dish = figures.dishes.find((each) => each.segmentId === scope.segmentId);
  return dish?.[scope.kind];
}
