import Fraction from 'fraction.js';
import type { LineUnit } from '#lib/episode/recipe-schema';
import type { Problem } from '#lib/result';
import { isMassUnit, isVolumeUnit, MILLIGRAMS } from '#lib/units/units';
import {
  dividesRange,
  numberAt,
  outOfOrder,
  rangeAt,
  remark,
} from '#lib/episode/read-ingredient-number';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt, type UnitRead } from '#lib/episode/read-ingredient-unit';
import { COUNTING_ALONE, FILLERS, ONE_SIDED, VAGUE } from '#lib/episode/read-ingredient-words';

/** A mass in milligrams as a range, and whether it was said in grams. */
export interface SaidMass {
  readonly low: Fraction;
  readonly high: Fraction;
  readonly inGrams: boolean;
}

/** An amount at the beginning of some words. */
export interface Amount {
  readonly low: Fraction | null;
  readonly high: Fraction | null;
  readonly unit: LineUnit | null;
  readonly measure: string | null;
  /** The weight of each, as in '2 x 400 g tins'. */
  readonly each: SaidMass | null;
  /** The same amount in grams after a slash: '1 cup/150 g'. */
  readonly whole: SaidMass | null;
  /** Words of the amount that belong into the note: 'heaped', 'about'. */
  readonly aside: readonly Token[];
  readonly from: number;
  readonly next: number;
  readonly faults: readonly Problem[];
}

interface Range {
  readonly low: Fraction | null;
  readonly high: Fraction | null;
}

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
    from,
    aside: [...aside, ...amount.aside],
    faults: [...faults, ...amount.faults],
  };
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

function said(tokens: readonly Token[], from: number, to: number): string {
  return tokens
    .slice(from, to)
    .map(({ text }) => text)
    .join(' ');
}

const NOTHING = {
  each: null,
  whole: null,
  aside: [] as readonly Token[],
  faults: [] as readonly Problem[],
};

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

function unitOf(unit: UnitRead): Pick<Amount, 'unit' | 'measure'> {
  switch (unit.kind) {
    case 'unit':
      return { unit: unit.unit, measure: null };
    case 'pack':
      return { unit: 'pack', measure: unit.measure };
    case 'piece':
    case 'size':
      return { unit: 'piece', measure: unit.measure };
    case 'unclear':
    case 'length':
      return { unit: null, measure: null };
  }
}

/** A count of things whose weight each is written: '2 x 400 g tins', 'a 400 g tin', '2 (400 g) tins'. */
function sizedAt(
  tokens: readonly Token[],
  start: number,
  at: number,
  count: Range,
  bracketed: ReadonlyMap<number, SaidMass>,
): Omit<Amount, 'from'> | null {
  const bracket = bracketed.get(at);
  const cross = /^[x×*]$/.test(tokens[at]?.folded ?? '');
  const place = cross ? at + 1 : at;
  const size = bracket ? null : numberAt(tokens, place);
  if (bracket) return sizedThing(tokens, at, count, bracket);
  if (!size || tokens[place]?.kind !== 'number' || at <= start) return null;
  const range = rangeAt(tokens, place) ?? size;
  const unit = unitAt(tokens, range.next);
  if (unit?.kind === 'length') {
    // 'a 2 inch piece': how long it is goes into the note.
    const thing = unitAt(tokens, skipDash(tokens, unit.next));
    if (cross || thing?.kind !== 'piece') return null;
    return {
      ...NOTHING,
      ...count,
      unit: 'piece',
      measure: thing.measure,
      aside: tokens.slice(place, unit.next),
      next: thing.next,
    };
  }
  if (unit?.kind !== 'unit' || range.fault || !range.low || !range.high) return null;
  const mass = massOf(range, unit);
  const volume = isVolumeUnit(unit.unit);
  if (!mass && !volume) return null;
  const thing = unitAt(tokens, skipDash(tokens, unit.next));
  const counted = thing?.kind === 'piece' || thing?.kind === 'pack';
  if (!cross && !counted) return null;
  const sized = sizedThing(tokens, skipDash(tokens, unit.next), count, mass);
  if (volume) return { ...sized, aside: [...tokens.slice(place, unit.next), ...sized.aside] };
  if (counted || !count.low || !count.high) return sized;
  // '2 x 150 g haddock': no thing is counted, so that it is an amount in grams, unless one follows the food.
  return sized;
}

function skipDash(tokens: readonly Token[], at: number): number {
  return tokens[at]?.text === '-' && !tokens[at]?.spaced ? at + 1 : at;
}

function sizedThing(
  tokens: readonly Token[],
  at: number,
  count: Range,
  each: SaidMass | null,
): Omit<Amount, 'from'> {
  const thing = unitAt(tokens, at);
  if (thing && (thing.kind === 'piece' || thing.kind === 'pack' || thing.kind === 'size')) {
    const aside = thing.modifiers;
    return { ...NOTHING, ...count, ...unitOf(thing), each, aside, next: thing.next };
  }
  return { ...NOTHING, ...count, unit: 'piece', measure: null, each, next: at };
}

/** A mass in milligrams; null for a unit of another kind. */
export function massOf(range: Range, unit: UnitRead): SaidMass | null {
  if (unit.kind !== 'unit' || !isMassUnit(unit.unit) || !range.low || !range.high) return null;
  const factor = MILLIGRAMS[unit.unit].mul(unit.num).div(unit.den);
  const inGrams = unit.unit === 'g' || unit.unit === 'kg';
  return { low: range.low.mul(factor), high: range.high.mul(factor), inGrams };
}

function unitAmount(
  tokens: readonly Token[],
  start: number,
  at: number,
  range: Range,
): Omit<Amount, 'from'> {
  const unit = unitAt(tokens, at);
  if (!unit)
    return { ...NOTHING, ...range, unit: 'piece', measure: null, next: skipSo(tokens, at) };
  if (unit.kind === 'unclear' || unit.kind === 'length') {
    const fault =
      unit.kind === 'length'
        ? remark(
            'length-not-amount',
            `How long it is does not say how much. Write a count or grams.`,
            {
              typed: unit.typed,
            },
          )
        : remark(
            'unit-not-known',
            `“${unit.typed}” may be more than one unit. Write tsp, tbsp or cup.`,
            {
              typed: unit.typed,
            },
          );
    const aside = tokens.slice(start, unit.next);
    return {
      ...NOTHING,
      low: null,
      high: null,
      unit: null,
      measure: null,
      next: unit.next,
      faults: [fault],
      aside,
    };
  }
  if (unit.kind !== 'unit') {
    const two = orTwo(tokens, unit, range);
    return {
      ...NOTHING,
      ...(two ?? range),
      ...unitOf(unit),
      aside: unit.modifiers,
      next: two?.next ?? unit.next,
    };
  }
  const scaled = scaleRange(range, unit);
  const thing = unitAt(tokens, skipDash(tokens, unit.next));
  if (thing?.kind === 'pack' && thing.modifiers.length === 0)
    return packOf(tokens, scaled, unit, thing);
  const before = {
    ...NOTHING,
    ...scaled,
    unit: unit.unit,
    measure: null,
    aside: unit.modifiers,
    next: unit.next,
  };
  return repeated(tokens, added(tokens, start, before));
}

/** '2 or so': said of the number, not of the food. */
function skipSo(tokens: readonly Token[], at: number): number {
  return tokens[at]?.folded === 'or' && tokens[at + 1]?.folded === 'so' ? at + 2 : at;
}

function scaleRange(range: Range, unit: UnitRead & { kind: 'unit' }): Range {
  if (unit.num === 1 && unit.den === 1) return { low: range.low, high: range.high };
  const by = (end: Fraction | null) => end?.mul(unit.num).div(unit.den) ?? null;
  return { low: by(range.low), high: by(range.high) };
}

/** 'a slice or two of bread'. */
function orTwo(
  tokens: readonly Token[],
  unit: UnitRead,
  range: Range,
): (Range & { next: number }) | null {
  if (tokens[unit.next]?.folded !== 'or' || !range.low || range.low !== range.high) return null;
  const second = numberAt(tokens, unit.next + 1);
  const after = tokens[second?.next ?? 0]?.folded;
  if (!second?.low || (after !== undefined && after !== 'of')) return null;
  if (second.low.compare(range.low) <= 0) return null;
  return { low: range.low, high: second.low, next: second.next };
}

/** '400 g tin of …' is one tin of 400 g; '400 g tins' does not say how many. */
function packOf(
  tokens: readonly Token[],
  range: Range,
  unit: UnitRead & { kind: 'unit' },
  thing: UnitRead & { kind: 'piece' | 'pack' | 'size' },
): Omit<Amount, 'from'> {
  const word = tokens[thing.next - 1]?.folded ?? '';
  const several = word !== thing.measure && word.endsWith('s') && word !== 'pkgs';
  const mass = massOf(range, { ...unit, num: 1, den: 1 });
  const one = new Fraction(1);
  const base = { ...NOTHING, unit: 'pack' as const, measure: thing.measure, next: thing.next };
  if (!mass) return { ...base, low: one, high: one, aside: tokens.slice(unit.next - 2, unit.next) };
  if (!several) return { ...base, low: one, high: one, each: mass };
  const fault = remark(
    'no-number',
    `How many ${word} is not written. Write it as 2 x 400 g ${word}.`,
    { measure: word },
  );
  return { ...base, low: null, high: null, faults: [fault] };
}

/** How many of the second unit one of the first is, where both are of one kind and system. */
const PARTS: ReadonlyMap<string, number> = new Map([
  ['lb oz', 16],
  ['kg g', 1000],
  ['l ml', 1000],
  ['cup flOz', 8],
  ['cup tbsp', 16],
  ['cup tsp', 48],
  ['flOz tbsp', 2],
  ['flOz tsp', 6],
  ['tbsp tsp', 3],
]);

type Single = Omit<Amount, 'from'>;

/** Adds what follows in a smaller unit ('1 lb 2 oz'), or after a plus ('2 tbsp + 1 tsp'), or a range's end. */
function added(tokens: readonly Token[], start: number, first: Single): Single {
  const sign = tokens[first.next];
  const plus = sign && /^(?:\+|plus|and|&)$/.test(sign.folded);
  const comma = sign?.text === ',';
  const range = dividesRange(sign);
  const place = first.next + (plus || comma || range ? 1 : 0);
  const second = numberAt(tokens, place);
  if (!second || (tokens[place]?.kind !== 'number' && !plus && !range)) return first;
  const unit = unitAt(tokens, second.next);
  if (unit?.kind !== 'unit' || !isAdded(first.unit, unit.unit)) return first;
  const { low, high } = scaleRange(second, unit);
  const typed = said(tokens, start, unit.next);
  const open = (fault: Problem): Single => ({
    ...first,
    low: null,
    high: null,
    next: unit.next,
    faults: [...first.faults, fault],
  });
  if (range) {
    if (unit.unit !== first.unit) return open(twoAmounts(typed));
    if (!first.low || !low || first.low !== first.high)
      return open(second.fault ?? twoAmounts(typed));
    if (first.low.compare(low) > 0) return open(outOfOrder(typed));
    return { ...first, high: low, next: unit.next };
  }
  const factor = first.unit === unit.unit ? 1 : PARTS.get(`${first.unit} ${unit.unit}`);
  if (factor === undefined || (factor === 1 && !plus)) {
    const back = PARTS.get(`${unit.unit} ${first.unit}`);
    if (!plus || back === undefined) return plus || !comma ? open(twoAmounts(typed)) : first;
    const sum = (end: Fraction | null, more: Fraction | null) =>
      end && more ? end.add(more.mul(back)) : null;
    return added(tokens, start, {
      ...first,
      low: sum(first.low, low),
      high: sum(first.high, high),
      next: unit.next,
    });
  }
  if (second.fault) return open(second.fault);
  const sum = (end: Fraction | null, more: Fraction | null) =>
    end && more ? end.mul(factor).add(more) : null;
  return added(tokens, start, {
    ...first,
    low: sum(first.low, low),
    high: sum(first.high, high),
    unit: unit.unit,
    aside: [...first.aside, ...unit.modifiers],
    next: unit.next,
  });
}

function isAdded(first: LineUnit | null, second: LineUnit): boolean {
  if (first === null) return false;
  return (isMassUnit(first) || isVolumeUnit(first)) && (isMassUnit(second) || isVolumeUnit(second));
}

/** The remark where two amounts stand and it is not said how they go together. */
export function twoAmounts(typed: string): Problem {
  return remark(
    'two-amounts',
    `There are two amounts in “${typed}”. Write one, and the other in brackets or on a line of its own.`,
    { typed },
  );
}

/** The same amount again after a slash: '200 g/7 oz', '1 cup/150 g'. */
function repeated(tokens: readonly Token[], first: Single): Single {
  if (tokens[first.next]?.text !== '/') return first;
  const number = rangeAt(tokens, first.next + 1);
  const unit = number && !number.fault ? unitAt(tokens, number.next) : null;
  if (!number || unit?.kind !== 'unit') return first;
  const mass = massOf(number, unit);
  const massFirst = first.unit === 'g' || first.unit === 'kg';
  return repeated(tokens, { ...first, whole: massFirst ? null : mass, next: unit.next });
}
