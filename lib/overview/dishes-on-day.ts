import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import { dishesOf } from '#lib/episode/context';
import type { SaidLine } from '#lib/episode/said-line';
import { lastScaleId } from '#lib/episode/scale-so-far';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { saysOf, sayOfDayTo, type DaySay } from '#lib/overview/says-of';
import type { DayEvent } from '#lib/shoot/day-log';
import { foldScale, readingId, weighingsNow, type ScaleFold } from '#lib/shoot/day-weighings';
import { foldSaid } from '#lib/shoot/fold-said';
import { printGrams } from '#lib/units/print';

/** An ingredient as it is picked for the scale. */
export interface DayIngredient {
  readonly id: string;
  readonly text: string;
  /** "120 g", where grams were typed; null where not. */
  readonly planned: string | null;
  /** The same in milligrams. */
  readonly plannedMg: number | null;
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
  const photos = events.flatMap((event) => (event.kind === 'display' ? event.payload.sha256 : []));
  const weighed = withWeighings(file, foldScale(events), counted, new Set(photos));
  const dishes = dishesOf(weighed.episode.segments);
  const said = saidHere(file, foldSaid(events));
  const whole = saysOf(weighed, said);
  return {
    dishes: dishes.map((dish, at) => ({
      segmentId: dish.id,
      recipeId: dish.recipe.id,
      title: dish.title,
      lines: dish.recipe.lines.map(({ id, text, planned }) => {
        const grams = planned && `${printGrams(planned.valueMg)} g`;
        return { id, text, planned: grams, plannedMg: planned?.valueMg ?? null };
      }),
      weighings: dish.recipe.weighings,
      scaleId: lastScaleId(dish.recipe) ?? file.kitchen.scales[0]?.id ?? null,
      says: [
        ...whole.ofDish(dish),
        at === dishes.length - 1 && file.also === undefined
          ? whole.ofDay()
          : sayOfDayTo(weighed, dish.id, said),
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
  told: ReadonlySet<string>,
): EpisodeFile {
  const waits = new Map(
    fold.displays.map(({ lineId, at, sha256 }) => [lineId ?? '', { at, sha256 }]),
  );
  const photographed = (line: RecipeLine) => {
    const before = line.photographed;
    // A photo of another day waits still; of one of this day the entries say whether it does.
    return waits.get(line.id) ?? (before && !told.has(before.sha256) ? before : null);
  };
  const recipe = (of: Recipe): Recipe => {
    const weighings = weighingsNow(of, fold, counted);
    const lines = of.lines.map((line) => ({
      ...leftWeighed(line, weighings),
      photographed: photographed(line),
    }));
    return { ...of, weighings, lines };
  };
  const segments = file.episode.segments.map((segment) =>
    segment.recipe ? { ...segment, recipe: recipe(segment.recipe) } : segment,
  );
  return { ...file, episode: { ...file.episode, segments } };
}

/**
 * The dishes of all episodes of a day, those of the others as far as they are filmed on it. A title that two episodes
 * have names its episode.
 * @param others `dishesOnDay` of the other episodes' own files
 */
export function dishesTogether(
  file: DayFile,
  own: DishesOnDay,
  others: readonly DishesOnDay[],
): DishesOnDay {
  const segments = filmedTogether(file).episode.segments;
  const titles = new Map(segments.map(({ id, title }) => [id, title]));
  const theirs = others.flatMap(({ dishes }) => dishes);
  const dishes = [...own.dishes, ...theirs.filter(({ segmentId }) => titles.has(segmentId))];
  return {
    ...own,
    dishes: dishes.map((dish) => ({ ...dish, title: titles.get(dish.segmentId) ?? dish.title })),
  };
}

/**
 * What was said of the file's own dishes. A line of the whole day has no dish: where the day has several episodes it
 * is of the one whose file has it, and no other is said.
 */
function saidHere(file: EpisodeFile, said: readonly SaidLine[]): SaidLine[] {
  if (file.also === undefined) return [...said];
  const segments = new Set(file.episode.segments.map(({ id }) => id));
  const own = new Set(file.said.map(({ id }) => id));
  return said.filter(({ id, scope }) =>
    scope.kind === 'day' ? own.has(id) : segments.has(scope.segmentId),
  );
}

/** What is left of an ingredient counts as weighed from its first reading on. */
function leftWeighed(line: RecipeLine, weighings: readonly Weighing[]) {
  const read = weighings.some(
    ({ kind, shares }) => kind === 'left' && shares.some(({ lineId }) => lineId === line.id),
  );
  if (!read || line.leftBehind.kind === 'weighed') return line;
  return { ...line, leftBehind: { kind: 'weighed', where: 'pan', made: 'alike' } as const };
}
