import type { Food, FoodMeasure } from '#lib/foods/food';
import { FAT_LEVELS } from '#lib/foods/match-words';
import { saidShares } from '#lib/foods/said-shares';
import { words } from '#lib/foods/search-text';
import type { LineUnit } from '#lib/episode/recipe-schema';
import { measureUnit } from '#lib/episode/line-amount';
import type { ReadIngredient } from '#lib/episode/read-ingredient-types';
import { fold } from '#lib/units/plain-words';
import { isVolumeUnit, toMillilitres } from '#lib/units/units';
import Fraction from 'fraction.js';

/** Words of a note that may choose between foods of one name. */
const CHOOSING =
  /^(?:dried|frozen|tinned|canned|fresh|smoked|skinless|boneless|unsalted|salted|toasted|unsweetened|sweetened|low-fat|non-?fat|fat-free|full-fat|reduced-fat|half-fat|lean|skimmed|semi-skimmed|part-skim|skin-on|boiled|roasted|grilled|fried|baked|steamed|poached|hard-boiled)$/;
const SKIN_ON = /\b(?:skin on|with skin)\b/i;
/** Said behind a comma of which food it is, where nothing else stands in its run: 'rice, brown', 'tofu, extra firm'. */
const KIND_RUN =
  /^(?:(?:extra[- ])?(?:red|green|yellow|orange|white|black|brown|dark|light|firm|soft|silken|greek|sweet|sour|ground)[ ,/]?)+$/i;
/** What it lies in, behind a comma or "packed": 'tuna, packed in oil'. */
const LIES_IN = /^(?:(?:canned|tinned|packed) )?(in (?:water|(?:olive |sunflower )?oil))\b/i;
/** Foods of two meanings, of which a spoon, a pinch or no amount at all means the other. */
const BY_AMOUNT: ReadonlyMap<string, string> = new Map([['pepper', 'black pepper']]);
const SPRINKLED: ReadonlySet<string> = new Set(['pinch', 'dash', 'grind', 'twist', 'crack']);

/**
 * The words to look a food up by: those that name it, its state where one is said, and words of the note that
 * choose between foods of one name. How it is cut chooses a measure and stays out: no food's name has it.
 * What comes out of a tin is canned. How much fat or cocoa is in it chooses as well.
 * `matchQuery` of '2 eggs, hard-boiled' → 'eggs hard-boiled'; of '1 lb ground beef (80/20)' → 'ground beef 80/20'.
 */
export function matchQuery(
  part: Pick<ReadIngredient, 'food' | 'state' | 'note' | 'measure' | 'unit'>,
): string {
  const tinned = part.unit === 'pack' && /^(?:tin|can)$/.test(part.measure ?? '');
  const single = part.note.split(/[\s,]+/).filter((word) => CHOOSING.test(word.toLowerCase()));
  const said = [...new Set([...single, ...fatSaid(part.note)])];
  const runs = part.note.split(/\s*,\s*/);
  const kinds = runs.filter((run) => KIND_RUN.test(run));
  const besides = [
    ...said,
    ...runs.flatMap((run) => LIES_IN.exec(run)?.[1] ?? []),
    ...(SKIN_ON.test(part.note) ? ['skin-on'] : []),
    ...saidShares(part.note).written,
  ];
  const food = [...kinds, foodByAmount(part)].join(' ');
  if (tinned && !/\b(?:tinned|canned)\b/i.test(food)) {
    return [food, ...besides, 'canned', ...(part.state === 'drained' ? ['drained'] : [])]
      .join(' ')
      .trim();
  }
  const how = said.length > 0 || part.state === null || part.state === 'asIs' ? [] : [part.state];
  return [food, ...besides, ...how].join(' ').trim();
}

/** How much of its fat is left, as a note says it in words of its own: 'part skim', 'low fat'. */
function fatSaid(note: string): readonly string[] {
  const [found] = FAT_LEVELS.flatMap(([, level]) => level.exec(fold(note))?.[0] ?? []);
  return found === undefined || /^(?:whole|light|lite|lighter)$/.test(found) ? [] : [found];
}

/** 'pepper' of 'salt and pepper' or of 'a pinch of pepper' is black pepper; of '1 pepper' and '100 g pepper' it is not. */
function foodByAmount({ food, unit, measure }: Pick<ReadIngredient, 'food' | 'unit' | 'measure'>) {
  const sprinkled = unit === null || unit === 'tsp' || SPRINKLED.has(measure ?? '');
  return (sprinkled ? BY_AMOUNT.get(food.toLowerCase()) : undefined) ?? food;
}

/** Two measures of a food that differ by more are not the same thing. */
const SAME_WITHIN = 0.1;
const SIZE_WORDS = new Set(['small', 'medium', 'large', 'jumbo', 'extra']);
/** Names of measures for one whole thing of its kind. */
const WHOLE_WORDS = new Set(['fruit', 'whole', 'each', 'item', 'unit', 'vegetable']);
/** Other words for the same measure. */
const SAME_WORDS: ReadonlyMap<string, string> = new Map([
  ['grated', 'shredded'],
  ['big', 'large'],
  ['rasher', 'slice'],
  ['cubed', 'diced'],
  ['stick', 'stalk'],
]);

/**
 * Which of a food's measures a counted, spoon or cup amount means, chosen by the words: the counting or size
 * word, how it is cut, the food's own name. Null where none fits, or where two are left that differ by more
 * than 10 %: another would be a guess.
 *
 * @example '1 1/2 cups shredded cheddar' → the measure 'cup, shredded' of cheddar
 */
export function pickMeasure(
  food: Food,
  part: Pick<ReadIngredient, 'unit' | 'measure' | 'note' | 'food'>,
): FoodMeasure | null {
  if (part.unit === null) return null;
  if (isVolumeUnit(part.unit)) return pickVolume(food, part.unit, part);
  if (part.unit !== 'piece') return null;
  const pieces = food.measures.filter((measure) => !isMassOrVolume(measure));
  return choose(counted(pieces, part, food), part, (measure) => gramsOfOne(measure));
}

type Words = Pick<ReadIngredient, 'measure' | 'note' | 'food'>;

function pickVolume(food: Food, unit: LineUnit, part: Words): FoodMeasure | null {
  const volumes = food.measures.filter((measure) => measureUnit(measure) !== null);
  const same = volumes.filter((measure) => measureUnit(measure) === unit);
  const perMillilitre = (measure: FoodMeasure) => {
    const own = measureUnit(measure);
    return own === null ? 0 : gramsOfOne(measure) / toMillilitres(new Fraction(1), own);
  };
  return choose(same.length > 0 ? same : volumes, part, perMillilitre);
}

/** The measures that count what the words count. */
function counted(pieces: readonly FoodMeasure[], part: Words, food: Food): readonly FoodMeasure[] {
  const { measure } = part;
  if (measure !== null) {
    const wanted = stems(measure);
    return pieces.filter((piece) => holdsAll(headStems(piece), wanted));
  }
  const own = new Set([...stems(food.name.split(',')[0] ?? ''), ...stems(part.food)]);
  const named = pieces.filter(({ name }) => {
    const first = stems(name)[0] ?? '';
    return own.has(first) || WHOLE_WORDS.has(first);
  });
  if (named.length > 0) return named;
  const sizes = pieces.filter(({ name }) => SIZE_WORDS.has(stems(name)[0] ?? ''));
  return sizes.length === 1 ? sizes : [];
}

/** Behind a measure's name as it was said, where a food has several that it may be. */
export const WHICH_ONE = ' (which one?)';

/**
 * Whether a measure is of the kind that an amount was counted in: a bunch is counted by no spear, a large one by no
 * small one. Where nothing but pieces was said, each may be meant.
 * @param said the line's name of its measure, as it was said
 */
export function countsSaid(said: string | null, measure: FoodMeasure): boolean {
  const wanted = stems((said ?? '').split('(')[0] ?? '');
  if (wanted.length === 0 || wanted.join(' ') === 'piece') return true;
  const held = headStems(measure);
  if (!wanted.every((word) => SIZE_WORDS.has(word))) return holdsAll(held, wanted);
  return holdsAll(held, wanted) || ![...held].some((word) => SIZE_WORDS.has(word));
}

/** The one that the words choose; null where what is left differs by more than 10 %. */
function choose(
  fitting: readonly FoodMeasure[],
  part: Words,
  grams: (measure: FoodMeasure) => number,
): FoodMeasure | null {
  const said = new Set([...stems(part.note), ...stems(part.food)]);
  const fits = fitting.map((measure) => ({ measure, shared: shared(measure, said) }));
  const most = Math.max(0, ...fits.map((fit) => fit.shared));
  const best = fits.filter((fit) => fit.shared === most).map((fit) => fit.measure);
  const plain = best.filter((measure) => restStems(measure).length === 0);
  const left = most === 0 && plain.length > 0 ? plain : best;
  const weights = left.map(grams);
  const alike = Math.max(...weights) <= Math.min(...weights) * (1 + SAME_WITHIN);
  return left.length > 0 && alike ? (left[0] ?? null) : null;
}

/** How many words of a measure beyond its unit are said of the ingredient. */
function shared(measure: FoodMeasure, said: ReadonlySet<string>): number {
  return restStems(measure).filter((word) => said.has(word)).length;
}

function restStems(measure: FoodMeasure): readonly string[] {
  return stems(measure.name).slice(1);
}

/** The words of a measure before a bracket or "yield": what it counts, not what explains it. */
function headStems(measure: FoodMeasure): ReadonlySet<string> {
  return new Set(stems(measure.name.split('(')[0] ?? ''));
}

function holdsAll(held: ReadonlySet<string>, wanted: readonly string[]): boolean {
  // 'large' is not 'extra large'.
  if (held.has('extra') !== wanted.includes('extra')) return false;
  return wanted.every((word) => held.has(word));
}

function stems(text: string): readonly string[] {
  return words(text)
    .map(({ stem }) => SAME_WORDS.get(stem) ?? stem)
    .filter((word) => !/^\d+$/.test(word));
}

function isMassOrVolume(measure: FoodMeasure): boolean {
  return (
    measureUnit(measure) !== null || /^(?:oz|lb|g|gram|cubic|quart|pint|fl)\b/i.test(measure.name)
  );
}

function gramsOfOne({ massMg, qtyNum, qtyDen }: FoodMeasure): number {
  return (massMg * qtyDen) / qtyNum / 1000;
}
