import { printCelsius, printRuntime } from '#lib/units/print';
import { localMoment } from '#lib/units/local-date';
import { gramsText, quantityText, ratioText } from '#lib/units/read-quantity';
import { minutesSaid } from '#lib/units/read-typed';
import { clockText, degreesText } from '#lib/shoot/day-words';

/** A row as the journal keeps it: columns by name, instants as text. */
export type JournalRow = Readonly<Record<string, unknown>>;

/** What the words need beside the row: what others are called, the units and the clock of the episode. */
export interface Telling {
  readonly names: Readonly<Record<string, string>>;
  readonly region: 'US' | 'EU';
  readonly zone: string;
}

/** Columns that a person knows as one thing, what it is called, and how its value reads; '' is none. */
export interface Field {
  readonly words: string;
  readonly columns: readonly string[];
  readonly say: (row: JournalRow, telling: Telling) => string;
}

/** A value as text; what is not there is ''. */
export function plain(value: unknown): string {
  if (typeof value === 'string') return value;
  return typeof value === 'number' ? String(value) : '';
}

/** A number, or null where none is known. */
export function numeric(value: unknown): number | null {
  return typeof value === 'number' ? value : null;
}

/** A row by its name. */
export const called = (row: JournalRow): string => plain(row.name);

/** A row by its title. */
export const titled = (row: JournalRow): string => plain(row.title);

/** A row by the food that it is of. */
export const ofFood = (row: JournalRow, { names }: Telling): string =>
  names[plain(row.foodId)] ?? 'a food';

/** A field of one column. Its value reads as it is unless `say` tells otherwise. */
export function field(
  words: string,
  column: string,
  say: (value: unknown, telling: Telling) => string = plain,
): Field {
  return { words, columns: [column], say: (row, telling) => say(row[column], telling) };
}

/** A field of one column that holds a number. */
export function measured(words: string, column: string, say: (value: number) => string): Field {
  return field(words, column, (value) => (typeof value === 'number' ? say(value) : ''));
}

/** A field whose column names another row. */
export function named(words: string, column: string): Field {
  return field(words, column, (value, { names }) =>
    typeof value === 'string' ? (names[value] ?? 'one no longer listed') : '',
  );
}

/** A field that is or is not so. */
export function ticked(words: string, column: string): Field {
  return field(words, column, (value) => (value === true ? 'yes' : 'no'));
}

/** A field of a few words of our own. */
export function chosen(
  words: string,
  column: string,
  choices: Readonly<Record<string, string>>,
): Field {
  return field(words, column, (value) => choices[plain(value)] ?? plain(value));
}

export const grams = (words: string, column: string) =>
  measured(words, column, (mg) => `${gramsText({ lowMg: mg, valueMg: mg, highMg: mg })} g`);

/** Grams with their range, in three columns. */
export function gramsRange(words: string, low: string, value: string, high: string): Field {
  return {
    words,
    columns: [low, value, high],
    say: (row) => {
      const [lowMg, valueMg, highMg] = [low, value, high].map((name) => numeric(row[name]));
      if (valueMg === null || valueMg === undefined) return '';
      return `${gramsText({ lowMg: lowMg ?? valueMg, valueMg, highMg: highMg ?? valueMg })} g`;
    },
  };
}

/** How many values a column of JSON holds. */
export const counted = (words: string, column: string) =>
  field(words, column, (value) =>
    typeof value === 'object' && value !== null ? `${Object.keys(value).length}` : '',
  );

/** A share in thousandths, read as percent. */
export const permille = (words: string, column: string) =>
  measured(words, column, (of) => `${of / 10} %`);

/** A share in two columns. */
export function share(words: string, num: string, den: string): Field {
  return {
    words,
    columns: [num, den],
    say: (row) => {
      const [top, bottom] = [numeric(row[num]), numeric(row[den])];
      return top === null || bottom === null ? '' : ratioText({ num: top, den: bottom });
    },
  };
}

export const runtime = (words: string, column: string) => measured(words, column, printRuntime);
export const minutes = (words: string, column: string) => measured(words, column, minutesSaid);
export const clock = (words: string, column: string) => measured(words, column, clockText);

/** Degrees in the episode's unit. */
export const degrees = (words: string, column: string) =>
  field(words, column, (value, { region }) =>
    typeof value === 'number' ? degreesText(value, region) : '',
  );
export const celsius = (words: string, column: string) => measured(words, column, printCelsius);

/** An instant by the episode's clock. */
export const moment = (words: string, column: string) =>
  field(words, column, (value, { zone }) => {
    const at = new Date(plain(value));
    return Number.isNaN(at.getTime()) ? plain(value) : localMoment(at, zone);
  });

/** Two columns that say when something begins or ends: "the end of Mix". */
export function anchor(words: string, step: string, end: string): Field {
  return {
    words,
    columns: [step, end],
    say: (row, { names }) =>
      `the ${plain(row[end])} of ${names[plain(row[step])] ?? 'a step no longer listed'}`,
  };
}

const UNITS: Readonly<Record<string, string>> = { flOz: 'fl oz', serving: 'servings (label)' };

/** The amount of an ingredient as written, in five columns. */
export const AMOUNT: Field = {
  words: 'amount',
  columns: ['lowNum', 'lowDen', 'highNum', 'highDen', 'unit'],
  say: ({ lowNum, lowDen, highNum, highDen, unit }) => {
    const parts = [lowNum, lowDen, highNum, highDen].map(numeric);
    const [a, b, c, d] = parts;
    if (a == null || b == null || c == null || d == null) return '';
    const text = quantityText({ low: { num: a, den: b }, high: { num: c, den: d } });
    const word = plain(unit);
    return word === '' ? text : `${text} ${UNITS[word] ?? word}`;
  },
};
