import { chapterLines, chapterList, type ChapterFault } from '#lib/cut/chapters';
import { amountContext, dishesOf, recipesOf, usedFoodIds, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import {
  confirmedOnly,
  publishedNumbers,
  type NumberScope,
  type PublishedNumber,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { ALLERGEN_CAUTION, cautions } from '#lib/publish/cautions';
import { allergenList, type AllergenEntry } from '#lib/publish/allergen-list';
import { ingredientText } from '#lib/publish/ingredient-text';

/** A dish or day whose numbers cannot all be given, with the reason; the rest stays copyable. */
export interface OpenNumber {
  readonly segmentId: string | null;
  readonly title: string;
  readonly reason: string;
}

/** What the person should know before pasting. */
export interface Description {
  /** Exactly what is pasted. Line feeds only, no line feed at the end. */
  readonly text: string;
  readonly length: { readonly codePoints: number; readonly utf16Units: number };
  readonly limit: number;
  readonly fits: boolean;
  readonly chapterFaults: readonly ChapterFault[];
  readonly open: readonly OpenNumber[];
  /** Allergens proposed by rule that wait for the person's word and are left out. */
  readonly unconfirmedAllergens: readonly AllergenEntry[];
}

/** What energy is called: calories in the US, energy in the EU. */
const ENERGY_WORD = { US: 'calories', EU: 'energy' } as const;

/** Length that description fields commonly allow (common practice, no source). */
export const DESCRIPTION_LIMIT = 5000;

/**
 * The description block of an episode: title, hook, chapters, each dish whole and per portion with its
 * ingredients, the day, allergens, cautions, the creator's links and the sources of the figures.
 * A dish that is open says so and does not block the rest. Pure: the same file gives the same text.
 */
export function description(
  file: EpisodeFile,
  figures: EpisodeFigures = episodeFigures(file),
  limit: number = DESCRIPTION_LIMIT,
): Description {
  const numbers = confirmedOnly(publishedNumbers(file, figures));
  const { episode } = file;
  const chapters = chapterList(episode);
  const allergens = allergenList(file);
  const dishes = dishesOf(episode.segments);
  const blocks = [
    [episode.title],
    episode.hook === '' ? [] : [episode.hook],
    chapters.faults.length === 0 ? chapterLines(chapters.chapters) : [],
    ...dishes.map((dish) => dishBlock(dish, file, numbers)),
    dishes.length > 1 || (dishes.length === 1 && figures.dayIsWhole)
      ? dayBlock(file, figures, numbers)
      : [],
    roundingNote(figures, dishes, numbers),
    saidNote(dishes, figures, numbers),
    allergenBlock(allergens.contains, allergens.mayContain),
    cautions(file),
    episode.disclosure === '' ? [] : [episode.disclosure],
    episode.webLinks.map((link) => `${link.label}: ${link.url}`),
    sourcesBlock(file),
  ];
  const text = blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
  const codePoints = [...text].length;
  return {
    text,
    length: { codePoints, utf16Units: text.length },
    limit,
    fits: text.length <= limit,
    chapterFaults: chapters.faults,
    open: openNumbers(file, figures, dishes, numbers),
    unconfirmedAllergens: allergens.proposed,
  };
}

/**
 * `846 kcal · 112 g protein · 41 g fat · 12 g carbohydrate`, with kJ first in the EU (Regulation (EU)
 * 1169/2011, Annex XV); a starred number adds up only by rounding.
 */
export function numbersLine(
  numbers: PublishedNumbers,
  scope: NumberScope,
  region: 'US' | 'EU',
): string {
  const shown = HEADLINE_NUTRIENTS.map((nutrient) => numberText(numbers(nutrient, scope), region));
  const kilojoules = region === 'EU' ? numbers('energyKj', scope) : null;
  if (kilojoules?.number != null) shown.unshift(numberText(kilojoules, region));
  return shown.join(' · ');
}

function numberText(number: PublishedNumber, region: 'US' | 'EU'): string {
  const isEnergy = number.unit === 'kcal' || number.unit === 'kJ';
  if (number.number === null) return `${isEnergy ? ENERGY_WORD[region] : number.label} open`;
  const words = isEnergy ? '' : ` ${number.label}`;
  return `${number.text}${markOf(number)} ${number.unit}${words}`;
}

/** A number that was said and that the ingredients do not support, or that cannot add up, is marked apart. */
function markOf(number: PublishedNumber): string {
  if (isSaidAgainst(number)) return '†';
  return number.onlyByRounding ? '*' : '';
}

function isSaidAgainst({ said, clashes, status }: PublishedNumber): boolean {
  return status === 'known' && said !== null && said.fixed && (said.outside || clashes);
}

function dishBlock(dish: Dish, file: EpisodeFile, numbers: PublishedNumbers): string[] {
  const { recipe } = dish;
  const context = amountContext(file);
  const whole = { kind: 'whole', segmentId: dish.id } as const;
  const { region } = file.episode;
  const reason = openReason(numbers, whole);
  const titles = new Map(
    dishesOf(file.episode.segments).map((each) => [each.recipe.id, each.title]),
  );
  const portions = recipe.portions.map((portion) => {
    const scope = { kind: 'portion', portionId: portion.id } as const;
    const why = reason === null ? openReason(numbers, scope) : null;
    const how = portion.kind === 'byEye' ? ' (by eye)' : '';
    const line = `${capitalised(portion.name)}${how}: ${numbersLine(numbers, scope, region)}`;
    return why === null ? line : `${line} (${why})`;
  });
  return [
    dish.title.toUpperCase(),
    `The whole dish: ${numbersLine(numbers, whole, region)}`,
    ...portions,
    ...(reason === null ? [] : [`Open: ${reason}`]),
    ...recipe.lines.map((line) => `- ${ingredientText(line, recipe.weighings, context, titles)}`),
    ...(recipe.method === '' ? [] : [recipe.method]),
  ];
}

function capitalised(text: string): string {
  const [first = '', ...rest] = text;
  return first.toUpperCase() + rest.join('');
}

/** Why any headline number of a scope is not a plain number, or null if all are. */
function openReason(numbers: PublishedNumbers, scope: NumberScope): string | null {
  const reasons = HEADLINE_NUTRIENTS.map((nutrient) => numbers(nutrient, scope))
    .filter((number) => number.status !== 'known')
    .map((number) => number.range.replace(/^at (least|most): /, ''));
  return reasons.length === 0 ? null : [...new Set(reasons)].join('; ');
}

function dayBlock(file: EpisodeFile, figures: EpisodeFigures, numbers: PublishedNumbers): string[] {
  const other = file.episode.anythingElse;
  const title = figures.dayIsWhole ? 'THE WHOLE DAY' : 'THE DISHES SHOWN';
  const notCounted = other?.kind === 'notCounted' ? [`Not counted: ${other.what}`] : [];
  const parts = figures.dishes.map((dish) => {
    const energy = numbers('energyKcal', { kind: 'eaten', segmentId: dish.segmentId });
    const mark = isSaidAgainst(energy) ? '†' : '';
    return `${dish.title} ${energy.number === null ? 'open' : energy.text + mark}`;
  });
  return [
    `${title}: ${numbersLine(numbers, { kind: 'day' }, file.episode.region)}`,
    `${capitalised(ENERGY_WORD[file.episode.region])} eaten, kcal: ${parts.join(' + ')}`,
    ...notCounted,
  ];
}

function roundingNote(
  figures: EpisodeFigures,
  dishes: readonly Dish[],
  numbers: PublishedNumbers,
): string[] {
  const scopes: NumberScope[] = [
    { kind: 'day' },
    ...dishes.map((dish) => ({ kind: 'whole', segmentId: dish.id }) as const),
  ];
  const starred = scopes.some((scope) =>
    figures.nutrients.some((nutrient) => markOf(numbers(nutrient, scope)) === '*'),
  );
  return starred ? ['* adds up only because of rounding'] : [];
}

/** What is meant by a number that was said and that the rest does not support: nothing of it is hidden. */
function saidNote(
  dishes: readonly Dish[],
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
): string[] {
  const scopes: (readonly [string, NumberScope])[] = [
    ...dishes.flatMap((dish): (readonly [string, NumberScope])[] => [
      [dish.title, { kind: 'whole', segmentId: dish.id }],
      ...dish.recipe.portions.map(({ id, name }) => {
        return [`${dish.title}, ${name}`, { kind: 'portion', portionId: id }] as const;
      }),
    ]),
    [figures.dayIsWhole ? 'The whole day' : 'The dishes shown', { kind: 'day' }],
  ];
  return scopes.flatMap(([title, scope]) =>
    HEADLINE_NUTRIENTS.flatMap((nutrient) => {
      const number = numbers(nutrient, scope);
      if (!isSaidAgainst(number)) return [];
      const what = number.unit === 'kcal' ? '' : ` ${number.label}`;
      const why = number.said?.outside
        ? `by the ingredients it is ${number.range} ${number.unit}`
        : 'it does not add up with the other numbers that were said';
      return [
        `† ${title}: ${number.text} ${number.unit}${what} is what was said in the video; ${why}.`,
      ];
    }),
  );
}

function allergenBlock(
  contains: readonly AllergenEntry[],
  mayContain: readonly AllergenEntry[],
): string[] {
  const words = (entries: readonly AllergenEntry[]) =>
    entries.map((entry) => entry.words).join(', ');
  const lines = [
    ...(contains.length > 0 ? [`Allergens: contains ${words(contains)}.`] : []),
    ...(mayContain.length > 0 ? [`May contain ${words(mayContain)}.`] : []),
  ];
  return lines.length === 0 ? [] : [...lines, ALLERGEN_CAUTION];
}

function sourcesBlock(file: EpisodeFile): string[] {
  const used = usedFoodIds(recipesOf(file));
  const foods = file.foods.filter((food) => used.has(food.id));
  const tables = new Set(
    foods
      .filter((food) => food.kind === 'reference')
      .map(({ version }) => `${version.source} ${version.release}`.trim()),
  );
  const labels = foods.filter((food) => food.kind === 'label').map((food) => food.name);
  const sources = [
    ...tables,
    ...(labels.length > 0 ? [`package labels (${labels.join(', ')})`] : []),
  ];
  return sources.length === 0 ? [] : [`Sources of the figures: ${sources.join('; ')}.`];
}

function openNumbers(
  file: EpisodeFile,
  figures: EpisodeFigures,
  dishes: readonly Dish[],
  numbers: PublishedNumbers,
): OpenNumber[] {
  const open = dishes.flatMap((dish) => {
    const whole = openReason(numbers, { kind: 'whole', segmentId: dish.id });
    if (whole !== null) return [{ segmentId: dish.id, title: dish.title, reason: whole }];
    return dish.recipe.portions.flatMap((portion) => {
      const reason = openReason(numbers, { kind: 'portion', portionId: portion.id });
      const title = `${dish.title}, ${portion.name}`;
      return reason === null ? [] : [{ segmentId: dish.id, title, reason }];
    });
  });
  if (figures.dayIsWhole || file.episode.anythingElse !== null) return open;
  return [
    ...open,
    {
      segmentId: null,
      title: 'The day',
      reason: 'it reads "the dishes shown" until you have said what else was eaten that day',
    },
  ];
}
