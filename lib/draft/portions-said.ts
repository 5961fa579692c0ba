import { CARDINALS, UNITS } from '#lib/episode/read-ingredient-words';

/** Into how many portions words divide a dish: exactly so many; or `unclear`, where it is a range or a guess. */
export type SaidPortions = number | 'unclear';

const NUMBER = String.raw`(\d{1,4}|[a-z]+)`;
const RANGE = String.raw`${NUMBER}(?:\s*(?:-|–|—|to|or)\s*${NUMBER})?`;
const ABOUT = String.raw`(about |around |approx(?:imately|\.)? |roughly |up to |at least |~ ?)?`;
const VERB = String.raw`(?:it |this |recipe |the recipe )*(?:serves|feeds|makes|yields?|(?:cuts?|divided?|split|portion(?:ed)?)(?: it| this)? (?:in)?to)`;
const THINGS = String.raw`(?:\s+([a-z][a-z' -]{0,40}))?`;
const BY_VERB = new RegExp(`^${VERB}\\s*:?\\s*${ABOUT}${RANGE}${THINGS}$`);
const BY_LABEL = new RegExp(
  `^(?:servings?|portions?|number of (?:servings|portions)|yield|serves)\\s*[:=–—-]\\s*${ABOUT}${RANGE}${THINGS}$`,
);
const BY_NOUN = new RegExp(`^${ABOUT}${RANGE}\\s*(?:x )?(?:portions?|servings?)$`);
const FOR_PEOPLE = new RegExp(`^for ${RANGE}(?: people)?$`);
const BY_COUNT = new RegExp(`^${ABOUT}${RANGE}\\s*(?:x )?([a-z][a-z' -]{0,40})?$`);

const MOST = 1000;

/** A number of things, in words that say no more than that. */
export interface SaidCount {
  readonly portions: SaidPortions;
  /** What is counted; empty for a bare number. */
  readonly things: string;
}

/**
 * The portions that words state and nothing else; null where they state none. `folded` is lower case.
 * @param aside the words stand in brackets, where "for 4" is enough
 * @example readPortions('makes 12 small bars') // 12; 'serves 4-6' is 'unclear', 'makes 500 ml' null
 */
export function readPortions(folded: string, aside = false): SaidPortions | null {
  if (folded.length > 120) return null;
  const words = folded
    .replace(/[([][^()[\]]*[)\]]\s*\.?$/, '')
    .replace(/[\s:.!]+$/, '')
    .trim();
  for (const pattern of [BY_VERB, BY_LABEL, BY_NOUN]) {
    const found = pattern.exec(words);
    if (found) return counted(found[1], found[2], found[3], found[4]);
  }
  const found = aside ? FOR_PEOPLE.exec(words) : null;
  return found ? counted(undefined, found[1], found[2], undefined) : null;
}

function counted(
  about: string | undefined,
  low: string | undefined,
  high: string | undefined,
  things: string | undefined,
): SaidPortions | null {
  const [first, ...rest] = (things ?? '').split(/[\s-]+/);
  if (UNITS.has(first ?? '') && first !== 'serving' && first !== 'servings') return null;
  const isDozen = first === 'dozen' || low === 'dozen';
  const one = low === 'a' || low === 'one' || low === 'dozen' ? 1 : numberOf(low);
  if (one === null || one === 0 || rest.length > 5) return null;
  if (about !== undefined || high !== undefined) return 'unclear';
  const count = isDozen ? one * 12 : one;
  return count <= MOST ? count : null;
}

function numberOf(word: string | undefined): number | null {
  if (word === undefined) return null;
  return /^\d+$/.test(word) ? Number(word) : (CARDINALS.get(word) ?? null);
}

/**
 * What words count, and nothing else: whatever it is, portions or an amount.
 * @example readCount('8 large muffins') // { portions: 8, things: 'large muffins' }
 */
export function readCount(folded: string): SaidCount | null {
  const found = BY_COUNT.exec(folded.replace(/[\s:.!]+$/, ''));
  if (!found) return null;
  const [, about, low, high, things = ''] = found;
  const portions = counted(about, low, high, undefined);
  return portions === null ? null : { portions, things: things.trim() };
}

/** The portions that one of several clauses of a line states: "Serves 6. Per portion 430 kcal." */
export function portionsWithin(folded: string): SaidPortions | null {
  if (folded.length > 400) return null;
  for (const clause of folded.split(/[.;,()|]/)) {
    const portions = readPortions(clause.trim());
    if (portions !== null) return portions;
  }
  return null;
}

/**
 * Takes the portions off the end of a heading or label: "Turkey tray (serves 4)", "Oat slices – makes 12".
 * @returns the words without them, and what they state; null where they state none
 */
export function withoutPortions(text: string): {
  readonly text: string;
  readonly portions: SaidPortions | null;
} {
  const aside = /\s*[([]([^()[\]]{1,60})[)\]]\s*:?\s*$/.exec(text);
  if (aside) {
    const inside = (aside[1] ?? '').toLowerCase();
    const portions = readPortions(inside, true) ?? portionsWithin(inside);
    if (portions !== null) return { text: text.slice(0, aside.index), portions };
  }
  const tail = /\s*[-–—|,]\s*((?:serves|makes|feeds|for)\s[^-–—|,]{1,40})$/i.exec(text);
  const portions = tail ? readPortions((tail[1] ?? '').toLowerCase(), true) : null;
  return tail && portions !== null
    ? { text: text.slice(0, tail.index), portions }
    : { text, portions: null };
}
