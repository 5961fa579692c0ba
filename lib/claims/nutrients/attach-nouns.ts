import { nounsOf } from './nouns';
import type { Noun, Quantity } from '../numbers/quantity';
import { endRow, shareNouns, startRow, type Element } from './shared-nouns';
import { only, type Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/**
 * Gives numbers the nutrients they count: by the noun behind or before each, and in rows that share their nouns
 * ('18, 11 and 42 grams of carbs, fat and protein') one after the other. `taken`: tokens that are words of a claim.
 * Returns the nouns that no number has.
 */
export function attachNouns(
  text: Text,
  quantities: readonly Quantity[],
  taken: ReadonlySet<number>,
): { readonly quantities: readonly Quantity[]; readonly free: readonly Noun[] } {
  const nouns = nounsOf(text, quantities, taken);
  const elements: Element[] = [
    ...quantities
      .filter(({ unit }) => unit === null || unit.of === 'mass' || unit.of === 'energy')
      .map((quantity): Element => ({
        of: 'number',
        quantity,
        from: quantity.begin,
        to: quantity.end,
      })),
    ...nouns.map((noun): Element => ({ of: 'noun', noun, from: noun.from, to: noun.to })),
  ].sort((a, b) => a.from - b.from);
  const split = new Map<Quantity, readonly Quantity[]>();
  for (const run of runsOf(text, elements)) {
    if (shareNouns(text, run, split)) continue;
    const start = startRow(text, run);
    if (start.row.length > 0) shareNouns(text, start.row, split);
    const { alone, row } = endRow(text, start.alone);
    if (row.length > 0) shareNouns(text, row, split);
    for (const chain of chainsOf(text, alone)) orient(text, chain);
  }
  const all = quantities.flatMap((quantity) => split.get(quantity) ?? [quantity]);
  const used = new Set(all.map(({ noun }) => noun));
  return { quantities: all, free: nouns.filter((noun) => !used.has(noun)) };
}

const GAP = ['joiner', 'copula', 'hedge', 'filler', 'which', 'asWord', 'at', 'ofThem'] as const;

/** Elements one after the other with nothing between them but what joins, parts and links. */
function runsOf(text: Text, elements: readonly Element[]): Element[][] {
  const runs: Element[][] = [];
  let last: Element | undefined;
  for (const element of elements) {
    const run = runs.at(-1);
    const goesOn =
      run && last && (gapIs(text, last.to, element.from) || isNamedFor(text, last, element, run));
    if (goesOn) run.push(element);
    else runs.push([element]);
    last = element;
  }
  return runs;
}

function gapIs(text: Text, from: number, to: number): boolean {
  if (to < from) return false;
  if (only(text, from, to, GAP)) return true;
  const part = text.marks.at('scope', from);
  if (part?.to === to && part.role.link === 'free' && text.marks.before('noun', from)) return true;
  const at = text.tokens.slice(from, to).findIndex(({ kind }) => kind === 'line');
  return at >= 0 && only(text, from, from + at, GAP) && only(text, from + at + 1, to, GAP);
}

/** Least number that needs no other before it to be one 'for the protein'. */
const LEAST_FOR = 10;

/**
 * Between a row of numbers and that of its nouns, 'four thirty, thirty one and nine for calories, protein and fat', or
 * between a number and its noun, 'four thirty for the calories, thirty one for the protein'.
 */
function isNamedFor(text: Text, last: Element, next: Element, run: readonly Element[]): boolean {
  if (last.of !== 'number' || next.of !== 'noun') return false;
  const { marks, tokens } = text;
  const link = marks.at('serveTitle', last.to);
  if (!link || !isFor(text, last.to, next.from)) return false;
  const behind = marks.at('joiner', next.to)?.to ?? next.to;
  if (link.to === next.from && marks.at('noun', behind) !== undefined) return true;
  const goesOn = tokens[next.to]?.kind === 'word' && behind === next.to;
  if (goesOn && !marks.at('so', next.to)) return false;
  return last.quantity.low >= LEAST_FOR || run.length > 1;
}

/** Whether 'for the' alone stands between a number and its noun. */
function isFor(text: Text, from: number, to: number): boolean {
  const link = text.marks.at('serveTitle', from);
  return link !== undefined && only(text, link.to, to, ['filler']);
}

/** Parts of a run in which each element stands right beside the next, or is linked to it by a copula. */
function chainsOf(text: Text, run: readonly Element[]): Element[][] {
  const chains: Element[][] = [];
  let last: Element | undefined;
  for (const element of run) {
    const chain = chains.at(-1);
    if (chain && last && last.of !== element.of && linked(text, last, element)) chain.push(element);
    else chains.push([element]);
    last = element;
  }
  return chains;
}

function linked(text: Text, last: Element, next: Element): boolean {
  // On a card the noun may stand on a line of its own.
  const line = next.from - last.to === 1 && text.tokens[last.to]?.kind === 'line';
  if (line && text.context.form === 'card') return true;
  if (last.of === 'number') {
    // '42 grams the fat is 11': the noun begins what follows.
    const of = text.language.numbers.of.has(text.tokens[last.to]?.folded ?? '');
    if (!of && next.from > last.to && text.marks.at('copula', next.to)) return false;
    // 'sixty one, of which nine point four is sugar'
    const start = text.marks.before('filler', last.from)?.from ?? last.from;
    const which = text.marks.before('ofThem', last.from) ?? text.marks.before('ofThem', start);
    if (which && only(text, last.to, next.from, ['copula', 'filler'])) return true;
    // 'nineteen of those are saturated'
    const them = text.marks.at('ofThem', last.to);
    if (them && only(text, them.to, next.from, ['copula', 'filler'])) return true;
    if (isTheNoun(text, last.to, next)) return true;
    return only(text, last.to, next.from, ['filler', 'asWord']) || isFor(text, last.to, next.from);
  }
  // 'protein per bowl forty three'
  const part = text.marks.at('scope', last.to);
  const behind = part?.role.link === 'free' ? part.to : null;
  if (behind === next.from) return true;
  // 'the protein per muffin is 9.4'
  const verb = behind === null ? undefined : text.marks.at('copula', behind);
  if (verb && only(text, verb.to, next.from, ['hedge', 'filler'])) return true;
  return only(text, last.to, next.from, ['copula', 'hedge', 'filler', 'which', 'at']);
}

/** 'thirty one is the protein', 'nine was the fat, not the fibre': the number is the subject, and nothing follows its noun. */
function isTheNoun({ marks, tokens, language }: Text, from: number, noun: Element): boolean {
  const copula = marks.at('copula', from);
  const the = copula?.to ?? from;
  if (!copula || tokens[from]?.kind !== 'word' || the + 1 !== noun.from) return false;
  if (!language.numbers.pointers.has(tokens[the]?.folded ?? '')) return false;
  const next = tokens[noun.to];
  return !saysNumber(next, language) && !marks.at('copula', noun.to) && !marks.at('noun', noun.to);
}

/** Whether nouns of a chain stand before or behind their numbers, by how it begins and ends. */
function orient(text: Text, chain: readonly Element[]): void {
  const begins = chain[0]?.of;
  const ends = chain.at(-1)?.of;
  let behind = begins === 'number';
  if (begins === 'noun' && ends === 'noun' && chain.length > 1) {
    const [noun, number, next] = chain;
    const copula = noun && number && number.from > noun.to;
    behind =
      !copula &&
      number?.of === 'number' &&
      next !== undefined &&
      strongBehind(text, number.quantity, next.from);
  }
  chain.forEach((element, index) => {
    if (element.of !== 'number') return;
    const other = chain[behind ? index + 1 : index - 1];
    if (other?.of === 'noun' && !(!behind && countsFood(text, element.quantity)))
      element.quantity.noun = other.noun;
  });
}

/** 'a cup of sugar, one egg': the number counts what follows. */
function countsFood({ food, marks }: Text, { unit, end }: Quantity): boolean {
  return unit === null && marks.at('noun', end) === undefined && food(end)?.from === end;
}

/** A unit and the noun right behind it, with or without 'of': '71 grams of protein'. */
function strongBehind(text: Text, quantity: Quantity, noun: number): boolean {
  return (
    quantity.unit?.of === 'mass' && noun - quantity.unitEnd <= 1 && text.tokens[noun] !== undefined
  );
}
