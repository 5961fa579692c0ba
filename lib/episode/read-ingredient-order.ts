import { amountAt } from '#lib/episode/read-ingredient-amount';
import { withoutBrackets, type Bracket } from '#lib/episode/read-ingredient-aside';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt } from '#lib/episode/read-ingredient-unit';
import { ADVERBS, EGG_PARTS, PART_OF, PREPARATION } from '#lib/episode/read-ingredient-words';

/** The words of a line in the order "amount, food, remarks", with brackets taken out. */
export interface OrderedLine {
  readonly tokens: readonly Token[];
  readonly brackets: readonly Bracket[];
  /** The part of a fruit or egg that the amount is said of: 'juice' in 'juice of 1 lemon'; empty for none. */
  readonly partOf: string;
  readonly preparation: readonly Token[];
  readonly turned: boolean;
}

const SEPARATOR = /^[,:;=–—-]$/;

/**
 * Puts the amount first where it stands behind the food ('Feta, 50 g', 'Rocket: a handful', 'skyr 200 g'),
 * and a label behind it ('Optional: 1 tbsp honey'); takes 'juice of' away from the front.
 */
export function orderLine(all: readonly Token[]): OrderedLine {
  const plain = withoutBrackets(all);
  const { outside, brackets } =
    plain.outside.length === 0 && plain.brackets[0]
      ? { outside: plain.brackets[0].tokens, brackets: [] }
      : plain;
  const base = { brackets, partOf: '', preparation: [], turned: false };
  const part = partOf(outside);
  if (part) return { ...base, ...part, tokens: outside.slice(part.next) };
  const amount = amountAt(outside, 0);
  if (outside.length > 0 && amount) {
    const behind = partBehind(outside, brackets, amount.unit === 'piece');
    return behind ? { ...base, ...behind } : { ...base, tokens: outside };
  }
  if (outside.length === 0) return { ...base, tokens: outside };
  const turned = turn(outside);
  return turned ? { ...base, tokens: turned, turned: true } : { ...base, tokens: outside };
}

/** 'juice of', 'the finely grated zest and juice of': the part, what is done to it, and the place after. */
function partOf(
  tokens: readonly Token[],
): { partOf: string; preparation: readonly Token[]; next: number } | null {
  let at = tokens[0]?.folded === 'the' ? 1 : 0;
  const preparation: Token[] = [];
  for (;;) {
    const token = tokens[at];
    if (!token || (!PREPARATION.has(token.folded) && !ADVERBS.has(token.folded))) break;
    preparation.push(token);
    at += 1;
  }
  const named: string[] = [];
  for (;;) {
    const word = tokens[at]?.folded ?? '';
    if (!PART_OF.has(word) && !EGG_PARTS.has(word)) break;
    named.push(word);
    at += 1;
    if (tokens[at]?.folded !== 'and' && tokens[at]?.text !== '&') break;
    named.push('and');
    at += 1;
  }
  if (named.length === 0 || !/^(?:of|from)$/.test(tokens[at]?.folded ?? '')) return null;
  return { partOf: named.join(' '), preparation, next: at + 1 };
}

/** Words behind a food that name a part of it; 'seeds' alone may be taken out. */
const PART_RUN =
  /^(?:(?:just|only) )?(?:the )?((?:juice|zest|rind|peel|flesh|pulp)(?: (?:and|&) (?:juice|zest))?|(?:egg )?(?:whites?|yolks?))(?: only)?$/;
const SEEDS_ONLY = /^(?:(?:just|only) (?:the )?seeds|(?:the )?seeds only)$/;
/** What is done to a counted fruit, of which that part alone is then used. */
const PART_DONE: ReadonlyMap<string, string> = new Map([
  ['juiced', 'juice'],
  ['freshly juiced', 'juice'],
  ['zested', 'zest'],
  ['finely zested', 'zest'],
  ['zested and juiced', 'zest and juice'],
  ['juiced and zested', 'zest and juice'],
]);

/** '1 lime, juice', '2 eggs, whites only', '1 lime (juiced)': the part behind the food, and the rest without it. */
function partBehind(
  tokens: readonly Token[],
  brackets: readonly Bracket[],
  isCounted: boolean,
): Pick<OrderedLine, 'tokens' | 'brackets' | 'partOf'> | null {
  if (tokens.some(({ folded }) => folded === '+' || folded === 'plus')) return null;
  const inside = brackets.find((bracket) => partIn(bracket.tokens, isCounted) !== null);
  if (inside) {
    const named = partIn(inside.tokens, isCounted) ?? '';
    return { tokens, brackets: brackets.filter((each) => each !== inside), partOf: named };
  }
  const comma = tokens.findIndex(({ text }) => text === ',');
  if (comma < 0) return null;
  const end = tokens.findIndex(({ text }, at) => at > comma && text === ',');
  const named = partIn(tokens.slice(comma + 1, end < 0 ? tokens.length : end), isCounted);
  if (named === null) return null;
  const rest = [...tokens.slice(0, comma), ...(end < 0 ? [] : tokens.slice(end))];
  return { tokens: rest, brackets, partOf: named };
}

function partIn(run: readonly Token[], isCounted: boolean): string | null {
  const text = run.map(({ folded }) => folded).join(' ');
  const named = PART_RUN.exec(text)?.[1] ?? (SEEDS_ONLY.test(text) ? 'seeds' : undefined);
  return (
    named?.replace(/^egg /, '') ??
    (isCounted ? (PART_DONE.get(text.replace(/ and strained$/, '')) ?? null) : null)
  );
}

/** Finds the amount behind the food. Only one with a unit, or after a separator or an x, is plain enough. */
function turn(tokens: readonly Token[]): readonly Token[] | null {
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at];
    const before = tokens[at - 1];
    if (!token) break;
    const cross = /^[x×]$/.test(token.folded) && tokens[at + 1]?.kind === 'number';
    const separated = before !== undefined && SEPARATOR.test(before.text);
    if (token.kind !== 'number' && !cross && !(separated && token.kind === 'word')) continue;
    if (at > 0 && before?.text === '-' && !before.spaced) continue;
    const from = cross ? at + 1 : at;
    const amount = amountAt(tokens, from);
    if (!amount || (amount.low === null && amount.faults.length === 0)) continue;
    const bare =
      unitAt(tokens, from + 1) === null && amount.measure === null && amount.unit === 'piece';
    const rest = tokens.slice(amount.next);
    const ends = rest.length === 0 || SEPARATOR.test(rest[0]?.text ?? '') || isRemark(rest[0]);
    if (bare && !cross && !(separated && ends)) continue;
    const food = tokens.slice(0, separated ? at - 1 : at);
    if (ends) return [...tokens.slice(from, amount.next), ...food, ...comma(rest), ...rest];
    if (before?.text === ':') return [...tokens.slice(at), ...comma(food), ...food];
  }
  return null;
}

function isRemark(token: Token | undefined): boolean {
  return token?.folded === 'for' || token?.folded === 'to' || PREPARATION.has(token?.folded ?? '');
}

/** A comma between the food and what is said of it, where none is written. */
function comma(rest: readonly Token[]): readonly Token[] {
  const first = rest[0];
  if (!first || first.text === ',') return [];
  const { start } = first;
  return [{ kind: 'sign', text: ',', folded: ',', start, end: start, spaced: false }];
}
