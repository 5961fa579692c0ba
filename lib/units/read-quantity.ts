import Fraction from 'fraction.js';
import { isUnclearComma, isUnclearPoint } from '#lib/units/printed';

/** An amount as written, exact: equal ends for a single amount. */
export interface ReadQuantity {
  readonly low: { readonly num: number; readonly den: number };
  readonly high: { readonly num: number; readonly den: number };
}

/** Vulgar fractions of Unicode (block Number Forms and Latin-1) that recipes use. */
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const NUMBER = /^(?:(\d+) )?(\d+)\/(\d+)$|^(\d+(?:[.,]\d+)?|[.,]\d+)$/;
/** What the file format holds at most in a fraction's parts. */
const LARGEST = 1_000_000_000;

/**
 * Reads an amount: `2`, `2.5`, `2,5`, `1/2`, `1 1/2`, `1½`, and ranges with a dash or "to".
 * Null where it is none; nothing is guessed. `readQuantity('1 1/2')` → 3/2 to 3/2;
 * `readQuantity('2–3')` → 2 to 3.
 */
export function readQuantity(text: string): ReadQuantity | null {
  const ends = text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign] ?? sign}`)
    .replace(/\s+/g, ' ')
    .replace(/\u2044/g, '/')
    .trim()
    .split(/ ?(?:-|–|—|\bto\b) ?/);
  const [low, high] = ends.map(readNumber);
  if (!low || ends.length > 2) return null;
  if (ends.length === 1) return { low, high: low };
  if (!high || low.num * high.den > high.num * low.den) return null;
  return { low, high };
}

function readNumber(text: string): ReadQuantity['low'] | null {
  const match = NUMBER.exec(text);
  if (!match || isUnclearComma(text)) return null;
  const [, whole = '0', num, den, decimal] = match;
  if (den !== undefined && Number(den) === 0) return null;
  const value =
    decimal === undefined
      ? new Fraction(`${num}/${den}`).add(new Fraction(whole))
      : new Fraction(decimal.replace(',', '.').replace(/^\./, '0.'));
  const read = { num: Number(value.n), den: Number(value.d) };
  return read.num <= LARGEST && read.den <= LARGEST ? read : null;
}

/** Grams with the range they may lie in, in milligrams. */
export interface ReadMass {
  readonly lowMg: number;
  readonly valueMg: number;
  readonly highMg: number;
}

/**
 * Reads grams with or without a range: `20`, `20 ± 7`, `20 +- 7`, `13–27`, `18 (13–27)`; the middle of a range
 * is its value where none is given. A trailing `g` is allowed. Null where it is none, or more than a tonne.
 * `readGrams('20 ± 7')` → 13,000 to 27,000 mg about 20,000 mg.
 */
export function readGrams(text: string): ReadMass | null {
  const plain = text.trim().replace(/ ?g$/, '');
  const about = /^([^(]+)\(([^()]+)\)$/.exec(plain);
  if (about) {
    const value = readGrams(about[1] ?? '');
    const range = readGrams(about[2] ?? '');
    if (!value || !range || value.lowMg !== value.highMg) return null;
    const { valueMg } = value;
    return range.lowMg <= valueMg && valueMg <= range.highMg ? { ...range, valueMg } : null;
  }
  const [middle, spread, ...more] = plain.split(/\s*(?:±|\+-|\+\/-)\s*/);
  if (more.length > 0) return null;
  if (isUnclearPoint(middle ?? '')) return null;
  const quantity = readQuantity(middle ?? '');
  if (!quantity) return null;
  const low = milligrams(quantity.low);
  const high = milligrams(quantity.high);
  if (spread === undefined)
    return within({ lowMg: low, valueMg: Math.round((low + high) / 2), highMg: high });
  const half = readQuantity(spread);
  if (!half || low !== high || half.low !== half.high) return null;
  const halfMg = milligrams(half.low);
  return within({ lowMg: Math.max(0, low - halfMg), valueMg: low, highMg: low + halfMg });
}

function milligrams({ num, den }: ReadQuantity['low']): number {
  return Math.round((1000 * num) / den);
}

function within(mass: ReadMass): ReadMass | null {
  return mass.highMg <= LARGEST ? mass : null;
}

/** An amount as it can be typed again. `quantityText({ low: 3/2, high: 2 })` → `'1 1/2–2'`. */
export function quantityText({ low, high }: ReadQuantity): string {
  const same = low.num === high.num && low.den === high.den;
  return same ? ratioText(low) : `${ratioText(low)}–${ratioText(high)}`;
}

/** A fraction as typed: decimals where they end within three places, else a mixed fraction. */
export function ratioText({ num, den }: ReadQuantity['low']): string {
  const value = num / den;
  const decimal = Number(value.toFixed(3));
  if (decimal * den === num && ![2, 4, 8].includes(den)) return String(decimal);
  return new Fraction(num).div(den).toFraction(true);
}

/** Grams as they can be typed again. `gramsText` of 13,000, 20,000, 27,000 mg → `'20 ± 7'`. */
export function gramsText({ lowMg, valueMg, highMg }: ReadMass): string {
  const text = (mg: number) => String(mg / 1000);
  if (lowMg === highMg) return text(valueMg);
  const even = valueMg - lowMg === highMg - valueMg;
  return even
    ? `${text(valueMg)} ± ${text(valueMg - lowMg)}`
    : `${text(valueMg)} (${text(lowMg)}–${text(highMg)})`;
}

/**
 * Reads a running time: `m:ss`, `h:mm:ss`, or seconds alone as `45 s`. Null where it is none.
 * `readRuntime('3:25')` → `205`.
 */
export function readRuntime(text: string): number | null {
  const seconds = /^(\d{1,5}) ?s$/.exec(text.trim());
  if (seconds) return Number(seconds[1]);
  const match = /^(?:(\d{1,2}):)?(\d{1,2}):([0-5]\d)$/.exec(text.trim());
  if (!match) return null;
  return Number(match[1] ?? 0) * 3600 + Number(match[2]) * 60 + Number(match[3]);
}
