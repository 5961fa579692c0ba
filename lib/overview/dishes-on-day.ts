import { dishesOf, type Dish } from '#lib/episode/context';
import { lastScaleId } from '#lib/episode/scale-so-far';
import type { EpisodeFile, Recipe, Weighing } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { sayDay, sayLines, saySoFar, type SayLine } from '#lib/figures/say-line';
import { spokenNumbers } from '#lib/lock/said-numbers';
import type { DayEvent } from '#lib/shoot/day-log';
import { foldScale, readingId, weighingsNow, type ScaleFold } from '#lib/shoot/day-weighings';
import { foldSaid, type DaySaid } from '#lib/shoot/fold-said';
import { scopeKey, type SaidScope } from '#lib/shoot/said-entries';
import { printGrams } from '#lib/units/print';

/** An ingredient as it is picked for the scale. */
export interface DayIngredient {
  readonly id: string;
  readonly text: string;
  /** "120 g", where grams were typed; null where not. */
  readonly planned: string | null;
}

/** A line to say, and what is to be known before it is said. */
export interface DaySay {
  readonly scope: SaidScope;
  /** What it is about: "All of it", "One of 4", "The day so far". */
  readonly about: string;
  readonly line: SayLine;
  /** What was said of it cannot add up with the other numbers that were said. */
  readonly clashes: boolean;
}

/** A dish of the filming day: what can be weighed of it, what was, and what can be said of it. */
export interface DayDish {
  readonly segmentId: string;
  readonly recipeId: string;
  readonly title: string;
  readonly lines: readonly DayIngredient[];
  readonly weighings: Weighing[];
  /** The scale that it was last weighed on, else the kitchen's first; null in a kitchen without one. */
  readonly scaleId: string | null;
  readonly says: readonly DaySay[];
  /** The dishes that the day so far has, this one last. */
  readonly soFar: readonly string[];
}

export interface DishesOnDay {
  readonly dishes: readonly DayDish[];
  readonly scales: readonly { readonly id: string; readonly name: string }[];
  /** Ids of the readings entered on the day that these weights and lines take account of. */
  readonly counted: readonly string[];
}

/**
 * The dishes of an episode on its filming day, with the lines to say of what was weighed so far.
 * @param kept entries that the file's readings hold already
 * @param waiting entries that only a device has
 */
export function dishesOnDay(
  file: EpisodeFile,
  kept: readonly DayEvent[],
  waiting: readonly DayEvent[],
): DishesOnDay {
  const events = [...kept, ...waiting];
  const counted = new Set(readingsOf(kept));
  const weighed = withWeighings(file, foldScale(events), counted);
  const dishes = dishesOf(weighed.episode.segments);
  const said = foldSaid(events);
  const whole = saysOf(weighed, said);
  return {
    dishes: dishes.map((dish, at) => ({
      segmentId: dish.id,
      recipeId: dish.recipe.id,
      title: dish.title,
      lines: dish.recipe.lines.map(({ id, text, planned }) => {
        return { id, text, planned: planned && `${printGrams(planned.valueMg)} g` };
      }),
      weighings: dish.recipe.weighings,
      scaleId: lastScaleId(dish.recipe) ?? file.kitchen.scales[0]?.id ?? null,
      says: [
        ...whole.ofDish(dish),
        at === dishes.length - 1 ? whole.ofDay() : soFar(weighed, dish.id, said),
      ],
      soFar: dishes.slice(0, at + 1).map(({ title }) => title),
    })),
    scales: file.kitchen.scales.map(({ id, name }) => ({ id, name })),
    counted: readingsOf(events),
  };
}

const readingsOf = (events: readonly DayEvent[]) =>
  events.filter(({ kind }) => kind === 'weighed').map(({ id }) => readingId(id));

function withWeighings(
  file: EpisodeFile,
  fold: ScaleFold,
  counted: ReadonlySet<string>,
): EpisodeFile {
  const recipe = (of: Recipe): Recipe => {
    const weighings = weighingsNow(of, fold, counted);
    return { ...of, weighings, lines: of.lines.map((line) => leftWeighed(line, weighings)) };
  };
  const segments = file.episode.segments.map((segment) =>
    segment.recipe ? { ...segment, recipe: recipe(segment.recipe) } : segment,
  );
  return { ...file, episode: { ...file.episode, segments } };
}

/** What is left of an ingredient counts as weighed from its first reading on. */
function leftWeighed(line: Recipe['lines'][number], weighings: readonly Weighing[]) {
  const read = weighings.some(
    ({ kind, shares }) => kind === 'left' && shares.some(({ lineId }) => lineId === line.id),
  );
  if (!read || line.leftBehind.kind === 'weighed') return line;
  return { ...line, leftBehind: { kind: 'weighed', where: 'pan', made: 'alike' } as const };
}

/** Lines of a file; each keeps to what was said of all others, not to what was said of itself. */
function saysOf(file: EpisodeFile, said: readonly DaySaid[], upTo: string | null = null) {
  const figures = episodeFigures(file);
  const numbersWith = (lines: readonly DaySaid[]) =>
    publishedNumbers(file, figures, { energyStep: 1, spoken: spokenNumbers(lines, upTo) });
  const all = numbersWith(said);
  const without = new Map<string, ReturnType<typeof confirmedOnly>>();
  const numbersFor = (scope: SaidScope) => {
    const key = said.some((one) => scopeKey(one.scope) === scopeKey(scope)) ? scopeKey(scope) : '';
    const others = said.filter((one) => scopeKey(one.scope) !== key);
    const numbers = without.get(key) ?? confirmedOnly(key === '' ? all : numbersWith(others));
    without.set(key, numbers);
    return numbers;
  };
  const clashes = (scope: SaidScope): boolean => {
    const stands = said.find((one) => scopeKey(one.scope) === scopeKey(scope));
    const [spoken] = stands ? spokenNumbers([stands], upTo) : [];
    return spoken !== undefined && all(spoken.nutrient, spoken.scope).clashes;
  };
  const say = (scope: SaidScope, about: string, line: SayLine): DaySay => {
    return { scope, about, line, clashes: clashes(scope) };
  };
  return {
    ofDish(dish: Dish): DaySay[] {
      const own = figures.dishes.find(({ segmentId }) => segmentId === dish.id);
      if (!own) return [];
      const { portions } = dish.recipe;
      return scopesOf(dish).flatMap(({ scope, about, key }) => {
        const lines = sayLines(own, portions, figures, numbersFor(scope));
        const found = lines.find((each) => each.key === key);
        return found ? [say(scope, about, found.line)] : [];
      });
    },
    ofDay(): DaySay {
      const scope = { kind: 'day' } as const;
      return say(scope, 'The day', sayDay(figures, numbersFor(scope)));
    },
    ofDayTo(segmentId: string): DaySay {
      const scope = { kind: 'soFar', segmentId } as const;
      return say(scope, 'The day so far', saySoFar(figures, numbersFor(scope)));
    },
  };
}

const oneOf = (of: number) => (of === 2 ? 'Half, one of 2' : `One of ${of}`);

/** The scopes of a dish, with the keys of their lines. */
function scopesOf({ id, recipe }: Dish) {
  const portions = recipe.portions.map((portion) => ({
    scope: { kind: 'portion', segmentId: id, portionId: portion.id } as const,
    about:
      portion.kind === 'count'
        ? oneOf(portion.of)
        : portion.name === ''
          ? 'A portion'
          : portion.name,
    key: portion.id,
  }));
  return [
    { scope: { kind: 'whole', segmentId: id } as const, about: 'All of it', key: `whole-${id}` },
    { scope: { kind: 'half', segmentId: id } as const, about: 'Half of it', key: `half-${id}` },
    ...portions,
  ];
}

/** The day with the dishes up to and with one, in running order. */
function soFar(file: EpisodeFile, segmentId: string, said: readonly DaySaid[]): DaySay {
  const { segments } = file.episode;
  const upTo = segments.slice(0, segments.findIndex(({ id }) => id === segmentId) + 1);
  const short = { ...file, episode: { ...file.episode, segments: upTo, targets: [] } };
  return saysOf(short, said, segmentId).ofDayTo(segmentId);
}
