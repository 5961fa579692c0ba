import type { Language } from '../language';

/** Numbers with strokes between, that are no part of a longer run of digits and marks. */
const NUMBERS = /(?<![\d/.:,])\d+(?:\.\d+)?(?:[ \t]*\/[ \t]*\d+(?:\.\d+)?)+(?![\d/:])/g;
/** Characters from names to their numbers; three or more names are of any such row that is no date. */
const NEAR = 14;

/**
 * A text in which strokes between the numbers of a row are no strokes of fractions or dates, where names of nutrients
 * stand in such a row: 'P/C/F: 29/6/12' is then read as '29|6|12'. Places stay as they are.
 */
export function partRows(whole: string, language: Language): string {
  const { patterns } = language;
  const text = withoutColons(withCapitals(whole, language), language);
  const rows = [...text.matchAll(new RegExp(patterns.namesInRow, 'giu'))].map((match) => ({
    count: match[0].split('/').length,
    end: match.index + match[0].length,
  }));
  if (rows.length === 0) return text;
  return text.replaceAll(NUMBERS, (numbers: string, at: number) => {
    const count = numbers.split('/').length;
    const fits = rows.some(
      (row) =>
        row.count === count &&
        ((count > 2 && !isDate(numbers)) || (at >= row.end && at - row.end <= NEAR)),
    );
    return fits ? numbers.replaceAll('/', '|') : numbers;
  });
}

/** Letters that make a row by themselves; beside calories one less does. */
const LETTERS = 3;

/** '42p, 30c, 9f' with capitals: in a row of different ones they are no pence and no degrees. */
function withCapitals(text: string, { patterns, letters: names }: Language): string {
  const [first = '', ...others] = [...names.keys()].map((name) => name.toLowerCase());
  const small = new RegExp(
    `(?<=\\d[ \\t]?g?[ \\t]?)[${[first, ...others].join('')}](?!\\p{L})`,
    'gu',
  );
  return text.replaceAll(new RegExp(patterns.lettersInRow, 'gu'), (row: string) => {
    const letters = [...row.matchAll(/\d[ \t]?g?[ \t]?(\p{L})/gu)].map(([, letter]) => letter);
    const least = /^\d/.test(row) ? LETTERS : LETTERS - 1;
    const different = new Set(letters).size === letters.length;
    const fits = different && letters.length >= least && letters.includes(first);
    return fits ? row.replaceAll(small, (one) => one.toUpperCase()) : row;
  });
}

/** 'P: 31, C: 44' without the colons, where several letters have one. */
function withoutColons(text: string, { letters }: Language): string {
  const names = [...letters.keys()];
  const colons = new RegExp(
    `(?<![\\p{L}\\d])([${names.join('')}])([ \\t]?[:=][ \\t]?)(?=\\d)`,
    'gu',
  );
  const found = new Set([...text.matchAll(colons)].map(([, letter]) => letter));
  if (found.size < 2 || !found.has(names[0])) return text;
  return text.replaceAll(
    colons,
    (_, letter: string, colon: string) => letter + ' '.repeat(colon.length),
  );
}

/** '12/11/25': a day and a month, one way or the other, and a year. */
function isDate(numbers: string): boolean {
  const parts = /^(\d{1,2})\/(\d{1,2})\/(\d{2}|\d{4})$/.exec(numbers);
  if (!parts) return false;
  const [first, second] = [Number(parts[1]), Number(parts[2])];
  return Math.min(first, second) <= 12 && Math.max(first, second) <= 31;
}
