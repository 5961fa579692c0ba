import { LONGEST_LINE, MOST_INGREDIENTS, readIngredient } from '#lib/episode/read-ingredient';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { printCount } from '#lib/units/print';
import { leftOut } from '../described';
import type { Draft, DraftLine, DraftSegment, From, LeftOut, LeftWhy, Said } from '../draft';
import { claimedNumbers } from './claimed-numbers';
import { cleanLine } from './clean-words';
import { findJson, placesOf, type Place } from './find-json';
import { readJson, type JsonNode } from './json-places';
import { ingredientLines, methodLines, yieldOf, type PlacedLine } from './recipe-parts';
import { property, recipesIn, wordsOf, type JsonObject } from './recipe-nodes';

/** Numbers that a recipe states of itself, as a text to be judged. */
export interface Claimed {
  readonly title: string;
  readonly text: string;
  readonly from: From;
}

/** Recipes as data, read: a draft of dishes, and what they state of themselves. */
export interface RecipesRead {
  readonly draft: Draft;
  readonly claims: readonly Claimed[];
}

/** Characters that are read at most: far more than a page with recipes has. */
export const MOST_RECIPE_DATA = 5_000_000;
/** Recipes that are read at most; letters of a title and of a method, as in the file format. */
const MOST_RECIPES = 40;
const LONGEST_TITLE = 160;
const LONGEST_METHOD = 8000;
const MOST_WORDS = 300;

/**
 * Recipes of schema.org in JSON-LD, pasted by themselves or within a page's HTML, as dishes to be offered. What is no
 * words of an ingredient or a step is told by line; numbers that a recipe states are no facts: they become a text in
 * which they are judged. Diets are never taken over.
 * @returns refused where there is no recipe, with line and column where the JSON breaks
 * @example readRecipeData('{"@type":"Recipe","name":"Oats","recipeIngredient":["80 g oats"]}')
 */
export function readRecipeData(pasted: string): Result<RecipesRead> {
  if (pasted.length > MOST_RECIPE_DATA) {
    const message = `Up to ${printCount(MOST_RECIPE_DATA)} characters are read: this has ${printCount(pasted.length)}. Paste the recipe’s script alone.`;
    return failed({ path: 'text', code: 'too-long', message });
  }
  const stretches = findJson(pasted);
  if (stretches.length === 0) return failed(NONE);
  const place = placesOf(pasted);
  const broken: Problem[] = [];
  const left: LeftOut[] = [];
  const found: JsonObject[] = [];
  for (const { text, at } of stretches) {
    const root = readJson(text, at);
    if (root.ok) found.push(...recipesIn(root.value));
    else {
      const problem = told(root.problems[0], place);
      broken.push(problem);
      left.push(leftOut('prose', fromAt(problem.facts?.at, '', place), problem.message));
    }
  }
  const [first, ...more] = broken;
  if (found.length === 0) return first ? failed(first, ...more) : failed(NO_RECIPE);
  const read = eachOnce(found, place, left);
  const claims = read.flatMap(({ claim }) => claim ?? []);
  const segments = read.map(({ segment }) => segment);
  const draft: Draft = { title: null, hook: null, segments, links: [], disclosure: null, left };
  return ok({ draft, claims });
}

const NONE: Problem = {
  path: 'text',
  code: 'none',
  message:
    'There is no recipe data in it: paste JSON that begins with “{” or “[”, or a page’s HTML with a script of type “application/ld+json”.',
};
const NO_RECIPE: Problem = {
  path: 'text',
  code: 'no-recipe',
  message: 'The data says of nothing that it is a Recipe: “@type” names other things only.',
};

type PlaceOf = (at: number) => Place;

function told(problem: Problem | undefined, place: PlaceOf): Problem {
  const at = Number(problem?.facts?.at ?? 0);
  const { line, column } = place(at);
  const message = `The data cannot be read from line ${line}, column ${column} on: ${problem?.message ?? ''}.`;
  return { path: 'text', code: 'no-json', message, facts: { at, line, column } };
}

function fromAt(at: unknown, words: string, place: PlaceOf): From {
  const short = words.length > MOST_WORDS ? `${words.slice(0, MOST_WORDS).trimEnd()}…` : words;
  return { text: 'recipeData', line: place(Number(at ?? 0)).line, startMs: null, words: short };
}

interface ReadDish {
  readonly segment: DraftSegment;
  readonly claim: Claimed | null;
}

/** Every recipe once: a page may say the same one twice. */
function eachOnce(found: readonly JsonObject[], place: PlaceOf, left: LeftOut[]): ReadDish[] {
  const seen = new Set<string>();
  const read: ReadDish[] = [];
  for (const node of found) {
    const own: LeftOut[] = [];
    const dish = dishOf(node, place, own);
    const { title, lines, method } = dish.segment;
    const same = JSON.stringify([
      title,
      lines.map(({ text }) => text),
      method.map(({ text }) => text),
    ]);
    const from = fromAt(node.at, title, place);
    if (seen.has(same)) left.push(leftOut('prose', from, 'The same recipe again.'));
    else if (read.length >= MOST_RECIPES)
      left.push(leftOut('full', from, `Up to ${MOST_RECIPES} recipes are read at once.`));
    else {
      seen.add(same);
      read.push(dish);
      left.push(...own);
    }
  }
  return read;
}

function dishOf(node: JsonObject, place: PlaceOf, left: LeftOut[]): ReadDish {
  const title = titleOf(node);
  const from = (at: number, words: string) => fromAt(at, words, place);
  const leave = (why: LeftWhy, at: number, words: string, message?: string) =>
    left.push(leftOut(why, from(at, words), message));
  const said = ({ at, text }: PlacedLine): Said => ({ text, from: from(at, text) });
  const ingredients = ingredientLines(node);
  const steps = methodLines(node);
  for (const { at, message } of [...ingredients.left, ...steps.left])
    leave('prose', at, '', message);
  const lines = ingredients.lines.flatMap((line, at): DraftLine[] => {
    if (at >= MOST_INGREDIENTS) leave('full', line.at, line.text);
    else if (line.text.length > LONGEST_LINE) leave('tooLong', line.at, line.text);
    else return [{ ...said(line), parts: readIngredient(line.text) }];
    return [];
  });
  let letters = 0;
  const method = steps.lines.flatMap((line) => {
    letters += line.text.length + 1;
    if (letters <= LONGEST_METHOD) return [said(line)];
    leave('tooLong', line.at, line.text);
    return [];
  });
  const gives = yieldOf(node);
  if (gives?.kind === 'unclear') leave('portions', gives.at, gives.words);
  const claimed = claimedNumbers(node);
  for (const { at, words, message } of claimed.left) leave('numbers', at, words, message);
  const text = [title, ...claimed.lines].join('\n');
  return {
    segment: {
      kind: 'recipe',
      title,
      from: from(node.at, title),
      inMs: null,
      outMs: null,
      lines,
      portions:
        gives?.kind === 'count' ? { count: gives.count, from: from(gives.at, gives.words) } : null,
      method,
    },
    claim:
      claimed.lines.length === 0
        ? null
        : { title, text, from: from(nutritionAt(node), claimed.lines.join(' ')) },
  };
}

function nutritionAt(node: JsonObject): number {
  return (property(node, 'nutrition') ?? property(node, 'totalTime') ?? node).at;
}

function titleOf(node: JsonObject): string {
  const name: JsonNode | null = property(node, 'name') ?? property(node, 'headline');
  const words = name ? cleanLine(wordsOf(name) ?? '') : '';
  return words === '' ? 'Recipe without a name' : [...words].slice(0, LONGEST_TITLE).join('');
}
