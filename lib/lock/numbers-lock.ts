import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import Fraction from 'fraction.js';
import { filmedAlone } from '#lib/episode/also-filmed';
import { recipesOf, usedFoodIds } from '#lib/episode/context';
import type { Ratio } from '#lib/episode/fields';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { spokenNumbers } from '#lib/figures/spoken-numbers';
import type { Food } from '#lib/foods/food';

/** Version of the snapshot's shape, and of the code that computes figures: code also changes numbers. */
export const LOCK_SCHEMA_VERSION = 1;
export const ENGINE_VERSION = 'figures-1';

/** Figures frozen with every input they rest on. */
export interface NumbersLock {
  /**
   * The episode file without other episodes of its day and texts of its edit, figures and working as canonical JSON
   * (RFC 8785).
   */
  readonly snapshot: string;
  /** SHA-256 of the snapshot, in hex. */
  readonly sha256: string;
  /** SHA-256 of the inputs that numbers rest on: equal hashes, equal numbers. */
  readonly inputsSha256: string;
  readonly schemaVersion: number;
  readonly engineVersion: string;
}

/**
 * Takes a lock on an episode's numbers. Equal input gives an equal lock.
 * @param figures the figures that are shown and copied; computed here if left out
 */
export function takeLock(
  file: EpisodeFile,
  figures: EpisodeFigures = episodeFigures(file),
): NumbersLock {
  const inputsSha256 = hashInputs(file);
  const snapshot = canonical({
    engineVersion: ENGINE_VERSION,
    figures,
    file: lockedFile(file),
    inputsSha256,
  });
  return {
    snapshot,
    sha256: sha256(snapshot),
    inputsSha256,
    schemaVersion: LOCK_SCHEMA_VERSION,
    engineVersion: ENGINE_VERSION,
  };
}

/** The hash of the inputs as they are now: the same as a lock's while nothing under it has changed. */
export function inputsHash(file: EpisodeFile): string {
  return hashInputs(file);
}

/**
 * What of a file a lock keeps. What is said of the numbers, in captions or a title, is no input of theirs and may be
 * megabytes: another version of the captions leaves the lock's hash as it was. So do saved swaps, replies, pieces and
 * the layout of descriptions, which only read numbers.
 */
function lockedFile(file: EpisodeFile): EpisodeFile {
  const { edit: _, publish: __, ...rest } = filmedAlone(file);
  const { layout: ___, ...creator } = rest.creator;
  return { ...rest, creator };
}

/** Whether nothing under a lock has changed: neither an input nor the code that computes. */
export function lockHolds(
  lock: Pick<NumbersLock, 'inputsSha256' | 'engineVersion'>,
  file: EpisodeFile,
): boolean {
  if (lock.engineVersion !== ENGINE_VERSION) return false;
  return [foodInputs, wholeFood].some((of) => lock.inputsSha256 === hashInputs(file, of));
}

/**
 * What numbers rest on: foods used, amounts, readings, portions, eaten shares, region, scales and spreads, and what was
 * said in front of the camera.
 * Titles, steps, dates and stock are not: changing them breaks no lock.
 */
function hashInputs(file: EpisodeFile, foodPart: typeof wholeFood = foodInputs): string {
  const dishes = file.episode.segments.filter((segment) => segment.recipe !== null);
  const used = usedFoodIds(recipesOf(file));
  const drainedFoods = new Set(
    file.foods.flatMap(({ id, version }) => (version.state === 'drained' ? id : [])),
  );
  return sha256(
    canonical({
      anythingElse: file.episode.anythingElse,
      dishes: dishes.map((dish) => ({
        ...(dish.ate.kind === 'share' ? {} : { ate: dish.ate }),
        eaten: reduced(dish.eaten),
        id: dish.id,
        ...(dish.recipe && recipeInputs(dish.recipe)),
      })),
      ...(file.recipes.length === 0
        ? {}
        : {
            recipes: file.recipes.map((recipe) => ({ id: recipe.id, ...recipeInputs(recipe) })),
          }),
      foods: file.foods
        .filter((food) => used.has(food.id))
        .map(foodPart)
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
      packs: file.packs
        .filter((pack) => used.has(pack.foodId))
        .map(({ id, foodId, netMg, netMl, drainedMg }) => ({
          ...{ id, foodId, netMg, netMl },
          ...(drainedFoods.has(foodId) ? { drainedMg } : {}),
        }))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
      region: file.episode.region,
      ...(file.episode.energyStep === 1 ? {} : { energyStep: file.episode.energyStep }),
      ...saidInputs(file),
      scales: file.kitchen.scales,
      spreads: file.kitchen.spreads,
    }),
  );
}

/** What was said in front of the camera fixes numbers; absent where nothing was, as in locks taken before. */
function saidInputs({ said }: EpisodeFile) {
  const fixed = spokenNumbers(said).filter(({ hedge }) => hedge === 'exact');
  return fixed.length === 0 ? {} : { said: fixed.map(({ at: _, hedge: __, ...number }) => number) };
}

/** What a food's numbers rest on: a label read again that says the same is no change under a lock. */
function foodInputs({ id, version, measures, yields }: Food): { readonly id: string } {
  const says: Partial<Food['version']> = { ...versionInputs(version) };
  delete says.id;
  delete says.seq;
  delete says.dateRead;
  delete says.kept;
  const weighs = measures.map(({ id: _, source: __, ...measure }) => measure);
  return Object.assign({ id }, { version: says, measures: weighs, yields: yieldInputs(yields) });
}

/** Absent where it says nothing, as in locks taken before a refuse could be in the values. */
function versionInputs(version: Food['version']): Food['version'] {
  const { refuse } = version;
  if (!refuse || refuse.inValues) return version;
  const { percent, text } = refuse;
  return { ...version, refuse: { percent, text } as typeof refuse };
}

function yieldInputs(yields: Food['yields']) {
  return yields.map(({ own, ...observed }) => (own ? { ...observed, own } : observed));
}

/** A food in locks that were taken when a reading's own id and date still counted. */
function wholeFood({ id, version, measures, yields }: Food): { readonly id: string } {
  const parts = { version: versionInputs(version), measures, yields: yieldInputs(yields) };
  return Object.assign({ id }, parts);
}

/** What is absent here where it says nothing was not known to the first locks, and must not break them. */
function recipeInputs({ cooking, lines, portions, weighings }: Recipe) {
  return {
    ...(cooking ? { cooking } : {}),
    lines: lines.map(lineInputs),
    portions: portions.map((portion) => {
      if (portion.kind === 'count') return { id: portion.id, of: portion.of };
      if (portion.kind === 'mass') return { id: portion.id, massMg: portion.massMg };
      return { id: portion.id, permille: portion.permille, share: reduced(portion.share) };
    }),
    weighings: weighings.map(({ afterId, ...weighing }) => ({
      ...weighing,
      ...(afterId === null ? {} : { afterId }),
      shares: weighing.shares.map(({ lineId, share }) => ({ lineId, share: reduced(share) })),
    })),
  };
}

/** What an ingredient's number rests on; its words, its note and what a take spoils are not. */
function lineInputs(line: RecipeLine) {
  const { asBought, foodId, id, measureName, planned, quantity, state, unit } = line;
  const amount = quantity && { high: reduced(quantity.high), low: reduced(quantity.low) };
  // Absent where there is none, as in locks taken before an ingredient could name a second food.
  const or = line.orFoodId === null ? {} : { orFoodId: line.orFoodId };
  return {
    amount,
    asBought,
    foodId,
    id,
    leftBehind: leftInputs(line.leftBehind),
    measureName,
    ...or,
    ...(line.madeFrom ? { madeFrom: line.madeFrom.recipeId } : {}),
    ...(line.cookMethod === null ? {} : { cookMethod: line.cookMethod }),
    ...(line.retention === null ? {} : { retention: line.retention }),
    ...(line.bounded.length === 0 ? {} : { bounded: line.bounded }),
    planned,
    ...(line.photographed ? { photographed: true } : {}),
    state,
    unit,
  };
}

/** Where it stayed is words; what it was made of is not. */
function leftInputs(left: RecipeLine['leftBehind']) {
  if (left.kind === 'none') return left;
  const { where: _, made, ...rest } = left;
  return made === 'alike' ? rest : { ...rest, made };
}

/** 6/10 and 3/5 are the same amount, and no change under a lock. */
function reduced({ num, den }: Ratio): Ratio {
  const { n, d } = new Fraction(num, den);
  return { num: Number(n), den: Number(d) };
}

function canonical(data: unknown): string {
  // A round trip drops undefined members, which canonical JSON has no form for.
  const text = canonicalize(JSON.parse(JSON.stringify(data)));
  if (text === undefined) throw new Error('nothing to make canonical JSON of');
  return text;
}

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}
