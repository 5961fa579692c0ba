import type { Nutrient } from '#lib/foods/nutrients';
import { dishesOf, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import type {
  DishFigures,
  EpisodeFigures,
  Figures,
  PortionFigures,
} from '#lib/figures/episode-figures';
import { figureStatus, type Figure, type ProvisionalPart } from '#lib/figures/figure';
import { printFigure, someOf, type PrintedFigure } from '#lib/figures/print-figure';
import { tally, type TalliedNumber, type TallyNode } from '#lib/figures/tally';
import { printTo } from '#lib/units/print';

/** A number as it is written and said everywhere, with the remark that it may need. */
export interface PublishedNumber extends PrintedFigure {
  readonly onlyByRounding: boolean;
  /** Ingredients in it whose food waits for the person's word. */
  readonly provisional: readonly ProvisionalPart[];
}

export type NumberScope =
  | { readonly kind: 'day' }
  | { readonly kind: 'whole' | 'eaten' | 'per100g'; readonly segmentId: string }
  | { readonly kind: 'portion'; readonly portionId: string };

/** Looks up the one printed form of a figure; throws for a scope the episode does not have. */
export type PublishedNumbers = (nutrient: Nutrient, scope: NumberScope) => PublishedNumber;

/** What published numbers are rounded to: whole kcal, kJ and grams, 10 mg of sodium, 0.1 g of salt. */
export function publishedStep(nutrient: Nutrient): number {
  if (nutrient === 'salt') return 0.1;
  if (nutrient === 'sodium') return 10;
  return 1;
}

/**
 * The numbers of an episode as they are published: one printed form for each scope and nutrient, so that
 * they agree wherever they appear and segments add up to the day. A nutrient that is incomplete anywhere
 * is not tallied: its numbers are rounded alone, 'at least' downwards.
 * Equal portions print one number, the dish divided, and are not tied to the sum, unless one is what is eaten.
 */
export function publishedNumbers(file: EpisodeFile, figures: EpisodeFigures): PublishedNumbers {
  const dishes = dishesOf(file.episode.segments);
  const tallied = new Map<string, TalliedNumber>();
  for (const nutrient of figures.nutrients) {
    for (const tree of treesOf(dishes, figures, nutrient)) {
      for (const [id, number] of tally(tree, publishedStep(nutrient)).numbers) {
        tallied.set(`${nutrient} ${id}`, number);
      }
    }
  }
  const nodes = new Map(dishes.flatMap(nodesOf));
  return (nutrient, scope) => {
    const figure = figureFor(figures, nutrient, scope);
    const { provisional } = figure;
    const printed = {
      ...inRegion(printFigure(figure, publishedStep(nutrient)), figures.region),
      provisional,
    };
    const node = scope.kind === 'day' ? DAY : nodes.get(keyOf(scope));
    const number = tallied.get(`${nutrient} ${node}`);
    if (!number) return { ...printed, onlyByRounding: false };
    const text = printTo(number.printed, publishedStep(nutrient));
    return { ...printed, text, number: text, onlyByRounding: number.onlyByRounding };
  };
}

/**
 * The same numbers for what is copied or said: one that rests on a food nobody has confirmed is open, with the
 * ingredients that wait as its reason.
 */
export function confirmedOnly(numbers: PublishedNumbers): PublishedNumbers {
  return (nutrient, scope) => {
    const number = numbers(nutrient, scope);
    if (number.provisional.length === 0) return number;
    const waiting = someOf(number.provisional.map(({ text }) => text));
    const range = `not confirmed yet: ${waiting}`;
    return { ...number, status: 'open', text: 'open', number: null, range, onlyByRounding: false };
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
  const whole = num === den ? eaten : `whole ${dish.id}`;
  return [
    [eaten, eaten],
    [`whole ${dish.id}`, whole],
    ...dish.recipe.portions.map((portion): [string, string] => {
      const scope = `portion ${portion.id}`;
      if (portion.kind === 'mass') return [scope, scope];
      if (portion.of === 1) return [scope, whole];
      return [scope, num * portion.of === den ? eaten : scope];
    }),
  ];
}

/** The day over the parts eaten, and each dish that is cut into unequal portions of all its weight. */
function treesOf(
  dishes: readonly Dish[],
  figures: EpisodeFigures,
  nutrient: Nutrient,
): readonly TallyNode[] {
  const node = (id: string, of: Figures, children: readonly TallyNode[]): TallyNode | null => {
    const figure = of[nutrient];
    if (!figure || figureStatus(figure) !== 'known') return null;
    const { value, low, high } = figure;
    return { id, value, low: low ?? 0, high: high ?? value, fixed: null, children };
  };
  const own: TallyNode[] = [];
  const eaten = figures.dishes.map((of) => {
    const dish = dishes.find((each) => each.id === of.segmentId);
    const cut = dish ? unequalPortions(dish, of) : [];
    const parts = cut.flatMap((part) => node(`portion ${part.portionId}`, part.figures, []) ?? []);
    if (dish?.eaten.num === dish?.eaten.den) return node(`eaten ${of.segmentId}`, of.eaten, parts);
    const whole = parts.length > 0 ? node(`whole ${of.segmentId}`, of.whole, parts) : null;
    if (whole) own.push(whole);
    return node(`eaten ${of.segmentId}`, of.eaten, []);
  });
  const known = eaten.filter((each) => each !== null);
  const day = known.length === eaten.length ? node(DAY, figures.day, known) : null;
  return day ? [...own, day] : own;
}

/** The portions by grams of a dish, where together they are all of its finished weight; else none. */
function unequalPortions(dish: Dish, figures: DishFigures): readonly PortionFigures[] {
  const masses = dish.recipe.portions.filter((portion) => portion.kind === 'mass');
  const sum = masses.reduce((total, portion) => total + portion.massMg, 0);
  if (figures.finishedMg?.value !== sum) return [];
  const ids = new Set(masses.map((portion) => portion.id));
  return figures.portions.filter((portion) => ids.has(portion.portionId));
}

function figureFor(figures: EpisodeFigures, nutrient: Nutrient, scope: NumberScope): Figure {
  const found = figuresFor(figures, scope)?.[nutrient];
  if (!found) throw new Error(`no figure for ${nutrient} in ${JSON.stringify(scope)}`);
  return found;
}

function figuresFor(figures: EpisodeFigures, scope: NumberScope): Figures | null | undefined {
  if (scope.kind === 'day') return figures.day;
  if (scope.kind === 'portion') {
    return figures.dishes
      .flatMap((dish) => dish.portions)
      .find((portion) => portion.portionId === scope.portionId)?.figures;
  }
  const dish = figures.dishes.find((each) => each.segmentId === scope.segmentId);
  return dish?.[scope.kind];
}
