import { cleanLine, cleanLines } from './clean-words';
import type { JsonNode } from './json-places';
import { isOfType, property, valuesOf, wordsOf, type JsonObject } from './recipe-nodes';
import { readPortions } from '../portions-said';

/** A line of a recipe, and the place of the value that it was read from. */
export interface PlacedLine {
  readonly at: number;
  readonly text: string;
}

/** A value that is no line, and why. */
export interface NoLine {
  readonly at: number;
  readonly message: string;
}

/** Lines, with what was none. */
export interface PlacedLines {
  readonly lines: readonly PlacedLine[];
  readonly left: readonly NoLine[];
}

/** Ingredients: texts, lists of them, or things with a name and an amount. `ingredients` is the name of old. */
export function ingredientLines(recipe: JsonObject): PlacedLines {
  return linesIn(valuesOf(recipe, 'recipeIngredient', 'ingredients'), thingWords, 'ingredient');
}

/** The method: a text, texts, steps, or sections with steps, each section with its name before them. */
export function methodLines(recipe: JsonObject): PlacedLines {
  return linesIn(valuesOf(recipe, 'recipeInstructions'), stepWords, 'step');
}

type WordsOf = (node: JsonObject) => readonly PlacedLine[] | null;

/** How deep steps may stand within sections. */
const DEEPEST = 8;

function linesIn(
  nodes: readonly JsonNode[],
  own: WordsOf,
  what: string,
  depth = 0,
): { readonly lines: PlacedLine[]; readonly left: NoLine[] } {
  const lines: PlacedLine[] = [];
  const left: NoLine[] = [];
  for (const node of nodes) {
    const words = node.kind === 'list' ? null : wordsOf(node);
    if (words !== null) {
      lines.push(...cleanLines(words).map((text) => ({ at: node.at, text })));
      continue;
    }
    const within =
      node.kind === 'list'
        ? node.items
        : node.kind === 'object'
          ? valuesOf(node, 'itemListElement', 'step', 'steps', 'item')
          : [];
    const said = node.kind === 'object' ? own(node) : [];
    if (within.length > 0 && depth < DEEPEST) {
      const head = node.kind === 'object' ? headOf(node) : null;
      if (head !== null) lines.push({ at: node.at, text: head });
      const inner = linesIn(within, own, what, depth + 1);
      lines.push(...inner.lines);
      left.push(...inner.left);
    } else if (said && said.length > 0) lines.push(...said);
    else
      left.push({
        at: node.at,
        message: `No words of ${what === 'step' ? 'a step' : 'an ingredient'} were found in it.`,
      });
  }
  return { lines, left };
}

/** A section's name, as a line before its steps. */
function headOf(node: JsonObject): string | null {
  const name = property(node, 'name');
  const words = name && isOfType(node, 'HowToSection') ? cleanLine(wordsOf(name) ?? '') : '';
  return words === '' ? null : `${words.replace(/:$/, '')}:`;
}

/** A step's words: its text, else its name. */
function stepWords(node: JsonObject): readonly PlacedLine[] | null {
  for (const name of ['text', 'description', 'name']) {
    const value = property(node, name);
    const words = value && wordsOf(value);
    if (value && words) return cleanLines(words).map((text) => ({ at: value.at, text }));
  }
  return null;
}

/** An ingredient that is a thing: an amount where it has one, a unit, its name. */
function thingWords(node: JsonObject): readonly PlacedLine[] | null {
  const name = property(node, 'name') ?? property(node, 'text');
  const words = name && wordsOf(name);
  if (!name || !words) return null;
  const amount = property(node, 'value') ?? property(node, 'requiredQuantity');
  const of = amount ? amountWords(amount, node) : '';
  return [{ at: name.at, text: cleanLine(`${of} ${words}`) }];
}

function amountWords(amount: JsonNode, thing: JsonObject): string {
  const holder = amount.kind === 'object' ? amount : thing;
  const value = amount.kind === 'object' ? property(amount, 'value') : amount;
  const unit = property(holder, 'unitText');
  return [value, unit].flatMap((each) => (each ? (wordsOf(each) ?? []) : [])).join(' ');
}

/** The equal portions that a recipe gives; `unclear` with the words where they are no one number. */
export type YieldRead =
  | { readonly kind: 'count'; readonly at: number; readonly count: number; readonly words: string }
  | { readonly kind: 'unclear'; readonly at: number; readonly words: string }
  | null;

/** Reads `recipeYield`: `4`, `'4 servings'`, `'Serves 4'`, a QuantitativeValue; of several the first that is a number. */
export function yieldOf(recipe: JsonObject): YieldRead {
  const all = valuesOf(recipe, 'recipeYield', 'yield').map((node) => {
    const words =
      node.kind === 'object'
        ? amountWords(node, node) || (wordsOf(node) ?? '')
        : (wordsOf(node) ?? '');
    const line = cleanLine(words);
    return { at: node.at, words: line, count: countIn(line.toLowerCase()) };
  });
  const counted = all.find(({ count }) => count !== null);
  const [first] = all;
  if (counted && counted.count !== null) return { ...counted, kind: 'count', count: counted.count };
  return first ? { kind: 'unclear', at: first.at, words: first.words } : null;
}

function countIn(words: string): number | null {
  const bare = /^\d{1,3}$/.test(words) ? Number(words) : null;
  if (bare !== null) return bare > 0 ? bare : null;
  const read = readPortions(words) ?? (/^\d/.test(words) ? readPortions(`makes ${words}`) : null);
  return typeof read === 'number' && read > 0 ? read : null;
}
