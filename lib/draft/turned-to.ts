import { cleanTitle } from './clean-title';
import { titleStems } from './same-title';
import { fold, singular } from '#lib/units/plain-words';
import { TURN } from './words';

/** Where the talk turns to a dish. */
export interface Turn {
  /** Offset in what is said. */
  readonly at: number;
  readonly end: number;
  readonly title: string;
}

const CUE =
  /\b(?:(?:first|next|last) up|up (?:first|next)|first|second|third|next|now|then|last|lastly|finally|moving on|on to|onto|over to|start(?:ing)? with|time for|okay|alright|right|for (?:breakfast|brunch|lunch|dinner|tea|supper|dessert|pudding)|making|make|(?:dish|recipe|meal)(?: number)? \w+)\b/gi;
const WORD = /[\p{L}\p{M}\d'’]+/gu;
/** Words behind the turn within which the dish is named (common practice, no source). */
const REACH = 9;

/**
 * When dishes that are known come up: where words that turn to something are followed by all of a dish's name, or by
 * two thirds of a long one. All of them must be found, in their order: if one is missed, what is said of it would be
 * taken for another's.
 * @returns the offset of each in order; null unless all are found
 */
export function turnsToKnown(text: string, titles: readonly string[]): number[] | null {
  const known = titles.map(titleStems);
  const first = new Map<number, number>();
  for (const cue of text.matchAll(CUE)) {
    const behind = text.slice(cue.index + cue[0].length, cue.index + cue[0].length + 120);
    const said = [...behind.matchAll(WORD)].slice(0, REACH).map(([word]) => stemOf(word));
    const rated = known
      .map((stems, index) => ({
        index,
        count: stems.filter((stem) => said.includes(stem)).length,
        least: stems.length <= 2 ? stems.length : Math.ceil((stems.length * 2) / 3),
      }))
      .filter(({ count, least }) => count > 0 && count >= least)
      .sort((a, b) => b.count - a.count);
    const [best, second] = rated;
    if (!best || best.count === second?.count || first.has(best.index)) continue;
    first.set(best.index, cue.index);
  }
  const found = titles.map((_, index) => first.get(index));
  const all = found.filter((at) => at !== undefined);
  const rising = all.every((at, index) => index === 0 || at > (all[index - 1] ?? 0));
  return all.length === titles.length && all.length > 0 && rising ? all : null;
}

const stemOf = (word: string) => singular(fold(word).replace(/['’]/g, ''));

const BETWEEN =
  /^(?:\s*(?:is|it's|its|comes?|we|i|we've|i've|we're|i'm|we'll|i'll|have|has|had|got|having|making|doing|made|did|make|going|to|be|with|just|really|super|very|quick|simple|easy|a|an|the|my|this|these|some|our|little|one|number))*\s*/i;
const STOP =
  /^(?:so|and|then|which|that|it|it's|its|this|i|we|you|he|she|they|because|but|for|is|are|was|in|on|where|what|now|okay|ok|who|when|if|as|at|from|by|here|there|how|right|today|again|used?|using|has|have|had)$/i;
const MOST_WORDS = 5;
const LONGEST = 60;

/**
 * Dishes by the words that bring them in: "first up is the barley skillet". Only where plain words say that it is the
 * next one; the name ends at a stop, or at a word that no dish is called by.
 * @example turnsToNamed('First up is the barley skillet. I used 90 grams.') // [{ title: 'barley skillet', at: 0, … }]
 */
export function turnsToNamed(text: string): Turn[] {
  const found: Turn[] = [];
  for (const cue of text.matchAll(TURN)) {
    const from = cue.index + cue[0].length;
    const behind = text.slice(from, from + LONGEST * 2).replace(/\n/g, ' ');
    const lead = BETWEEN.exec(behind)?.[0].length ?? 0;
    const [clause = ''] = behind.slice(lead).split(/[^\p{L}\p{M}\s'’&-]/u);
    const words: string[] = [];
    for (const word of clause.trim().split(/\s+/)) {
      const ends = STOP.test(word) && !(word === 'and' && words.length > 0 && words.length < 3);
      if (word === '' || ends || words.length === MOST_WORDS) break;
      words.push(word);
    }
    while (/^(?:and|with|the|a|an|of)$/i.test(words.at(-1) ?? '')) words.pop();
    const title = cleanTitle(words.join(' '));
    if (title.length < 4 || title.length > LONGEST) continue;
    const again = found.some((turn) => turn.title.toLowerCase() === title.toLowerCase());
    const end = from + lead + behind.slice(lead).indexOf(words[0] ?? '') + title.length;
    if (!again) found.push({ at: cue.index, end, title });
  }
  return found;
}
