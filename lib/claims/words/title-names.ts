import type { Language } from '../language';

type Words = Pick<Language, 'numbers' | 'places' | 'singular'>;

/**
 * A title without brackets that count something or point at it, where anything else is left.
 * @example withoutCounts('Flatbread (1 big one)', ENGLISH) // 'Flatbread '; of 'Dal (mild)' all of it
 */
export function withoutCounts(title: string, language: Words): string {
  const bare = title.replace(/[([]([^()[\]]*)[)\]]/g, (whole, inside: string) => {
    const counts = wordsIn(inside).some(
      (word) => /^\d/.test(word) || isNumber(word, language) || standsFor(word, language),
    );
    return counts ? ' ' : whole;
  });
  return /\p{L}/u.test(bare) ? bare : title;
}

/** Whether a word of a title names no dish: a number, “one”, “it”. */
export function namesNothing(word: string, language: Words): boolean {
  return isNumber(word, language) || standsFor(word, language);
}

/** Whether a word is a number: in digits, or in words. */
export function isNumber(word: string, { numbers }: Words): boolean {
  return /^\d+$/.test(word) || numbers.cardinals.has(word);
}

/** The last of a title’s words that can name its dish; empty where only how big it is is left. */
export function headOf(names: readonly string[], { places }: Words): string {
  return names.findLast((word) => !places.sizes.has(word)) ?? '';
}

/** A title as a text may name it. */
export interface TitleNames {
  readonly title: string;
  /** Its words in their singulars, without those that name nothing. */
  readonly stems: readonly string[];
  /** Of these, those before what comes with it: 'skyr' and 'pot' of 'Skyr pots with oat crumb'. */
  readonly own: readonly string[];
  /** The last of them that can name it; empty where none can. */
  readonly head: string;
}

/**
 * The words by which a text may name a dish.
 * @example titleNames('Skyr pots with oat crumb', ENGLISH).own // ['skyr', 'pot']
 */
export function titleNames(title: string, language: Words): TitleNames {
  const stems = withoutCounts(title, language)
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '' && !namesNothing(word, language))
    .map(language.singular);
  const behind = stems.findIndex((stem, at) => at > 0 && language.places.behindName.has(stem));
  const own = behind < 0 ? stems : stems.slice(0, behind);
  return { title, stems, own, head: headOf(own, language) };
}

const wordsIn = (text: string) => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];

const standsFor = (word: string, { places, singular }: Words) =>
  places.noNames.has(word) || places.noNames.has(singular(word));
