import type { Misheard } from '#lib/claims/judged';
import type { Statement } from '#lib/claims/statement';
import { settled } from '#lib/units/print';
import { numberWords } from './said-interval';

/** A number that may have been said where another stands. */
export interface Mishearing {
  readonly value: number;
  readonly why: string;
}

/** Most hearings that are told of one statement. */
const MOST = 3;

type Numbered = Exclude<Statement, { readonly kind: 'claimWord' | 'freeFrom' | 'foodNamed' }>;

/** How another number is tried in the place of one. */
export interface Trial {
  /** Whether a number is near enough to be worth a trial, at little cost. */
  readonly near: (value: number) => boolean;
  /** Whether the statement with another number would agree. */
  readonly agrees: (other: Numbered) => boolean;
}

/**
 * What may have been said where captions have another number: only what would agree, likelier first. Empty for ranges.
 * @param before the words right before the statement
 * @example misheardOf(fiftyGrams, '', trial)[0]?.heard // '15 grams of protein'
 */
export function misheardOf(statement: Numbered, before: string, trial: Trial): Misheard[] {
  if (statement.low !== statement.high) return [];
  const number = numberWords(statement);
  const how = statement.how.filter(({ stage }) => stage !== 'number');
  const found: Misheard[] = [];
  for (const { value, why } of mishearings(statement.low, before)) {
    if (found.length === MOST) return found;
    if (!trial.near(value)) continue;
    if (trial.agrees({ ...statement, low: value, high: value, words: String(value), how })) {
      found.push({ heard: statement.words.replace(number, String(value)), why });
    }
  }
  for (const { other, heard, why } of otherUnits(statement)) {
    if (found.length < MOST && trial.agrees(other)) found.push({ heard, why });
  }
  return found;
}

/**
 * Numbers that captions may have made another number of, likelier first, each once. Sound-alikes and slips of captions
 * are from experience (common practice, no source).
 * @example mishearings(50, '')[0] // { value: 15, why: '“fifty” and “fifteen” sound alike' }
 */
export function mishearings(value: number, before: string): Mishearing[] {
  if (!(value > 0) || !Number.isFinite(value)) return [];
  const all = [
    ...teens(value),
    ...hundreds(value),
    ...wordsForDigits(value, before),
    ...repeats(value),
    ...zeros(value),
    ...swapped(value),
    ...point(value),
    ...nines(value),
    ...dropped(value),
  ];
  const seen = new Set([value]);
  return all.filter((each) => {
    if (each.value <= 0 || seen.has(each.value)) return false;
    seen.add(each.value);
    return true;
  });
}

const TEENS: Readonly<Record<number, readonly [teen: string, ty: string]>> = {
  3: ['thirteen', 'thirty'],
  4: ['fourteen', 'forty'],
  5: ['fifteen', 'fifty'],
  6: ['sixteen', 'sixty'],
  7: ['seventeen', 'seventy'],
  8: ['eighteen', 'eighty'],
  9: ['nineteen', 'ninety'],
};

function teens(value: number): Mishearing[] {
  const rest = value % 100;
  const isTeen = rest >= 13 && rest <= 19;
  const isTy = rest >= 30 && rest % 10 === 0;
  const digit = isTeen ? rest - 10 : rest / 10;
  const pair = isTeen || isTy ? TEENS[digit] : undefined;
  if (!pair) return [];
  const [teen, ty] = pair;
  const other = isTeen ? digit * 10 : digit + 10;
  const [is, was] = isTeen ? [teen, ty] : [ty, teen];
  return [{ value: value - rest + other, why: `“${is}” and “${was}” sound alike` }];
}

function hundreds(value: number): Mishearing[] {
  const found: Mishearing[] = [];
  if (value < 100) {
    found.push({ value: value + 100, why: 'captions lose “a hundred and”' });
  }
  if (value < 20 && Number.isInteger(value)) {
    found.push({ value: value * 100, why: 'captions lose “hundred”' });
  }
  return found;
}

const SOUNDS: readonly (readonly [digit: string, words: readonly string[]])[] = [
  ['4', ['for', 'four']],
  ['2', ['to', 'too', 'two']],
  ['8', ['ate', 'eight']],
  ['1', ['a', 'one']],
];

/** '412' of 'for twelve', and 12 behind a 'for' that was a four. */
function wordsForDigits(value: number, before: string): Mishearing[] {
  if (!Number.isInteger(value)) return [];
  const digits = String(value);
  const word = (/([a-z]+)\s*$/i.exec(before)?.[1] ?? '').toLowerCase();
  return SOUNDS.flatMap(([digit, words]) => {
    const [said = '', number = ''] = words;
    const found: Mishearing[] = [];
    if (words.includes(word)) {
      const why = `“${word}” may be the “${words.at(-1) ?? number}” of the number`;
      found.push({ value: Number(digit + digits), why });
    }
    if (digits.length > 1 && digits.startsWith(digit) && digits[1] !== '0') {
      found.push({ value: Number(digits.slice(1)), why: `“${said}” is heard as a ${digit}` });
    }
    return found;
  });
}

/** '4242' of 42 that rolled in twice, '664' of 64. */
function repeats(value: number): Mishearing[] {
  const digits = String(value);
  if (!Number.isInteger(value)) return [];
  const half = digits.length / 2;
  const twice = digits.length > 1 && digits.slice(0, half) === digits.slice(half);
  const found: Mishearing[] = twice
    ? [{ value: Number(digits.slice(0, half)), why: 'captions that roll repeat a number' }]
    : [];
  for (let at = 1; at < digits.length; at += 1) {
    if (digits[at] !== digits[at - 1]) continue;
    const once = Number(digits.slice(0, at) + digits.slice(at + 1));
    found.push({ value: once, why: `the ${digits[at]} may stand twice for one` });
  }
  return found;
}

function zeros(value: number): Mishearing[] {
  if (!Number.isInteger(value)) return [];
  const found: Mishearing[] = [{ value: value * 10, why: 'a nought may be lost' }];
  if (value % 10 === 0) found.push({ value: value / 10, why: 'a nought may be one too many' });
  return found;
}

function swapped(value: number): Mishearing[] {
  const digits = String(value);
  if (!Number.isInteger(value)) return [];
  return [...digits].slice(1).flatMap((digit, index) => {
    const first = digits[index] ?? '';
    const other = digits.slice(0, index) + digit + first + digits.slice(index + 2);
    const plain = digit !== first && !other.startsWith('0');
    return plain ? [{ value: Number(other), why: `${first} and ${digit} may be swapped` }] : [];
  });
}

/** '25' of 'two point five'. */
function point(value: number): Mishearing[] {
  if (!Number.isInteger(value)) {
    const decimals = String(value).split('.')[1]?.length ?? 0;
    const whole = settled(value * 10 ** decimals);
    return [{ value: whole, why: 'the point may be one too many' }];
  }
  if (value < 10) return [];
  return [{ value: settled(value / 10), why: 'captions lose the “point” of a number' }];
}

function nines(value: number): Mishearing[] {
  const digits = String(value);
  return [...digits].flatMap((digit, at) => {
    const other = digit === '5' ? '9' : digit === '9' ? '5' : null;
    if (other === null) return [];
    const number = Number(digits.slice(0, at) + other + digits.slice(at + 1));
    return [{ value: number, why: '“five” and “nine” sound alike' }];
  });
}

/** A digit that is not there: 62 of 612. */
function dropped(value: number): Mishearing[] {
  const digits = String(value);
  if (!Number.isInteger(value) || digits.length < 2 || digits.length > 4) return [];
  const found: Mishearing[] = [];
  for (let at = 1; at < digits.length; at += 1) {
    for (let digit = 0; digit <= 9; digit += 1) {
      const number = Number(digits.slice(0, at) + String(digit) + digits.slice(at));
      found.push({ value: number, why: `a ${digit} may be lost within the number` });
    }
  }
  return found;
}

/** kJ for kcal and grams for milligrams, with the number as it stands. */
function otherUnits(
  statement: Numbered,
): { readonly other: Numbered; readonly heard: string; readonly why: string }[] {
  if (statement.kind !== 'nutrient') return [];
  const { nutrient, unit } = statement;
  const number = numberWords(statement);
  if (nutrient === 'energyKcal' && unit === 'kcal') {
    const other: Numbered = { ...statement, nutrient: 'energyKj', unit: 'kJ' };
    return [{ other, heard: `${number} kilojoules`, why: 'it may be kilojoules' }];
  }
  if (nutrient === 'energyKj' && unit === 'kJ') {
    const other: Numbered = { ...statement, nutrient: 'energyKcal', unit: 'kcal' };
    return [{ other, heard: `${number} calories`, why: 'it may be calories' }];
  }
  if (unit !== 'g' && unit !== 'mg') return [];
  const [swap, called] = unit === 'g' ? (['mg', 'milligrams'] as const) : (['g', 'grams'] as const);
  const heard = statement.words.replace(
    unit === 'g' ? /\bg(rams?)?\b/i : /\bm(illi)?g(rams?)?\b/i,
    called,
  );
  if (heard === statement.words) return [];
  return [{ other: { ...statement, unit: swap }, heard, why: `it may be ${called}` }];
}
