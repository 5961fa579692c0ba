import type { DishFacts, EditFacts } from '#lib/claims/edit-facts';
import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import {
  episodeFigures,
  type DishFigures,
  type EpisodeFigures,
} from '#lib/figures/episode-figures';
import { scopeText } from '#lib/figures/breakdown-scope';
import {
  confirmedOnly,
  publishedNumbers,
  type PublishedNumber,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';

/** All that statements are held against, worked out once for all of them. */
export interface JudgeContext {
  readonly file: EpisodeFile;
  readonly facts: EditFacts;
  readonly figures: EpisodeFigures;
  /**
   * As they are published, those that wait for the person’s word left out; null for a nutrient that is only counted
   * because something was said of it, since no number of that is published (MODEL C.4).
   */
  readonly numbers: (...of: Parameters<PublishedNumbers>) => PublishedNumber | null;
  /** In viewing order. */
  readonly dishes: readonly JudgedDish[];
  readonly amounts: AmountContext;
  readonly byId: ReadonlyMap<string, JudgedDish>;
  readonly byTitle: ReadonlyMap<string, JudgedDish>;
  /** Of the dishes up to and with one, as if no other were to follow. */
  readonly soFar: (segmentId: string) => EpisodeFigures;
  /** Of some dishes together, one of so many equal parts of each. */
  readonly together: (parts: readonly DishPart[]) => EpisodeFigures;
}

/** One of so many equal parts of a dish that is made once. */
export interface DishPart {
  readonly segmentId: string;
  readonly of: number;
}

/** A dish with its figures and what the log and the shops say of it. */
export interface JudgedDish {
  readonly dish: Dish;
  readonly figures: DishFigures;
  readonly facts: DishFacts | null;
}

/** Figures of an episode with the nutrients that are asked for, and its numbers as they are published. */
export type NumbersFor = (nutrients: readonly Nutrient[]) => {
  readonly figures: EpisodeFigures;
  readonly numbers: PublishedNumbers;
};

/**
 * Gathers what statements are held against.
 * @param nutrients what the statements speak of beside what the episode counts anyway
 * @param numbersFor whose numbers are held against, as those of a lock; the file's own if left out
 */
export function judgeContext(
  file: EpisodeFile,
  facts: EditFacts,
  nutrients: readonly Nutrient[],
  numbersFor?: NumbersFor,
): JudgeContext {
  const counted = new Set(countedNutrients(file.episode));
  const all = [...new Set([...counted, ...nutrients])];
  const given = numbersFor?.(all);
  const figures = given?.figures ?? episodeFigures(file, all);
  const numbers = given?.numbers ?? publishedNumbers(file, countedOf(figures, counted));
  const factsOf = new Map(facts.dishes.map((each) => [each.segmentId, each]));
  const figuresOf = new Map(figures.dishes.map((each) => [each.segmentId, each]));
  const dishes = dishesOf(file.episode.segments).flatMap((dish): JudgedDish[] => {
    const own = figuresOf.get(dish.id);
    return own ? [{ dish, figures: own, facts: factsOf.get(dish.id) ?? null }] : [];
  });
  return {
    file,
    facts,
    figures,
    numbers: onceEach(confirmedOnly(numbers), counted),
    amounts: amountContext(file),
    dishes,
    byId: new Map(dishes.map((each) => [each.dish.id, each])),
    byTitle: new Map(dishes.map((each) => [each.dish.title, each])),
    soFar: keptBy((segmentId) => upTo(file, segmentId, all)),
    together: (parts) => partsTogether(file, parts, all),
  };
}

function partsTogether(
  file: EpisodeFile,
  parts: readonly DishPart[],
  nutrients: readonly Nutrient[],
): EpisodeFigures {
  const partOf = new Map(parts.map(({ segmentId, of }) => [segmentId, of]));
  const segments = file.episode.segments.flatMap((segment) => {
    const of = partOf.get(segment.id);
    const eaten = { num: 1, den: of ?? 1 };
    return of === undefined ? [] : [{ ...segment, eaten, ate: { kind: 'share' as const } }];
  });
  return episodeFigures({ ...file, episode: { ...file.episode, segments } }, nutrients);
}

function upTo(
  file: EpisodeFile,
  segmentId: string,
  nutrients: readonly Nutrient[],
): EpisodeFigures {
  const { segments } = file.episode;
  const end = segments.findIndex(({ id }) => id === segmentId) + 1;
  const episode = { ...file.episode, segments: segments.slice(0, end) };
  return episodeFigures({ ...file, episode }, nutrients);
}

/** The same without nutrients that nobody counts: their numbers are never asked for. */
function countedOf(figures: EpisodeFigures, counted: ReadonlySet<Nutrient>): EpisodeFigures {
  const { region, dayIsWhole, dishes, nutrients } = figures;
  return {
    ...{ region, dayIsWhole, dishes },
    nutrients: nutrients.filter((nutrient) => counted.has(nutrient)),
    get day() {
      return figures.day;
    },
  };
}

/** The numbers of what is counted, each printed once. */
function onceEach(
  numbers: PublishedNumbers,
  counted: ReadonlySet<Nutrient>,
): JudgeContext['numbers'] {
  const kept = new Map<string, PublishedNumber>();
  return (nutrient, scope) => {
    if (!counted.has(nutrient)) return null;
    const key = `${nutrient} ${scopeText(scope)}`;
    const known = kept.get(key);
    if (known) return known;
    const number = numbers(nutrient, scope);
    kept.set(key, number);
    return number;
  };
}

function keptBy<T>(work: (key: string) => T): (key: string) => T {
  const kept = new Map<string, T>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = work(key);
    kept.set(key, made);
    return made;
  };
}
