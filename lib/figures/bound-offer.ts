import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount, type EatenAmount } from '#lib/episode/eaten-amount';
import type { BoundedGap, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { MissingPart } from '#lib/figures/figure';
import { foodParts, type Region } from '#lib/figures/line-parts';
import { figureOf } from '#lib/figures/parts';
import { publishedStep, type PublishedNumbers } from '#lib/figures/published-numbers';
import { recipeParts } from '#lib/figures/recipe-parts';
import type { Food } from '#lib/foods/food';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { plausibleMaximum } from '#lib/foods/plausible-maximum';
import { boundsOf } from '#lib/units/bounds';
import { printGrams, settled } from '#lib/units/print';

/** A value that an ingredient's food does not state, and what it could be counted as instead of missing. */
export interface BoundOffer {
  readonly lineId: string;
  /** The ingredient as written. */
  readonly text: string;
  /** What its source does not state. */
  readonly nutrient: Nutrient;
  /** The figures of the dish that lack it: fibre also makes carbohydrate incomplete where it is converted. */
  readonly lackedBy: readonly Nutrient[];
  /** The most that 100 g of the food can plausibly hold, in hundredths of the nutrient's unit, and why no more. */
  readonly maxPer100: number;
  readonly why: string;
  /** Milligrams eaten of it at the most. */
  readonly massMg: number;
  /** The most that the ingredient can then add, in the nutrient's unit. */
  readonly top: number;
  /** Small enough to be offered beside the figures; others are counted so in the ingredient's own form. */
  readonly negligible: boolean;
}

/** A bounded value is offered up to this part of what is known of the dish. */
const NEGLIGIBLE_SHARE = 0.005;

/**
 * What a dish's ingredients lack and could be counted as a range for, in the order of the ingredients: from 0 to the
 * most that so much of each can hold. Negligible where that is at most half a printed unit or 0.5 % of the known
 * sum. None where grams or the food are missing: nothing bounds those.
 * @example boundOffers(file, figures, segmentId)[0]
 *   // { text: 'smoked paprika', nutrient: 'fibre', maxPer100: 54, massMg: 2_000, top: 1.08, negligible: false, … }
 */
export function boundOffers(
  file: EpisodeFile,
  figures: EpisodeFigures,
  segmentId: string,
): readonly BoundOffer[] {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  if (!dish) return [];
  const context = amountContext(file);
  const { region, energyStep } = file.episode;
  const known = knownSums(dish, context, region);
  return dish.recipe.lines.flatMap((line) => {
    const eaten = eatenAmount(line, dish.recipe.weighings, context);
    const massMg = eatenMost(eaten);
    const foods = foodsOf(line, context);
    if (!eaten.known || massMg === null || foods.length === 0) return [];
    return [...lackedValues(line, foods, eaten, figures.nutrients, region)].flatMap(
      ([nutrient, lackedBy]): BoundOffer[] => {
        const most = highest(foods, nutrient);
        if (!most) return [];
        const max = settled(Math.ceil(settled(most.max * 100)) / 100);
        const top = settled((massMg * max) / 100_000);
        const half = publishedStep(nutrient, energyStep) / 2;
        return [
          {
            lineId: line.id,
            text: line.text,
            nutrient,
            lackedBy,
            maxPer100: max,
            why: most.why,
            massMg,
            top,
            negligible: top <= half || top <= NEGLIGIBLE_SHARE * known(nutrient),
          },
        ];
      },
    );
  });
}

/** A value that is counted as a range, as its ingredient and the breakdown name it. */
export interface BoundedValue extends BoundedGap {
  readonly lineId: string;
  readonly text: string;
  /** The most that the ingredient adds, in the nutrient's unit; null while its grams are not known. */
  readonly top: number | null;
  /** True where its food states the value by now: then that is counted, and the range is not. */
  readonly idle: boolean;
}

/** The values of a dish that the person has bounded, ingredient by ingredient. */
export function boundedValues(file: EpisodeFile, dish: Dish): readonly BoundedValue[] {
  const context = amountContext(file);
  const { region } = file.episode;
  return dish.recipe.lines.flatMap((line) => {
    if (line.bounded.length === 0) return [];
    const eaten = eatenAmount(line, dish.recipe.weighings, context);
    const massMg = eatenMost(eaten);
    const foods = foodsOf(line, context);
    return line.bounded.map(({ nutrient, maxPer100 }): BoundedValue => {
      const lacked =
        eaten.known &&
        lackedValues({ ...line, bounded: [] }, foods, eaten, [nutrient], region).size > 0;
      return {
        lineId: line.id,
        text: line.text,
        nutrient,
        maxPer100,
        top: massMg === null ? null : settled((massMg * maxPer100) / 100_000),
        idle: eaten.known && !lacked,
      };
    });
  });
}

/** `0 to 1.1 g fibre`; the top is rounded up to two digits, so that it stays the most. */
export function rangeFromZero(nutrient: Nutrient, top: number): string {
  const { unit, label } = NUTRIENTS[nutrient];
  return `0 to ${atMostText(top)} ${unit} ${label}`;
}

/** A number rounded up to two significant digits. `atMostText(1.0799)` → `'1.1'` */
export function atMostText(top: number): string {
  if (top <= 0) return '0';
  const step = 10 ** (Math.floor(Math.log10(top)) - 1);
  const rounded = settled(Math.ceil(settled(top / step)) * step);
  return String(rounded);
}

/**
 * An offer in one sentence: which numbers are incomplete, for want of what, and the most that it can be.
 * @example offerWords(offer, numbers, segmentId)
 *   // 'at least 4 g fibre: no value for smoked paprika, 2 g – it can hold at most 0.9 g, all of its carbohydrate'
 */
export function offerWords(
  { nutrient, lackedBy, text, massMg, top, why }: BoundOffer,
  numbers: PublishedNumbers,
  segmentId: string,
): string {
  const told = lackedBy.map((each) => {
    const { text: number, unit, label } = numbers(each, { kind: 'whole', segmentId });
    if (unit === 'kcal' || unit === 'kJ') return `${number} ${unit}`;
    return `${number} ${unit} ${label}`;
  });
  const grams = `${printGrams(massMg)} g`;
  const amount = text.includes(grams) ? text : `${text}, ${grams}`;
  const { unit, label } = NUTRIENTS[nutrient];
  const value = lackedBy.includes(nutrient) && lackedBy.length === 1 ? '' : `${label} `;
  return `${told.join(', ')}: no ${value}value for ${amount} – it can hold at most ${atMostText(top)} ${unit}, ${why}`;
}

function foodsOf(line: RecipeLine, { foods }: AmountContext): readonly Food[] {
  return [line.foodId, line.orFoodId].flatMap((id) => (id === null ? [] : (foods.get(id) ?? [])));
}

/** Milligrams eaten of an ingredient at the most; null where they are not known. */
function eatenMost(eaten: EatenAmount): number | null {
  if (!eaten.known || !eaten.amount.massMg) return null;
  return Math.max(0, boundsOf(eaten.amount.massMg, eaten.amount.sources).high);
}

/**
 * What the ingredient's food does not state, each with the figures that lack it. Where any of several values would
 * do, the one that is asked for itself; for energy in kJ the one that it would be worked out with.
 */
function lackedValues(
  line: RecipeLine,
  foods: readonly Food[],
  { amount }: Extract<EatenAmount, { known: true }>,
  nutrients: readonly Nutrient[],
  region: Region,
): ReadonlyMap<Nutrient, readonly Nutrient[]> {
  const found = new Map<Nutrient, Nutrient[]>();
  const bounded = new Set(line.bounded.map((each) => each.nutrient));
  for (const nutrient of nutrients) {
    const asked = new Set<Nutrient>();
    const lacks = (known: ReadonlySet<Nutrient>) =>
      foods.some((food) => {
        const parts = foodParts(food, amount, nutrient, region, missing(line), (each) => {
          if (known.has(each)) return NOTHING_STATED;
          asked.add(each);
          return null;
        });
        return parts.above.length + parts.below.length > 0;
      });
    if (!lacks(bounded)) continue;
    const lacked = [...asked];
    const enough = lacked.filter((each) => !lacks(new Set([...bounded, each])));
    const one = preferred(nutrient, enough) ?? preferred(nutrient, lacked);
    if (one) found.set(one, [...(found.get(one) ?? []), nutrient]);
  }
  return found;
}

function preferred(nutrient: Nutrient, among: readonly Nutrient[]): Nutrient | undefined {
  const others = among.filter((each) => each !== nutrient);
  if (nutrient === 'energyKj' && others.length > 0) return others[0];
  return among.includes(nutrient) ? nutrient : others[0];
}

const missing = (line: RecipeLine) => (reason: MissingPart['reason']) => ({
  lineId: line.id,
  text: line.text,
  reason,
});

/** Stands for a value that is counted as a range. */
const NOTHING_STATED = { terms: [], sources: new Map() };

/** The highest of the maxima, where it is one of two foods; null where nothing limits one of them. */
function highest(foods: readonly Food[], nutrient: Nutrient) {
  const maxima = foods.map(({ version }) => plausibleMaximum(version, nutrient));
  return maxima.reduce((most, each) => (most && each ? (each.max > most.max ? each : most) : null));
}

/** What is known of a nutrient in the whole dish, worked out where it is asked for. */
function knownSums(dish: Dish, context: AmountContext, region: Region) {
  return (nutrient: Nutrient): number => {
    const parts = recipeParts(dish.recipe, dish.title, context, nutrient, region);
    return figureOf(nutrient, parts).value;
  };
}
