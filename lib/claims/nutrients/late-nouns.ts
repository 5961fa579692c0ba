import type { Noun, Quantity } from '../numbers/quantity';
import { indexAt } from '../words/at-or-behind';
import { only, type Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Tokens between a number and a noun that is said of it afterwards, and between the numbers of such a row. */
const GAP = 4;
/** Kilocalories that a dish or a day may have: what is softened to bare numbers afterwards counts no more and no less. */
const ENERGY = { least: 40, most: 6000 } as const;

/**
 * Gives numbers that count nothing yet the nouns that are said of them afterwards: 'thirty one grams, protein',
 * 'twenty eight. That's the protein', 'four thirty each, calories wise', 'four ten and six thirty, calories I mean'.
 * Returns the nouns that are still free.
 */
export function attachLate(
  text: Text,
  quantities: readonly Quantity[],
  free: readonly Noun[],
): readonly Noun[] {
  const used = new Set<Noun>();
  for (const nouns of rowsOf(text, free)) {
    const [first] = nouns;
    if (!first || !endsThere(text, nouns)) continue;
    const row = rowBefore(text, quantities, nouns);
    if (row.length === 0) continue;
    row.forEach((quantity, index) => {
      quantity.noun = nouns[index] ?? first;
      quantity.list ||= row.length > 1;
    });
    for (const noun of nouns) used.add(noun);
  }
  return free.filter((noun) => !used.has(noun));
}

/** Nouns one after the other. */
function rowsOf(text: Text, free: readonly Noun[]): Noun[][] {
  const rows: Noun[][] = [];
  for (const noun of free) {
    const last = rows.at(-1)?.at(-1);
    if (last && only(text, last.to, noun.from, ['joiner', 'so', 'filler'])) rows.at(-1)?.push(noun);
    else rows.push([noun]);
  }
  return rows;
}

/** Whether nothing follows that the nouns would be said of. */
function endsThere({ marks, tokens, language }: Text, nouns: readonly Noun[]): boolean {
  const to = nouns.at(-1)?.to ?? 0;
  const token = tokens[to];
  if (token === undefined || /^[.,;!?)]$/.test(token.text) || token.kind === 'line') {
    // 'thirty one grams, protein, forty of carbs': a number behind the comma may be that of the noun.
    const next = tokens[to + 1];
    return token?.text !== ',' || !saysNumber(next, language);
  }
  // 'calories that is'
  const which = marks.at('which', to);
  if (which && /^[.,]?$/.test(tokens[which.to]?.text ?? '')) return true;
  const copula = marks.at('copula', to) !== undefined;
  if (copula || saysNumber(token, language)) return false;
  const part = marks.at('scope', to);
  if (part && part.role.link !== 'subject') return !saysNumber(tokens[part.to], language);
  return (['so', 'small', 'correct', 'which', 'joiner'] as const).some((cat) => marks.at(cat, to));
}

/** The numbers that the nouns are said of: as many as there are nouns, right before them. */
function rowBefore(
  text: Text,
  quantities: readonly Quantity[],
  nouns: readonly Noun[],
): readonly Quantity[] {
  const [first] = nouns;
  const behind = first ? indexAt(quantities, first.from) : 0;
  const row = behindOnes(quantities, behind, nouns.length);
  const last = row.at(-1);
  if (
    !first ||
    !last ||
    row.length < nouns.length ||
    !isSaidOf(text, last, first, nouns.length > 1)
  )
    return [];
  if (nouns.length === 1) row.unshift(...clauses(text, quantities, behind - 1, first));
  const open = row.every((quantity, index) => {
    const next = row[index + 1];
    const near = next === undefined || next.begin - quantity.end <= GAP;
    return (near || nouns.length === 1) && isOpen(text, quantity, nouns[index] ?? first);
  });
  return open ? row : [];
}

/** The last of the numbers before a place, without the one of 'in a tub'. */
function behindOnes(quantities: readonly Quantity[], to: number, count: number): Quantity[] {
  const row: Quantity[] = [];
  for (let at = to - 1; at >= 0 && row.length < count; at -= 1) {
    const one = quantities[at];
    if (one && !(one.unit?.of === 'container' && one.low === 1 && one.high === 1)) row.unshift(one);
  }
  return row;
}

/** Numbers before the last one that one noun may be said of, and tokens between them. */
const MOST_CLAUSES = 4;
const CLAUSE = 12;

/** 'the porridge was four ten, the stir fry six thirty, calories I mean': numbers that say each of what it is. */
function clauses(
  text: Text,
  quantities: readonly Quantity[],
  last: number,
  noun: Noun,
): Quantity[] {
  const found: Quantity[] = [];
  if (noun.unit !== 'kcal') return found;
  for (let at = last - 1; at >= 0 && found.length < MOST_CLAUSES; at -= 1) {
    const [quantity, next] = [quantities[at], quantities[at + 1]];
    if (!quantity || !next || next.begin - quantity.end > CLAUSE) break;
    const led = (['copula', 'scope', 'lead'] as const).some((cat) =>
      text.marks.before(cat, quantity.begin),
    );
    const plausible = quantity.low >= LEAST_OF_ROW && isOpen(text, quantity, noun);
    if (!plausible || !led || quantity.killed !== null) break;
    found.unshift(quantity);
  }
  return found;
}

/** Kilocalories that one of several numbers has at least. */
const LEAST_OF_ROW = 100;

/** Grams of a nutrient that a text says without their unit. */
const MOST_GRAMS = 300;

/** Whether a number counts nothing, and might count what the noun says. */
function isOpen({ marks, tokens, food }: Text, quantity: Quantity, { unit }: Noun): boolean {
  if (quantity.noun || quantity.fraction) return false;
  const { low, high, unit: own, end } = quantity;
  if (unit === 'kcal') return own === null && low >= ENERGY.least && high <= ENERGY.most;
  if (own !== null) return own.of === 'mass' && (own.unit === 'g' || own.unit === 'mg');
  const counted = marks.at('thing', end) ?? marks.at('trapBehind', end) ?? food(end);
  return !counted && tokens[end]?.kind !== 'number' && high <= MOST_GRAMS;
}

/** What may stand between a number and the noun that is said of it. */
const LINKS = ['joiner', 'which', 'copula', 'filler', 'scope', 'small', 'asWord', 'thing'] as const;

function isSaidOf(text: Text, { end, unit }: Quantity, { from }: Noun, ofRow: boolean): boolean {
  const { marks, tokens, language } = text;
  if (from === end) return false;
  let at = end;
  // 'two ten, cals'
  const comma = tokens[end]?.text === ',' || tokens[from - 1]?.text === ',';
  let said = unit !== null || comma || (ofRow && tokens[end]?.text === '.');
  let gap = 0;
  while (at < from) {
    const stop = /^[.,;]$/.test(tokens[at]?.text ?? '');
    const which = marks.at('which', at);
    const scope = marks.at('scope', at);
    const [link] = LINKS.flatMap((cat) => marks.at(cat, at) ?? [])
      .filter(({ to }) => to <= from)
      .sort((a, b) => b.to - a.to);
    if (which && which.to <= from) said = true;
    if (scope && scope.to <= from) said = true;
    const word = link?.role.cat === 'joiner' && tokens[at]?.kind === 'word';
    // 'four hundred a portion, and the protein': the noun begins what follows.
    if ((!stop && !link) || (word && !marks.at('which', at + 1))) return false;
    const mark = [which, scope, link].find((other) => other !== undefined && other.to <= from);
    at = stop ? at + 1 : (mark?.to ?? at + 1);
    gap += 1;
  }
  const of = language.numbers.of.has(tokens[from - 1]?.folded ?? '');
  return said && !of && gap <= GAP;
}
