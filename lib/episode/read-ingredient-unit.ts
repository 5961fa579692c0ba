import type { LineUnit } from '#lib/episode/recipe-schema';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import {
  COUNTING,
  COUNTING_BEFORE,
  LENGTHS,
  MODIFIERS,
  PACKS,
  SIZES,
  UNCLEAR_UNITS,
  UNITS,
} from '#lib/episode/read-ingredient-words';

/** What stands after a number, with the place after it. */
export type UnitRead = (
  | { readonly kind: 'unit'; readonly unit: LineUnit; readonly num: number; readonly den: number }
  | { readonly kind: 'piece' | 'pack' | 'size'; readonly measure: string }
  | { readonly kind: 'unclear' | 'length'; readonly typed: string }
) & { readonly next: number; readonly modifiers: readonly Token[] };

/**
 * The unit that begins at a token: of mass or volume, a counting word, a pack, a size; words that go with it
 * ('heaped', 'a large handful') come along. Null where none begins there.
 */
export function unitAt(tokens: readonly Token[], from: number): UnitRead | null {
  let at = from;
  const dash = tokens[at];
  if (dash?.text === '-' && !dash.spaced && tokens[at + 1]?.spaced === false) at += 1;
  const plain = plainUnit(tokens, at);
  if (plain) return { ...plain, modifiers: [] };
  let end = at;
  while (isModifier(tokens, end) && end - at < 4) end += 1;
  const counted = end > at ? plainUnit(tokens, end) : null;
  if (counted && counted.kind !== 'length' && counted.kind !== 'unclear') {
    return { ...counted, modifiers: tokens.slice(at, end) };
  }
  return sizeAt(tokens, at);
}

function isModifier(tokens: readonly Token[], at: number): boolean {
  const word = tokens[at]?.folded ?? '';
  if (word === 'extra') return SIZES.has(tokens[at + 1]?.folded ?? '');
  return (
    MODIFIERS.has(word) || SIZES.has(word) || (word === 'lightly' && isModifier(tokens, at + 1))
  );
}

type Plain = UnitRead extends infer U ? (U extends unknown ? Omit<U, 'modifiers'> : never) : never;

function plainUnit(tokens: readonly Token[], at: number): Plain | null {
  const token = tokens[at];
  if (token?.kind !== 'word') return null;
  const word = token.folded;
  const fluid = fluidOunce(tokens, at);
  if (fluid !== null) return { kind: 'unit', unit: 'flOz', num: 1, den: 1, next: fluid };
  const unit = UNITS.get(word);
  const after = tokens[at + 1]?.folded ?? '';
  if (unit) {
    if (/^pounds?$/.test(word) && /^cakes?$/.test(after)) return null;
    return { kind: 'unit', ...unit, next: skipDot(tokens, at + 1) };
  }
  const pack = PACKS.get(word);
  if (pack !== undefined) return { kind: 'pack', measure: pack, next: at + 1 };
  const counting = COUNTING.get(word);
  if (counting !== undefined) {
    const only = COUNTING_BEFORE.get(counting);
    if (only && after !== 'of' && !only.has(after)) return null;
    return { kind: 'piece', measure: counting, next: at + 1 };
  }
  if (UNCLEAR_UNITS.has(word))
    return { kind: 'unclear', typed: token.text, next: skipDot(tokens, at + 1) };
  if (LENGTHS.has(word)) return { kind: 'length', typed: token.text, next: at + 1 };
  // A word that nobody knows counts where "of" follows: '2 glugs of oil'.
  if (after === 'of' && !SIZES.has(word) && at + 2 < tokens.length && !NOT_COUNTED.has(word)) {
    return { kind: 'piece', measure: singularWord(word), next: at + 1 };
  }
  return null;
}

/** Words before "of" that are part of the food's name: 'cream of tartar'. */
const NOT_COUNTED: ReadonlySet<string> = new Set([
  'cream',
  'milk',
  'hearts',
  'juice',
  'zest',
  'rind',
  'oil',
  'half',
  'each',
  'bicarbonate',
  'chicken',
]);

function singularWord(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || word.endsWith('ss')) return word;
  return /(?:ches|shes|xes|sses)$/.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}

function fluidOunce(tokens: readonly Token[], at: number): number | null {
  if (!/^(?:fl|fluid)$/.test(tokens[at]?.folded ?? '')) return null;
  const ounce = skipDot(tokens, at + 1);
  return UNITS.get(tokens[ounce]?.folded ?? '')?.unit === 'oz' ? skipDot(tokens, ounce + 1) : null;
}

/** The place after the full stop of an abbreviation. */
function skipDot(tokens: readonly Token[], at: number): number {
  return tokens[at]?.text === '.' && !tokens[at]?.spaced ? at + 1 : at;
}

function sizeAt(tokens: readonly Token[], at: number): UnitRead | null {
  const extra = tokens[at]?.folded === 'extra' ? 1 : 0;
  const size = SIZES.get(tokens[at + extra]?.folded ?? '');
  if (size === undefined) return null;
  let next = at + extra + 1;
  // 'small to medium', 'medium-large': two sizes are in doubt, and the food has to choose.
  if (/^(?:sized?)$/.test(tokens[next]?.folded ?? '')) next += 1;
  const measure = extra === 1 ? `extra ${size}` : size;
  return { kind: 'size', measure, next, modifiers: [] };
}
