import 'server-only';
import { createHash } from 'node:crypto';
import type { LeftOut } from '#lib/draft/draft';
import { fromWords } from '#lib/draft/from-words';
import { offerOf, type Offer, type Offered } from '#lib/draft/offer';
import { readRecipeData, type Claimed } from '#lib/draft/recipe-data/read-recipe-data';
import type { EpisodeFile } from '#lib/episode/schema';
import { ok, type Result } from '#lib/result';
import { PART_KINDS } from '../draft/part-kinds';
import type { RecipeOffer, RecipeTick } from './view';

/** Lines left out that are told at once; the rest are counted. */
const TOLD = 200;

/** A recipe's data read against an episode. */
export interface ReadRecipe {
  readonly offer: Offer;
  /** Texts of numbers that it states, each with its key. */
  readonly claims: readonly (Claimed & { readonly key: string })[];
  readonly view: RecipeOffer;
}

/** What pasted data offers to an episode. */
export function readRecipe(file: EpisodeFile, pasted: string): Result<ReadRecipe> {
  const read = readRecipeData(pasted);
  if (!read.ok) return read;
  const { draft } = read.value;
  const offer = offerOf(draft, file.episode);
  const there = new Set((file.edit?.texts ?? []).map(({ text }) => text));
  const claims = read.value.claims
    .map((claim, at) => ({ ...claim, key: `claims${at}` }))
    .filter(({ text }) => !there.has(text));
  const shown = viewOf(offer, claims, draft.left);
  const version = createHash('sha256').update(pasted).update(JSON.stringify(shown));
  return ok({
    offer,
    claims,
    view: { ...shown, version: version.digest('hex').slice(0, 16) },
  });
}

function viewOf(
  { segments }: Offer,
  claims: ReadRecipe['claims'],
  left: readonly LeftOut[],
): Omit<RecipeOffer, 'version'> {
  const dishes = segments.map(({ key, title, from, into, parts }) => ({
    title,
    isNew: into === null,
    ticks: [
      ...(into === null
        ? [{ key, kind: 'Dish', words: 'A new dish', has: null, ...placed(from) }]
        : []),
      ...parts.map(tickOf),
    ],
  }));
  const numbers = claims.map(({ key, text, from }): RecipeTick => {
    return { key, kind: 'Numbers to be judged', words: text, has: null, ...placed(from) };
  });
  return {
    dishes: [
      ...dishes,
      ...(numbers.length === 0
        ? []
        : [{ title: 'Its numbers, as a text of the edit', isNew: true, ticks: numbers }]),
    ],
    left: left.slice(0, TOLD).map(({ from, message }) => ({ ...placed(from), message })),
    more: left.slice(TOLD).length,
  };
}

function tickOf(part: Offered): RecipeTick {
  const { key, kind, words, from } = part;
  return {
    key,
    kind: PART_KINDS[kind],
    words,
    has: part.kind === 'line' ? part.has : null,
    ...placed(from),
  };
}

const placed = (from: LeftOut['from']) => ({ from: fromWords(from), said: from.words });
