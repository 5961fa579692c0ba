import {
  NOTHING,
  said,
  unitOf,
  type Amount,
  type SaidMass,
} from '#lib/episode/read-ingredient-amount-parts';
import { rangeAt, remark } from '#lib/episode/read-ingredient-number';
import { sizedAt } from '#lib/episode/read-ingredient-sized';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt, type UnitRead } from '#lib/episode/read-ingredient-unit';
import { unitAmount } from '#lib/episode/read-ingredient-unit-amount';
import {
  COUNTING_ALONE,
  FILLERS,
  ONE_SIDED,
  ROUGH,
  VAGUE,
} from '#lib/episode/read-ingredient-words';
import type { Problem } from '#lib/result';

/**
 * The amount that begins at a token, with its unit; null where none begins there.
 * @param each the weight of each that stood in a bracket after the count: '2 (400 g) tins'
 */
export function amountAt(
  tokens: readonly Token[],
  from: number,
  bracketed: ReadonlyMap<number, SaidMass> = new Map(),
): Amount | null {
  const start = skipFillers(tokens, from);
  const about = isRough(tokens.slice(from, start));
  const aside = tokens.slice(from, start).filter(({ kind }) => kind === 'word');
  const vague = rowAt(tokens, start, VAGUE_ROWS);
  if (vague > 0) return vagueAmount(tokens, { from, start, next: start + vague, aside });
  const side = oneSided(tokens, start);
  if (side > 0) {
    const amount = amountAt(tokens, start + side);
    if (!amount || amount.from !== start + side) return null;
    const typed = said(tokens, start, amount.next);
    const fault = remark(
      'one-sided-amount',
      `“${typed}” has only one end. Write both, as 2–3, or one amount.`,
      { typed },
    );
    return { ...amount, low: null, high: null, from, faults: [...amount.faults, fault] };
  }
  const negative = negativeAt(tokens, start);
  const number = rangeAt(tokens, negative ? start + 1 : start);
  if (!number) return aloneAt(tokens, start, aside);
  const faults = [negative, number.fault].filter((fault) => fault !== null);
  const range = faults.length > 0 ? { low: null, high: null } : number;
  const sized = sizedAt(tokens, start, number.next, range, bracketed);
  const amount = sized ?? unitAmount(tokens, start, number.next, range);
  return {
    ...amount,
    about:
      about || isRough(tokens.slice(number.next, amount.next)) || saysOrSo(tokens, amount.next),
    from,
    aside: [...aside, ...amount.aside],
    faults: [...faults, ...amount.faults],
  };
}

/** Whether words or signs say that an amount is rough. */
export function isRough(tokens: readonly Token[]): boolean {
  return tokens.some(({ text, folded }) => ROUGH.has(text) || ROUGH.has(folded));
}

/** '200 g or so of rice'. */
function saysOrSo(tokens: readonly Token[], at: number): boolean {
  return tokens[at]?.folded === 'or' && tokens[at + 1]?.folded === 'so';
}

function skipFillers(tokens: readonly Token[], from: number): number {
  let at = from;
  while (at - from < 4) {
    const token = tokens[at];
    const known = token && (/^[~≈]$/.test(token.text) || FILLERS.has(token.folded));
    if (!known || rowAt(tokens, at, ONE_SIDED_ROWS) > 0) break;
    at += 1;
    const dot = tokens[at];
    if (dot?.text === '.' && !dot.spaced && /^(?:ca|approx)$/.test(token.folded)) at += 1;
  }
  return at;
}

type Rows = ReadonlyMap<string, readonly (readonly string[])[]>;

/** Rows of words by their first, so that most words are passed over at one look. */
function byFirst(rows: readonly (readonly string[])[]): Rows {
  const found = new Map<string, (readonly string[])[]>();
  for (const row of rows) {
    const first = row[0] ?? '';
    found.set(first, [...(found.get(first) ?? []), row]);
  }
  return found;
}

const VAGUE_ROWS = byFirst(VAGUE);
const ONE_SIDED_ROWS = byFirst(ONE_SIDED);

/** How many words of a row of words stand at a place; 0 where none does. */
function rowAt(tokens: readonly Token[], at: number, rows: Rows): number {
  const found = rows
    .get(tokens[at]?.folded ?? '')
    ?.find((row) => row.every((word, step) => tokens[at + step]?.folded === word));
  return found?.length ?? 0;
}

function oneSided(tokens: readonly Token[], at: number): number {
  if (/^[<>≤≥]$/.test(tokens[at]?.text ?? '')) return 1;
  return rowAt(tokens, at, ONE_SIDED_ROWS);
}

function negativeAt(tokens: readonly Token[], at: number): Problem | null {
  const sign = tokens[at];
  const number = tokens[at + 1];
  if (!sign || !/^[-–—−+]$/.test(sign.text) || number?.kind !== 'number' || number.spaced)
    return null;
  const typed = sign.text + number.text;
  return remark(
    'negative-amount',
    `“${typed}” is no amount of food. Write ${number.text}; a dash that begins a line needs a blank after it.`,
    { typed },
  );
}

function vagueAmount(
  tokens: readonly Token[],
  {
    from,
    start,
    next,
    aside,
  }: { from: number; start: number; next: number; aside: readonly Token[] },
): Amount {
  const typed = said(tokens, start, next);
  const fault = remark(
    'vague-amount',
    `“${typed}” is no number. Write one, as 2 or 2–3, or grams.`,
    {
      typed,
    },
  );
  const unit = unitAt(tokens, next);
  const counted = unit && unit.kind !== 'unclear' && unit.kind !== 'length' ? unit : null;
  return {
    ...NOTHING,
    low: null,
    high: null,
    ...(counted ? unitOf(counted) : { unit: null, measure: null }),
    aside: [...aside, ...(counted?.modifiers ?? [])],
    from,
    next: counted?.next ?? next,
    faults: [fault],
  };
}

/** 'pinch of salt', 'handful spinach': the word counts, and how many is not said. */
function aloneAt(tokens: readonly Token[], start: number, aside: readonly Token[]): Amount | null {
  const unit = unitAt(tokens, start);
  if (!unit || (unit.kind !== 'piece' && unit.kind !== 'pack') || unit.next >= tokens.length)
    return null;
  if (tokens[unit.next]?.folded !== 'of' && !COUNTING_ALONE.has(unit.measure)) return null;
  if (tokens[start]?.folded !== unit.measure && unit.modifiers.length === 0 && !isKnown(unit))
    return null;
  const fault = remark(
    'no-number',
    `How many is not written. Write it in front, as “1 ${unit.measure}”.`,
    { measure: unit.measure },
  );
  return {
    ...NOTHING,
    low: null,
    high: null,
    ...unitOf(unit),
    aside: [...aside, ...unit.modifiers],
    from: start,
    next: unit.next,
    faults: [fault],
  };
}

function isKnown(unit: UnitRead): boolean {
  return unit.kind === 'pack' || (unit.kind === 'piece' && COUNTING_ALONE.has(unit.measure));
}
