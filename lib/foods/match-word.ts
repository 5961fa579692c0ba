/**
 * How many letters of a typed word may be wrong: none below 4 letters, 1 for 4 to 7, 2 for longer.
 * A swap of neighbours counts as one.
 */
export function allowedTypos(length: number): 0 | 1 | 2 {
  if (length < 4) return 0;
  return length < 8 ? 1 : 2;
}

/** How well a typed word matches a word of a name: 1 is the same word; 0 is no match. */
export const QUALITY = {
  same: 1,
  /** Typed so far, of a word of `full` letters. */
  beginning: (typed: number, full: number) => 0.75 + 0.2 * (typed / full),
  /** The same but for typos. */
  typos: (distance: number) => 0.95 - 0.13 * distance,
  /** Typed so far, with typos. */
  beginningWithTypos: (distance: number) => 0.7 - 0.1 * distance,
} as const;

/** Shortest typed word that may match the beginning of a word with typos. */
export const BEGINNING_WITH_TYPOS_FROM = 5;

/**
 * The quality of a typed word against one written form of a name's word, by the plain definition.
 * `isLast`: the person is still typing it, so it may be a beginning. `typos`: whether typos are allowed.
 * `matchWord('tomat', 'tomato', true, false)` → 0.75 + 0.2 × 5/6.
 */
export function matchWord(typed: string, form: string, isLast: boolean, typos: boolean): number {
  if (typed === form) return QUALITY.same;
  if (isLast && form.startsWith(typed)) return QUALITY.beginning(typed.length, form.length);
  if (!typos) return 0;
  const allowed = allowedTypos(typed.length);
  if (allowed === 0) return 0;
  const { whole, beginning } = typoDistances(typed, form);
  if (whole <= allowed) return QUALITY.typos(whole);
  if (isLast && typed.length >= BEGINNING_WITH_TYPOS_FROM && beginning <= allowed) {
    return QUALITY.beginningWithTypos(beginning);
  }
  return 0;
}

/**
 * Damerau-Levenshtein distances (optimal string alignment: insertion, deletion, substitution, swap of
 * neighbours, each 1) of a typed word to a whole form and to the nearest of its beginnings.
 */
export function typoDistances(typed: string, form: string): { whole: number; beginning: number } {
  let before: number[] = [];
  let last = Array.from({ length: typed.length + 1 }, (_, index) => index);
  let beginning = typed.length;
  for (let row = 1; row <= form.length; row += 1) {
    const next = nextRow(typed, form, row, last, before);
    before = last;
    last = next;
    beginning = Math.min(beginning, last[typed.length] ?? Infinity);
  }
  return { whole: last[typed.length] ?? Infinity, beginning };
}

function nextRow(
  typed: string,
  form: string,
  row: number,
  last: readonly number[],
  before: readonly number[],
): number[] {
  const next = [row];
  for (let column = 1; column <= typed.length; column += 1) {
    const same = form[row - 1] === typed[column - 1];
    let cost = Math.min(
      (last[column] ?? Infinity) + 1,
      (next[column - 1] ?? Infinity) + 1,
      (last[column - 1] ?? Infinity) + (same ? 0 : 1),
    );
    const swapped =
      row > 1 &&
      column > 1 &&
      form[row - 1] === typed[column - 2] &&
      form[row - 2] === typed[column - 1];
    if (swapped) cost = Math.min(cost, (before[column - 2] ?? Infinity) + 1);
    next.push(cost);
  }
  return next;
}
