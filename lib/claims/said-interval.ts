import { ENGLISH } from '#lib/claims/english/english';
import type { Hedge, ReadingStep } from '#lib/claims/statement';
import { settled } from '#lib/units/print';

/**
 * What a said number may stand for: all values from one end to the other, in its own unit. An end that is infinite is
 * none, and one that is `open` is itself not among them.
 */
export interface SaidInterval {
  readonly from: number;
  readonly to: number;
  readonly fromOpen: boolean;
  readonly toOpen: boolean;
  /** At least, under and the like: the whole range of a figure has to satisfy them (MODEL D.2). */
  readonly oneSided: boolean;
}

/** A number with its words as they stand, and where in them the number itself is. */
export interface SaidNumber {
  readonly low: number;
  readonly high: number;
  readonly hedge: Hedge;
  readonly words: string;
  readonly start: number;
  readonly how: readonly ReadingStep[];
}

/** How coarse a number of one kind is said. */
export interface SaidSteps {
  /** Whether it is said aloud: round numbers are then coarser than they are written. */
  readonly spoken: boolean;
  /** Half of what it is said to, of half the last digit that stands there; that itself where this is left out. */
  readonly half?: (digit: number) => number;
  /** How far “about”, “just over” and “almost” reach. */
  readonly about: (value: number) => number;
}

/**
 * The values that a said number covers (MODEL D.1): half its last digit as it stands there to either side; “about” as
 * far as that reaches; “just over” from the number itself up, “almost” up to it; “at least”, “at most” and “under” one
 * side of it.
 * @example saidInterval(written220, { spoken: false, about: () => 11 }) // 219.5 to 220.5; of '220.0' 219.95 to 220.05
 */
export function saidInterval(said: SaidNumber, steps: SaidSteps): SaidInterval {
  const { low, high, hedge } = said;
  const { spoken, about } = steps;
  const half = (value: number) => {
    const decimals = writtenDecimals(said);
    const digit = isHalved(said)
      ? 0.25
      : decimals === null
        ? halfDigit(value, spoken)
        : 0.5 / 10 ** decimals;
    return steps.half ? steps.half(digit) : digit;
  };
  const of = (
    from: number,
    to: number,
    more: Partial<Omit<SaidInterval, 'from' | 'to'>> = {},
  ): SaidInterval => ({
    from: settled(from),
    to: settled(to),
    fromOpen: false,
    toOpen: false,
    oneSided: false,
    ...more,
  });
  const reach = (value: number) => Math.max(half(value), about(value));
  switch (hedge) {
    case 'none':
    case 'between':
      return of(low - half(low), high + half(high));
    case 'about':
      return of(low - reach(low), high + reach(high));
    case 'justOver':
      return of(low, high + reach(high), { fromOpen: true });
    case 'almost':
      return of(low - reach(low), high, { toOpen: true });
    case 'atLeast':
      return of(low, Infinity, { oneSided: true });
    case 'atMost':
      return of(-Infinity, high, { oneSided: true });
    case 'under':
      return of(-Infinity, high, { toOpen: true, oneSided: true });
  }
}

/**
 * Half of the last digit of a number: 0.5 of a whole one, 0.05 of one with a decimal; said aloud from 100 on with a
 * nought at its end 5 (MODEL D.1).
 */
function halfDigit(value: number, spoken: boolean): number {
  if (spoken && value >= 100 && value % 10 === 0) return 5;
  if (Number.isInteger(value)) return 0.5;
  const decimals = /\.(\d+)$/.exec(String(settled(value)))?.[1]?.length ?? 0;
  return 0.5 / 10 ** decimals;
}

/** The words of the number alone: '2.50' of '2.50 g of salt'. */
export function numberWords({ words, start, how }: Omit<SaidNumber, 'low' | 'high' | 'hedge'>) {
  const step = how.find(({ stage }) => stage === 'number');
  return step ? words.slice(Math.max(0, step.start - start), Math.max(0, step.end - start)) : words;
}

/**
 * Digits behind the point as they were written: 2.0 is finer than 2. Null where the number is in words or whole, or is
 * kept in another unit than it is written in, as '1.5 hours' is in minutes.
 */
function writtenDecimals(said: SaidNumber): number | null {
  const words = numberWords(said);
  if (!/\d[.,]\d/.test(words)) return null;
  const found = [...words.matchAll(/(\d[\d.,]*)[.,](\d+)/g)].flatMap(
    ([, whole = '', digits = '']) => {
      const value = Number(`${whole.replace(/[.,]/g, '')}.${digits}`);
      return value === said.low || value === said.high ? [digits.length] : [];
    },
  );
  return found.length === 0 ? null : Math.max(...found);
}

/** 'thirty-five and a half', '2½': said to the half. */
function isHalved(said: SaidNumber): boolean {
  const { low, high } = said;
  if (Number.isInteger(low) && Number.isInteger(high)) return false;
  if (!Number.isInteger(low * 2) || !Number.isInteger(high * 2)) return false;
  return ENGLISH.judging.half.test(numberWords(said));
}

/** Whether a said interval covers a value, but for noise of floating point. */
export function covers(
  { from, to, fromOpen, toOpen }: Omit<SaidInterval, 'oneSided'>,
  of: number,
): boolean {
  const value = settled(of);
  return (fromOpen ? value > from : value >= from) && (toOpen ? value < to : value <= to);
}

/** A value with the range in which it likely lies. */
export interface LikelyRange {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Whether a range bears out what was said (MODEL D.1, D.2). Of a number: `agrees` if it covers the value, `edge` if it
 * meets the range, else `off`. One-sided: `agrees` if the whole range satisfies it, `off` if value and range lie wholly
 * outside, else `edge`.
 */
export function holdAgainst(said: SaidInterval, range: LikelyRange): 'agrees' | 'edge' | 'off' {
  const [low, high] = [settled(range.low), settled(range.high)];
  const meets =
    (said.fromOpen ? high > said.from : high >= said.from) &&
    (said.toOpen ? low < said.to : low <= said.to);
  const agrees = said.oneSided
    ? covers(said, low) && covers(said, high)
    : covers(said, range.value);
  return agrees ? 'agrees' : meets ? 'edge' : 'off';
}
