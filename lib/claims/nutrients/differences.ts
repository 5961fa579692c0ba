import { leadsBack } from './compare-days';
import { sentenceStart } from '../words/context';
import type { Mark } from '../words/marks';
import { endWithNoun, type Quantity, type Said } from '../numbers/quantity';
import type { Against } from '../statement';
import { only, type Text } from '../words/text';

/** Tokens in which words that put one thing in the place of another hold on. */
const SWAPPED = 24;
/** Tokens from what is saved to what is gained by the same change. */
const JOINED = 10;

/** Whether things are swapped just before, in the same sentence or, on a card, on the lines before. */
export function isSwapped(text: Text, at: number): boolean {
  const { marks, spoken } = text;
  const start = spoken ? sentenceStart(text, Math.max(0, at - 1)) : 0;
  return marks.lastIn('swap', Math.max(start, at - SWAPPED), at) !== undefined;
}

/**
 * By how much a change makes it less or more: 'swap the mayo and you save ninety calories', 'that knocks off 12 grams of
 * fat', and behind such a number what is gained. Null where the number is no difference.
 */
export function differenceBy(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Partial<Said> | null {
  const sign = signOf(text, quantity);
  if (sign) return { scope: 'compared', against: sign };
  const saved = before && isJoined(before, quantity) ? before.said : null;
  const mark = text.marks.before('by', quantity.begin);
  if (mark) {
    const { against, swapped } = mark.role;
    const holds = !swapped || saved?.against === 'less' || isSwapped(text, mark.from);
    return holds ? { scope: 'compared', against } : null;
  }
  const { end, noun } = quantity;
  const behind = text.marks.at('byBehind', endWithNoun({ end, noun }));
  if (behind) return { scope: 'compared', against: 'less' };
  // 'saves 120 calories and 14 grams of fat'
  const other = saved && saved.nutrient !== noun?.nutrient && saved.against !== undefined;
  return other && before && isAnd(text, before, quantity)
    ? { scope: 'compared', against: saved.against ?? 'less' }
    : null;
}

/** Whether a number follows one that was read as a difference, and as no other thing's own. */
function isJoined({ said, end }: Quantity, { begin }: Quantity): boolean {
  const { against } = said ?? {};
  return (against === 'less' || against === 'more') && begin - end <= JOINED;
}

/** Whether nothing but 'and' stands between two numbers, the second of which has its own noun. */
function isAnd(text: Text, { end, noun, said }: Quantity, { begin }: Quantity): boolean {
  const from = endWithNoun({ end, noun });
  const by = text.marks.before('by', text.marks.lastIn('by', from - JOINED, from)?.to ?? -1);
  if (!by || said?.kind !== 'nutrient' || text.tokens[from]?.text === ',') return false;
  return begin > from && only(text, from, begin, ['joiner', 'filler', 'hedge']);
}

/** '-90 kcal', '+6 g protein' on a card on which things are swapped. */
function signOf(text: Text, { begin, digits }: Quantity): 'less' | 'more' | null {
  const { tokens, spoken } = text;
  const sign = tokens[begin - 1]?.text ?? '';
  const first = (tokens[begin - 2]?.kind ?? 'line') !== 'word';
  if (spoken || !digits || !first || !/^[+−–-]$/.test(sign) || !isSwapped(text, begin)) return null;
  return sign === '+' ? 'more' : 'less';
}

/** A verb of a difference right before a number of a nutrient, or less and more behind it where things are swapped. */
function isLed(text: Text, { begin, end, noun }: Quantity): boolean {
  const { marks } = text;
  const by = marks.before('by', begin);
  if (by) return by.role.swapped !== true || isSwapped(text, by.from);
  return marks.at('than', endWithNoun({ end, noun })) !== undefined && isSwapped(text, begin);
}

/** Whether a number of a nutrient is a difference by its own words, and no aim: not 'save 300 calories for dinner'. */
export function isDifference(text: Text, quantity: Quantity): boolean {
  const { unit, noun, end } = quantity;
  if (unit !== null && unit.of !== 'energy' && !(unit.of === 'mass' && noun)) return false;
  const behind = text.marks.at('serveTitle', endWithNoun({ end, noun }));
  return isLed(text, quantity) && behind === undefined;
}

/** Numbers before a difference, and tokens in which they stand. */
const BEFORE = 5;
const NEAR = 40;

/**
 * A number with 'less' or 'more' behind it is never the dish's own: it is the difference of two numbers before it ('the
 * pie was 910 calories, this one is 660, so 250 less'), or to what the text does not say; and where nobody can say what
 * it is more than, it says nothing.
 */
export function settleDifferences(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    const { said, killed, end, noun, low, high } = quantity;
    if (said?.kind !== 'nutrient' || said.scope !== undefined || killed !== null) return;
    const than = text.marks.at('than', endWithNoun({ end, noun }));
    if (!than || low !== high || isHedge(text, than) || !endsThere(text, than.to)) return;
    const { against } = than.role;
    const earlier = quantities
      .slice(Math.max(0, index - BEFORE), index)
      .filter((other) => isAlike(other, quantity) && quantity.begin - other.end <= NEAR);
    const pair = pairOf(earlier, low);
    if (pair) {
      const [other, own] = pair;
      const lower = own.low < other.low;
      const open = other.said?.scope === undefined || other.said.scope === 'ingredient';
      if (open && lower === (against === 'less') && leadsBack(text, other.end, own.begin))
        other.said = compare(other.said, 'itsOwn');
      // 'OURS 430 kcal / BOX 610 kcal / 180 less'
      else if (!lower && against === 'less' && isOwn(text, other) && own.said?.scope === undefined)
        own.said = compare(own.said, 'itsOwn');
    }
    if (pair || against === 'less') quantity.said = compare(said, against);
    else quantity.killed = 'more than nobody knows';
  });
}

/** Whether a number is this dish's by its own words, right before it: 'ours', 'this one is'. */
function isOwn({ marks }: Text, { begin }: Quantity): boolean {
  const part = marks.before('scope', begin) ?? marks.before('scope', begin - 1);
  return part?.role.scope === 'dish';
}

/** Whether nothing follows that 'less' or 'more' would be said of. */
function endsThere({ marks, tokens }: Text, at: number): boolean {
  if (tokens[at]?.kind !== 'word') return true;
  const links = ['so', 'joiner', 'scope', 'small', 'which', 'thanWord'] as const;
  return links.some((category) => marks.at(category, at));
}

const isAlike = ({ said, killed }: Quantity, { said: of }: Quantity) =>
  killed === null && said?.kind === 'nutrient' && said.nutrient === of?.nutrient;

/** The last two numbers of which one is so much more than the other. */
function pairOf(earlier: readonly Quantity[], by: number): [Quantity, Quantity] | null {
  const [own, ...others] = [...earlier].reverse();
  const other = others.find(({ low }) => own && Math.abs(low - own.low) === by);
  return own && other ? [other, own] : null;
}

function compare(said: Said | null, against: Against): Said | null {
  if (!said) return null;
  const { food: _food, ...rest } = said;
  return { ...rest, scope: 'compared', against };
}

/** Tokens from a number to its noun. */
const NOUN = 4;

/** 'fourteen protein less than four fat': it softens the number behind, which has its own noun. */
export function isHedge({ marks, tokens, language }: Text, { from }: Mark<'than'>): boolean {
  const hedge = marks.at('hedge', from);
  const number = hedge && tokens[hedge.to];
  if (number?.kind !== 'number' && !language.numbers.cardinals.has(number?.folded ?? ''))
    return false;
  return marks.firstIn('noun', hedge?.to ?? 0, (hedge?.to ?? 0) + NOUN) !== undefined;
}
