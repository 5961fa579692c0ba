import type { NumberWords } from '../language';
import { isCounting } from './number-run-on';
import { restAt, type NumberAt } from './number-words';
import type { Token } from '../words/tokens';

const VULGAR: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};
/** Divisors of fractions with a stroke; '1/50' is a shutter. */
const MOST_DIVISOR = 16;

/** What digits stand for; null where they can't be told: '1.234.567', '1,35,3'. */
export function digitsValue(text: string): number | null {
  const last = VULGAR[text.at(-1) ?? ''];
  const whole = last === undefined ? text : text.slice(0, -1);
  if (whole === '') return last ?? null;
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(whole)) {
    return last === undefined ? Number(whole.replaceAll(',', '')) : null;
  }
  if (/^\d+,\d{1,2}$/.test(whole))
    return last === undefined ? Number(whole.replace(',', '.')) : null;
  if (!/^\d+(\.\d+)?$/.test(whole)) return null;
  return last === undefined ? Number(whole) : whole.includes('.') ? null : Number(whole) + last;
}

/** How digits that stand apart may be read as one number. */
export interface Apart {
  /** Spoken: '6 40' is six forty. */
  readonly spoken: boolean;
  /** Written, and a unit or noun of energy follows: '1 850 kJ'. */
  readonly thousands: (next: number) => boolean;
}

/**
 * The number in digits that begins at a token: thousands, decimals, fractions with a stroke or as one character, and
 * digits that stand apart. Null where none begins or it is part of a name ('SLATE15').
 */
export function digitsAt(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
  apart: Apart,
): NumberAt | null {
  const token = tokens[at];
  if (token?.kind !== 'number') return null;
  const value = digitsValue(token.text);
  if (value === null) return null;
  const read = {
    value,
    next: at + 1,
    digits: true,
    words: false,
    fraction: (VULGAR[token.text.at(-1) ?? ''] ?? 0) > 0,
    // Thousands or decimals: nobody can say.
    ...(/^\d{1,3}\.\d{3}$/.test(token.text) ? { unsure: true as const } : {}),
  };
  return (
    pointed(tokens, at, words) ??
    stroke(tokens, at, read) ??
    joined(tokens, at, read, apart) ??
    scaled(tokens, read, words)
  );
}

/** '1 point 8': digits with the point said. */
function pointed(tokens: readonly Token[], at: number, words: NumberWords): NumberAt | null {
  const [whole, part] = [tokens[at]?.text ?? '', tokens[at + 2]?.text ?? ''];
  if (!words.point.has(tokens[at + 1]?.folded ?? '') || !/^\d+$/.test(part)) return null;
  if (!/^\d+$/.test(whole)) return null;
  const value = Number(`${whole}.${part}`);
  return { value, next: at + 3, digits: true, words: true, fraction: false };
}

function stroke(tokens: readonly Token[], at: number, read: NumberAt): NumberAt | null {
  const part = strokeAt(tokens, at);
  if (part !== null) return { ...read, value: part, next: at + 3, fraction: true };
  const behind = strokeAt(tokens, at + 1);
  const vulgar = tokens[at + 1];
  if (Number.isInteger(read.value) && behind !== null) {
    return { ...read, value: read.value + behind, next: at + 4, fraction: true };
  }
  const value = vulgar?.kind === 'number' ? VULGAR[vulgar.text] : undefined;
  return value !== undefined && Number.isInteger(read.value)
    ? { ...read, value: read.value + value, next: at + 2, fraction: true }
    : null;
}

/** A fraction below one with a stroke: '3/4'. */
function strokeAt(tokens: readonly Token[], at: number): number | null {
  const [above, line, below] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (above?.kind !== 'number' || below?.kind !== 'number') return null;
  if (!line?.glued || !below.glued || !/^[/⁄]$/.test(line.text)) return null;
  const [num, den] = [Number(above.text), Number(below.text)];
  return Number.isInteger(num) && num > 0 && num < den && den <= MOST_DIVISOR ? num / den : null;
}

function joined(
  tokens: readonly Token[],
  at: number,
  read: NumberAt,
  { spoken, thousands }: Apart,
): NumberAt | null {
  const [first, second] = [tokens[at], tokens[at + 1]];
  if (!first || second?.kind !== 'number' || second.glued) return null;
  const spelt = spoken ? speltAt(tokens, at) : null;
  if (spelt) return { ...read, ...spelt };
  if (spoken && /^[1-9]\d?$/.test(first.text) && /^\d\d$/.test(second.text)) {
    const part = Number(second.text);
    const parts = [
      { value: read.value, from: at, next: at + 1 },
      { value: part, from: at + 1, next: at + 2 },
    ];
    if (read.value > 39) return null;
    const value = read.value * 100 + part;
    return { ...read, value, next: at + 2, parts, money: read.value + part / 100 };
  }
  return /^[1-9]\d{0,2}$/.test(first.text) && /^\d{3}$/.test(second.text) && thousands(at + 2)
    ? { ...read, value: read.value * 1000 + Number(second.text), next: at + 2 }
    : null;
}

/** '3 9 5': three or four digits that captions set apart, and nobody counts by. */
function speltAt(tokens: readonly Token[], at: number) {
  const isDigit = (place: number) => {
    const token = tokens[place];
    return token?.kind === 'number' && /^\d$/.test(token.text) && !token.glued;
  };
  if (isDigit(at - 1) || tokens[at]?.text === '0') return null;
  let next = at;
  while (next - at <= 4 && isDigit(next)) next += 1;
  const digits = tokens.slice(at, next).map(({ text }) => Number(text));
  if (digits.length < 3 || digits.length > 4 || tokens[next]?.kind === 'number') return null;
  return isCounting(digits) ? null : { value: Number(digits.join('')), next };
}

/** '40 five': tens in digits and ones in words. */
function onesBehind(tokens: readonly Token[], read: NumberAt, words: NumberWords): NumberAt {
  const ones = words.cardinals.get(tokens[read.next]?.folded ?? '') ?? 0;
  const tens = read.value >= 20 && read.value < 100 && read.value % 10 === 0;
  return tens && ones > 0 && ones < 10
    ? { ...read, value: read.value + ones, next: read.next + 1, words: true }
    : read;
}

/** '2 hundred and 10' behind thousands. */
function hundredsAt(tokens: readonly Token[], at: number, words: NumberWords) {
  const digit = tokens[at]?.text ?? '';
  const hundred = words.hundred.has(tokens[at + 1]?.folded ?? '');
  if (!/^[1-9]$/.test(digit) || !hundred) return null;
  const rest = restAt(tokens, at + 2, words);
  return { value: Number(digit) * 100 + (rest?.value ?? 0), next: rest?.next ?? at + 2 };
}

/** '2 hundred', '1.5 thousand', '1 hundred and 12'. */
function scaled(tokens: readonly Token[], read: NumberAt, words: NumberWords): NumberAt {
  const after = tokens[read.next]?.folded ?? '';
  const factor = words.hundred.has(after) ? 100 : words.thousand.has(after) ? 1000 : 1;
  if (factor === 1) return onesBehind(tokens, read, words);
  const value = read.value * factor;
  const rest =
    factor === 100
      ? restAt(tokens, read.next + 1, words)
      : hundredsAt(tokens, read.next + 1, words);
  return rest
    ? { ...read, value: value + rest.value, next: rest.next, words: true }
    : { ...read, value, next: read.next + 1, words: true };
}
